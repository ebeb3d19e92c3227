using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Cutting;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Cutting;

/// <summary>That nothing is left to cut is concluded from much: what speaks against it, and by how much, is tried one by one.</summary>
public sealed class WhenNothingIsWorthCutting
{
    /// <summary>Two cuts of which the last gained so much of the mean flow: one and a half in a hundred are worth it. Chances are the program's own, each for one draw of the noise.</summary>
    [Theory]
    [InlineData(0, 0.9871)]
    [InlineData(0.008, 0.8554)]
    [InlineData(0.014, 0.4689)]
    [InlineData(0.02, 0.1090)]
    public void Two_cuts_that_gained_next_to_nothing_say_stop(double gain, double chance) =>
        Assert.Equal(chance, Concluded(Dull(gain))?.Confidence ?? 0, 0.002);

    [Fact]
    public void One_dull_cut_says_little()
    {
        var one = Dull(0);
        one.CutsBefore = 1;
        Assert.Equal(0, Concluded(one)?.Confidence ?? 0, 1e-3);
    }

    /// <summary>A port that passes nearly all its window can: less than one and a half in a hundred are left. Chances as above.</summary>
    [Theory]
    [InlineData(1.02, 0.5216)]
    [InlineData(1.05, 0.9951)]
    [InlineData(1.01, 0.2080)]
    [InlineData(1.03, 0.8183)]
    public void A_port_that_passes_what_its_window_can_says_stop(double factor, double chance) =>
        Assert.Equal(chance, Concluded(Passing(factor))?.Confidence ?? 0, 0.002);

    [Fact]
    public void Four_lifts_speak_for_the_whole_range_and_three_do_not()
    {
        Assert.NotNull(Concluded(Passing(1.08, [0.0025, 0.005, 0.010, 0.0125])));
        Assert.Null(Concluded(Passing(1.08, [0.005, 0.010, 0.0125])));
    }

    /// <summary>A ball on the floor of the bend (two hours round 6) and one on its roof (two round 12), and a ring.</summary>
    [Theory]
    [InlineData(6, 12, true)]
    [InlineData(8, 12, true)]
    [InlineData(8.2, 12, false)]
    [InlineData(4, 12, true)]
    [InlineData(3.8, 12, false)]
    [InlineData(6, 2, true)]
    [InlineData(6, 2.2, false)]
    [InlineData(6, 10, true)]
    [InlineData(6, 9.8, false)]
    public void Nobody_concludes_who_has_not_looked(double floor, double roof, bool concluded)
    {
        var made = Passing(1.08);
        made.Places = [("D", floor), ("D", roof), ("C", 3)];
        Assert.Equal(concluded, Concluded(made) is not null);
        made = Passing(1.08);
        made.Places = [("D", floor), ("D", roof), ("C", 3)];
        made.RingsAt = [];
        Assert.Null(Concluded(made));
    }

    /// <summary>A finding that stands, or a cut that is an open question, speaks against it; a cut less likely than that takes its share of the chance.</summary>
    [Theory]
    [InlineData(0.89, false, true, 1)]
    [InlineData(0.9, false, false, 0)]
    [InlineData(0.49, true, true, 0.51)]
    [InlineData(0.5, true, false, 0)]
    [InlineData(0.2, true, true, 0.8)]
    public void What_is_still_open_speaks_against_it(double chance, bool cuts, bool concluded, double share)
    {
        var port = Passing(1.08).Survey();
        var alone = new NothingWorthCutting().Conclude(port, [], [])!.Confidence;
        var with = new NothingWorthCutting().Conclude(port, [Said(chance, cuts)], []);
        Assert.Equal(concluded, with is not null);
        Assert.Equal(share * alone, with?.Confidence ?? 0, 1e-9);
        // Thin metal is a reason to stop, not one to go on.
        Assert.NotNull(new NothingWorthCutting().Conclude(port, [Said(0.99, false, FindingKind.Stop)], []));
    }

    [Theory]
    [InlineData(0.9, false)]
    [InlineData(1.5, true)]
    [InlineData(2.1, false)]
    public void A_target_that_is_missed_speaks_against_it(double measured, bool concluded) => Assert.Equal(concluded, new NothingWorthCutting().Conclude(
        Passing(1.08).Survey(), [], [new EngineTarget(FlowBalance.Rule, $"a target", Dimension.Ratio, new TargetRange(1, 2), Estimate.Exact(measured), Sentence.Empty)]) is not null);

    private static Finding? Concluded(MadePort made) => new NothingWorthCutting().Conclude(made.Survey(), [], []);

    private static MadePort Dull(double gain) => new(41) { Range = Ranges.OfEachKind[3], PortArea = 0.0009, FlowBefore = _ => 1 - gain, CutsBefore = 2, ExhaustShare = null };

    private static MadePort Passing(double factor, IReadOnlyList<double>? lifts = null)
    {
        var made = new MadePort(42) { Range = Ranges.OfEachKind[3], PortArea = 0.02, ExhaustShare = null, FlowFactor = _ => factor, SpeedFactor = (_, _, _) => 1 };
        made.Lifts = lifts ?? made.Lifts;
        return made;
    }

    private static Finding Said(double chance, bool cuts, FindingKind kind = FindingKind.Port) => new(
        new BusyRoof(), kind, $"made", chance, null, null, [], null, cuts ? new CutSuggestion($"cut", Estimate.Exact(0.001), 0.005, 0.010, null) : null);
}
