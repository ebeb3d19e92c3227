using Portwright.Physics.Uncertainty;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Findings;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Diagnosis;

/// <summary>Where probe and ball contradict each other nothing is cut within reach, on the word of either, until they agree.</summary>
public sealed class WhereInstrumentsDisagree
{
    private static readonly Survey.PortSurvey Port = new MadePort(51) { RingsAt = [], Places = [] }.Survey();

    /// <summary>The cut is at 9 o'clock and reaches an hour and a half.</summary>
    [Theory]
    [InlineData(9, 0.90, false)]
    [InlineData(9, 0.89, true)]
    [InlineData(10.5, 0.95, false)]
    [InlineData(7.5, 0.95, false)]
    [InlineData(10.6, 0.95, true)]
    [InlineData(3, 0.95, true)]
    public void Nothing_is_cut_within_reach_of_a_contradiction(double bearing, double chance, bool cut)
    {
        var said = PortFindings.Agreed([Disputed(0, bearing, chance), Cut(0)]);
        Assert.Equal(cut, said[1].Suggestion is not null);
        Assert.Equal(!cut, said[1].Sentence.Us().EndsWith("Nothing is to be cut here until probe and ball agree.", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_section_is_cut_all_the_same() => Assert.NotNull(PortFindings.Agreed([Disputed(1, 9, 0.99), Cut(0)])[1].Suggestion);

    [Fact]
    public void A_cut_all_round_is_left_to_the_porter() =>
        Assert.NotNull(PortFindings.Agreed([Disputed(0, 9, 0.99), Cut(0) with { Suggestion = Suggested(null) }])[1].Suggestion);

    private static Finding Disputed(int station, double bearing, double chance) => new(new InstrumentsDisagree(), FindingKind.Measurement, $"they differ.", chance, Port.Stations[station].Station, bearing, []);

    private static Finding Cut(int station) => new(new BusyRoof(), FindingKind.Port, $"busy.", 0.95, Port.Stations[station].Station, 9, [], null, Suggested(9));

    private static CutSuggestion Suggested(double? bearing) => new($"cut", new Estimate(0.004, [new("gain", 0.0004)]), 0.005, 0.010, bearing);
}
