using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Cutting;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Cutting;

/// <summary>What to cut next, in which order, and how good past advice was.</summary>
public sealed class NextCutsTests(ITestOutputHelper output)
{
    [Fact]
    public void The_list_is_ordered_by_gain_times_confidence_and_leaves_out_what_gains_nothing()
    {
        var (port, ledger) = Plain(51);
        var findings = new[] { Suggested("a", 0.003, 0.9), Suggested("b", 0.005, 0.95), Suggested("c", 0.0031, 0.99), Suggested("d", 0, 0.99), Suggested("e", null, 0.99) };
        var next = NextCuts.Of(port, findings, ledger);
        Assert.Equal(["b", "c", "a"], next.Select(n => n.Suggestion.What.Us()));
        Assert.Equal(0.005 * 0.95, next[0].Worth, 12);
        Assert.All(next, n => Assert.Null(n.Decided));
    }

    [Fact]
    public void With_the_engine_run_the_list_is_ordered_by_the_torque_its_lifts_are_worth()
    {
        var made = new MadePort(55) { RingsAt = [], Places = [], ExhaustShare = null };
        var bench = made.Bench(out var id, out _);
        var port = PortSurvey.Of(bench.Ledger, id);
        var lifts = port.Sheet.Flow!.Curve.Points.Where(p => p.Lift > 0).Select(p => p.Lift).ToList();
        // Worth rises with lift and is a loss at the lowest.
        var engine = Answer(port, lifts, l => 400 * (l - lifts[1]));
        Finding At(string what, double gain, double lift) => Suggested(what, gain, 0.95) with { Suggestion = new CutSuggestion(Sentence.Plain(what), new Estimate(gain, [new("gain", gain / 4)]), lift, lift, null) };
        Finding[] findings = [At("low", 0.005, lifts[0]), At("middle", 0.003, lifts[2]), At("high", 0.002, lifts[^1])];
        Assert.Equal(["low", "middle", "high"], NextCuts.Of(port, findings, bench.Ledger).Select(n => n.Suggestion.What.Us()));
        var next = NextCuts.Of(port, findings, bench.Ledger, engine);
        Assert.Equal(["high", "middle", "low"], next.Select(n => n.Suggestion.What.Us()));
        Assert.Equal(["high", "middle", "low"], NextCuts.Ranked(findings, next).Select(f => f.Suggestion!.What.Us()));
        // A gain in flow of a share s at a lift worth w brings s w, with the same relative doubt.
        var flow = port.Sheet.Flow.Curve.PointAt(lifts[^1])!.Flow.Value;
        Assert.Equal(0.002 / flow * 400 * (lifts[^1] - lifts[1]), next[0].Torque!.Value, 1e-9);
        Assert.Equal(0.25, next[0].Torque!.StandardUncertainty / next[0].Torque!.Value, 1e-9);
        Assert.True(next[^1].Torque!.Value < 0);

        // An answer with another cut in it says nothing of this one.
        var other = Answer(port with { Sheet = port.Sheet with { Cut = port.Sheet.Cut with { Id = Guid.NewGuid() } } }, lifts, l => l);
        Assert.All(NextCuts.Of(port, findings, bench.Ledger, other), n => Assert.Null(n.Torque));
    }

