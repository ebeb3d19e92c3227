using Portwright.Physics.Uncertainty;
using Portwright.Shop.Cutting;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Cutting;

/// <summary>A reading is worth what deciding without it would lose: the lesser of the chances times the gain, and nothing where all is settled.</summary>
public sealed class WorthOfAReading
{
    private static readonly PortSurvey Port = new MadePort(51) { RingsAt = [], Places = [], ExhaustShare = null, Repeats = 1 }.Survey();

    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(0.8, 0.2)]
    [InlineData(0.95, 0.05)]
    [InlineData(0.101, 0.101)]
    [InlineData(0.099, 0)] // Unlikely.
    [InlineData(0.969, 0.031)]
    [InlineData(0.971, 0)]
    public void A_cut_in_doubt_is_worth_reading_for(double chance, double share) => Assert.Equal(share * 0.004, Worth(Said("a", chance, gain: 0.004)), 1e-9);

    /// <summary>A measurement that is surely wrong is read again before anything is cut on its word: from nine chances in ten it counts wholly.</summary>
    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(0.89, 0.11)]
    [InlineData(0.9, 0.9)]
    [InlineData(0.99, 0.99)]
    [InlineData(0.11, 0.11)]
    [InlineData(0.09, 0)]
    public void A_measurement_that_is_wrong_is_worth_the_best_cut(double chance, double share)
    {
        var cut = Cut(0.006, 1);
        Assert.Equal(share * 0.006, Worth(Said("a", chance, kind: FindingKind.Measurement), cut), 1e-9);
    }

    [Fact]
    public void With_no_cut_in_sight_it_is_worth_a_hundredth_of_the_flow() =>
        Assert.Equal(0.5 * 0.01 * Port.Sheet.Mean!.Flow.Value, Worth(Said("a", 0.5, kind: FindingKind.Measurement)), 1e-9);

    /// <summary>A gain that its doubt does not allow counts as none of its own: 1.2816 standard uncertainties are nine chances in ten.</summary>
    [Theory]
    [InlineData(1.29, true)]
    [InlineData(1.27, false)]
    [InlineData(-3, false)]
    public void A_cut_pays_where_its_doubt_leaves_nine_chances_in_ten_of_a_gain(double deviations, bool pays)
    {
        var suggestion = new CutSuggestion($"cut", new Estimate(deviations * 0.001, [new("gain", 0.001)]), 0.005, 0.010, null);
        Assert.Equal(pays, suggestion.Pays);
        Assert.Equal(pays, NextCuts.Of(Port, [Said("a", 0.95) with { Suggestion = suggestion }], Portwright.Shop.Record.Ledger.Of([])).Count == 1);
    }

    /// <summary>A wall not sounded is too thin fifteen times in a hundred, and takes a minute.</summary>
    [Fact]
    public void Metal_not_sounded_is_worth_sounding()
    {
        var cut = Cut(0.004, 0.9);
        var reading = Assert.Single(NextReadings.Of(Port, [], [cut with { Suggestion = cut.Suggestion with { SoundFirst = $"Sound the metal at D first." } }]));
        Assert.Equal(0.15 * 0.9 * 0.004, reading.Worth, 1e-12);
        Assert.Equal(1, reading.Minutes);
        Assert.Empty(NextReadings.Of(Port, [], [cut]));
    }

    /// <summary>Three are named, those that are worth most a minute, the quickest first.</summary>
    [Fact]
    public void The_three_worth_most_a_minute_are_named()
    {
        Finding Takes(string what, double minutes, double gain) => Said(what, 0.5, gain) with { Minutes = minutes };
        var readings = NextReadings.Of(Port, [Takes("a", 10, 0.009), Takes("b", 2, 0.001), Takes("c", 4, 0.004), Takes("d", 1, 0.0001), Takes("e", 1, 0.002)], []);
        Assert.Equal(["e", "c", "a"], readings.Select(r => r.What.Us()));
    }

    [Fact]
    public void A_finding_that_only_says_stop_asks_for_nothing() => Assert.Empty(NextReadings.Of(Port, [Said("a", 0.5, gain: 0.004, kind: FindingKind.Stop)], []));

    [Fact]
    public void A_reading_takes_what_its_rule_says() => Assert.Equal(new BusyRoof().Minutes, Said("a", 0.5).Minutes);

    /// <summary>A reading once more is the quickest, a head taken off the dearest; none is free.</summary>
    [Fact]
    public void Every_rule_says_what_its_observation_costs()
    {
        Assert.All(Catalogue.All, r => Assert.InRange(r.Minutes, BenchMinutes.OneReading, BenchMinutes.OneSetUp));
        double Of<T>()
            where T : FindingRule => Catalogue.All.OfType<T>().Single().Minutes;
        Assert.True(Of<ReadingOutOfLine>() < Of<BusyRoof>() && Of<BusyRoof>() < Of<ClosureFails>() && Of<ClosureFails>() < Of<LowAgainstSisters>());
        Assert.Equal((1, 2, 3, 5, 6, 8, 10, 15), (BenchMinutes.OneReading, BenchMinutes.OnePlace, BenchMinutes.OneLift, BenchMinutes.OneSection, BenchMinutes.OneCheck, BenchMinutes.OneRing, BenchMinutes.OneSweep, BenchMinutes.OneSetUp));
    }

    private static double Worth(Finding finding, params NextCut[] cuts) => NextReadings.Of(Port, [finding], cuts).SingleOrDefault()?.Worth ?? 0;

    private static Finding Said(string next, double chance, double? gain = null, FindingKind kind = FindingKind.Port) => new(
        new BusyRoof(), kind, $"made", chance, null, null, [], Sentence.Plain(next), gain is { } g ? new CutSuggestion($"cut", new Estimate(g, [new("gain", g / 10)]), 0.005, 0.010, null) : null);

    private static NextCut Cut(double gain, double chance)
    {
        var finding = Said("", chance, gain);
        return new NextCut(finding, finding.Suggestion!, gain * chance, null);
    }
}