    [Fact]
    public void A_refused_cut_sinks_under_all_others_and_a_postponed_one_under_the_open_ones()
    {
        var made = new MadePort(52) { RingsAt = [], Places = [], ExhaustShare = null };
        var bench = made.Bench(out var id, out _);
        var port = PortSurvey.Of(bench.Ledger, id);
        Finding[] findings = [Suggested("a", 0.003, 0.9), Suggested("b", 0.005, 0.95), Suggested("c", 0.001, 0.99)];
        var first = NextCuts.Of(port, findings, bench.Ledger);
        bench.Add(NextCuts.Decide(port, first[0], Decision.Refused, "class rules"));
        bench.Add(NextCuts.Decide(port, first[1], Decision.Postponed, "after the valve job"));
        var then = NextCuts.Of(port, findings, bench.Ledger);
        Assert.Equal(["c", "a", "b"], then.Select(n => n.Suggestion.What.Us()));
        Assert.Equal("class rules", then[^1].Decided!.Fact.Reason);

        // The latest word counts: taken up again it rises, and its words begin the next cut.
        bench.Add(NextCuts.Decide(port, then[^1], Decision.Accepted, ""));
        Assert.Equal("b", NextCuts.Of(port, findings, bench.Ledger)[0].Suggestion.What.Us());
        Assert.Equal("b", NextCuts.NoteForNext(bench.Ledger, port.Sheet.Cut.Id, findings, UnitSystem.UsCustomary).Note);
    }

    [Fact]
    public void What_was_taken_and_is_no_longer_suggested_is_left_out_of_the_note_and_said()
    {
        var made = new MadePort(54) { RingsAt = [], Places = [], ExhaustShare = null };
        var bench = made.Bench(out var id, out _);
        var port = PortSurvey.Of(bench.Ledger, id);
        Finding[] findings = [Suggested("a", 0.003, 0.9), Suggested("b", 0.005, 0.95)];
        foreach (var next in NextCuts.Of(port, findings, bench.Ledger))
        {
            bench.Add(NextCuts.Decide(port, next, Decision.Accepted, ""));
        }

        // The wall over b was found thin afterwards: its finding stands, its suggestion is gone.
        Finding[] since = [findings[0], findings[1] with { Suggestion = null }];
        var (note, leftOut) = NextCuts.NoteForNext(bench.Ledger, port.Sheet.Cut.Id, since, UnitSystem.UsCustomary);
        Assert.Equal("a", note);
        Assert.Equal("b", Assert.Single(leftOut));
    }

    [Fact]
    public void What_was_accepted_becomes_the_note_of_the_next_cut_in_the_porters_units()
    {
        var made = new MadePort(53) { RingsAt = [], Places = [], Valve = new ValveData(0.050, Math.PI / 4, 0.0015, 0.0405, 0.008) };
        made.Stations.RemoveAll(s => s.Letter == "F");
        var bench = made.Bench(out var id, out var cut);
        var port = PortSurvey.Of(bench.Ledger, id);
        var next = NextCuts.Of(port, PortFindings.Of(port), bench.Ledger).Single(n => n.Finding.Rule is ThroatTooSmall);
        bench.Add(NextCuts.Decide(port, next, Decision.Accepted, ""));
        Assert.Equal("Open the throat to 1.742 in, blended into seat and bowl.", NextCuts.NoteForNext(bench.Ledger, cut, PortFindings.Of(port), UnitSystem.UsCustomary).Note);
        Assert.Equal("Open the throat to 44.25 mm, blended into seat and bowl.", NextCuts.NoteForNext(bench.Ledger, cut, PortFindings.Of(port), UnitSystem.Si).Note);
    }

    [Theory]
    [InlineData(61, 1.0, true)]
    [InlineData(62, 1.0, true)]
    [InlineData(63, 1.0, true)]
    [InlineData(61, 0.0, false)]
    [InlineData(62, 0.0, false)]
    [InlineData(63, 0.0, false)]
    [InlineData(64, -1.0, false)]
    public void Advice_is_met_by_the_gain_it_promised_and_not_by_none(int seed, double shareOfPromise, bool met)
    {
        var (bench, made, id, advice) = Accepted(seed);
        // The gain comes where it was promised, over the lifts the advice names.
        var mean = PortSurvey.Of(bench.Ledger, id).Sheet.Flow!.Curve.Points.Where(p => p.Lift >= advice.FromLift - 1e-6).Average(p => p.Flow.Value);
        made.FlowFactor = _ => 1 + shareOfPromise * advice.ExpectedGain / mean;
        made.NextCut(bench, id, 1);
        var score = Assert.Single(NextCuts.Score(new Reductions(bench.Ledger), id));
        output.WriteLine($"expected {score.Expected.Value:E3} ± {score.Expected.Expanded():E1}, got {score.Got!.Value:E3} ± {score.Got.Expanded():E1}");
        Assert.Equal(1, score.Cut);
        Assert.Equal(met, score.Met);
    }

    [Fact]
    public void Two_cuts_taken_at_once_share_their_gain()
    {
        var (bench, made, id, advice) = Accepted(65);
        bench.Add(advice with { Finding = "another", What = $"another" });
        made.NextCut(bench, id, 1);
        var scores = NextCuts.Score(new Reductions(bench.Ledger), id);
        Assert.Equal(2, scores.Count);
        Assert.All(scores, s => Assert.Equal(2 * advice.ExpectedGain, s.Expected.Value, 12));
    }

    [Fact]
    public void Advice_taken_back_is_not_scored_and_one_without_a_next_cut_waits()
    {
        var (bench, made, id, advice) = Accepted(66);
        Assert.Empty(NextCuts.Score(new Reductions(bench.Ledger), id));
        bench.Add(advice with { Decision = Decision.Refused, Reason = "water is too near" });
        made.NextCut(bench, id, 1);
        Assert.Empty(NextCuts.Score(new Reductions(bench.Ledger), id));
    }

    [Fact]
    public void A_next_cut_swept_otherwise_scores_nothing()
    {
        var (bench, made, id, _) = Accepted(67);
        made.Kind = PortKind.Exhaust;
        made.NextCut(bench, id, 1);
        var score = Assert.Single(NextCuts.Score(new Reductions(bench.Ledger), id));
        Assert.Null(score.Got);
        Assert.Null(score.Met);
    }

    private static (SimulatedBench Bench, MadePort Made, Guid Port, Advice Advice) Accepted(int seed)
    {
        var made = new MadePort(seed) { Range = Ranges.OfEachKind[3], RingsAt = [], ExhaustShare = null, Places = [("D", 6)], BallFactor = (s, b) => s == "D" && b == 6 ? -0.4 : 1 };
        var bench = made.Bench(out var id, out _);
        var port = PortSurvey.Of(bench.Ledger, id);
        var next = NextCuts.Of(port, PortFindings.Of(port), bench.Ledger).Single(n => n.Finding.Rule is TornOffShortSide);
        var advice = NextCuts.Decide(port, next, Decision.Accepted, "");
        bench.Add(advice);
        return (bench, made, id, advice);
    }

    private static (PortSurvey Port, Ledger Ledger) Plain(int seed)
    {
        var bench = new MadePort(seed) { RingsAt = [], Places = [], ExhaustShare = null }.Bench(out var id, out _);
        return (PortSurvey.Of(bench.Ledger, id), bench.Ledger);
    }

    private static EngineAnswer Answer(PortSurvey port, IReadOnlyList<double> lifts, Func<double, double> worth)
    {
        var plan = PlanInFull.Of(new EnginePlan(0.086, 0.086, 0.140, 4, 10.5, null, null, 3000, 6500));
        var question = EngineQuestion.Of(plan, new EnginePair(port, null), out var problems)!;
        Assert.Empty(problems);
        var curve = new WorthCurve(question.Range, 200, 1e5, [.. lifts.Select(l => new LiftWorth(l, 1e-3, worth(l)))], [], [], []);
        return new EngineAnswer(question, [], [], curve, Estimate.Exact(200));
    }

    private static Finding Suggested(string what, double? gain, double confidence) => new(
        // A station-less finding is told from the next by its bearing.
        new TornOffShortSide(), FindingKind.Port, Sentence.Plain(what), confidence, null, what[0] % 12, [], $"",
        gain is { } g ? new CutSuggestion(Sentence.Plain(what), Estimate.Exact(g), 0.0025, 0.0125, null) : null);
}
