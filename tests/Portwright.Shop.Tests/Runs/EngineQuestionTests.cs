using Portwright.Engine.Cam;
using Portwright.Engine.Runs;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Runs;

public sealed class EngineQuestionTests(ITestOutputHelper output)
{
    private static readonly EnginePlan Plan = new(
        0.086, 0.086, 0.140, 4, 10.5, new CamLift(0.0085, 1.5, 0.00025), new CamLift(0.0080, 1.5, 0.0003), 3000, 6500,
        Intake: new IntakeTract(0.25), SpeedWeights: [new(5500, 1)]);

    [Fact]
    public void Doubts_drawn_and_doubts_carried_by_slopes_agree_on_the_mean_torque()
    {
        var question = Of(new MadePort(11) { Plan = Plan, RingsAt = [], Places = [] });
        var worth = WorthCurve.From(question.Single, question.Range, Run(WorthCurve.Tasks(question.Single, question.Range)));
        var carried = Estimate.Linear(worth.Torque, [.. worth.Intake.Select((w, i) => (w.PerArea, question.Intake.Areas[i])), .. worth.Exhaust.Select((w, i) => (w.PerArea, question.Exhaust.Areas[i]))]);
        var drawn = question.Sampled().Select(d => question.Range.Mean([.. Run([.. question.Range.Tasks(d, Settling.Usual)]).Select(p => p.Torque)])).ToList();
        var mean = drawn.Average();
        var spread = Math.Sqrt(drawn.Sum(t => (t - mean) * (t - mean)) / (drawn.Count - 1));
        output.WriteLine($"{worth.Torque:0.00} N m, carried {carried.StandardUncertainty:0.000}, drawn {spread:0.000}");
        // A spread of 24 draws is itself known to 15 percent: three of them.
        Assert.InRange(spread / carried.StandardUncertainty, 0.55, 1.45);
    }

    [Fact]
    public void A_better_port_is_likely_a_gain_and_what_two_cuts_share_cancels()
    {
        var made = new MadePort(12) { Plan = Plan, RingsAt = [], Places = [], FlowBefore = lift => lift > 0.006 ? 0.93 : 1 };
        var bench = made.Bench(out var port, out _);
        var reductions = new Reductions(bench.Ledger);
        var cuts = bench.Ledger.CutsOf(port);
        EngineAnswer Answer(Guid cut)
        {
            var question = EngineQuestion.Of(Reading(reductions, bench.JobId), EngineChoice.Of(reductions, bench.JobId, cut).Pair(reductions), out var problems)! with { DrawnSpeeds = 3, Draws = 6 };
            Assert.Empty(problems);
            return question.Answer(Run(question.Tasks()));
        }

        var (before, after) = (Answer(cuts[0].Id), Answer(cuts[^1].Id));
        var gain = after.Less(before);
        output.WriteLine($"{gain.Of.Value:0.000} +/- {gain.Of.Expanded():0.000} N m, gain with {gain.ProbabilityOfGain:0.000}; one alone {after.MeanTorque.StandardUncertainty:0.000}");
        Assert.True(gain.Of.Value > 0.5);
        Assert.True(gain.ProbabilityOfGain > 0.9);
        Assert.True(gain.Of.StandardUncertainty < Math.Sqrt(before.MeanTorque.Variance + after.MeanTorque.Variance));
        Assert.All(after.TorqueDoubt, d => Assert.True(d > 0 && d < 0.05 * after.BestTorque.Torque));
        Assert.Equal(3, after.Points.Count);
    }

    [Fact]
    public void A_port_runs_its_sections_in_order_from_seat_to_runner_and_the_cam_past_the_sweep_is_said()
    {
        var question = Of(new MadePort(13) { Plan = Plan with { IntakeCam = new(0.012, 1.6) }, RingsAt = [], Places = [] });
        var stations = question.Intake.Side.Tract.Stations;
        Assert.Equal(0, stations[0].Distance);
        Assert.All(stations.Zip(stations.Skip(1)), p => Assert.True(p.Second.Distance > p.First.Distance));
        Assert.True(stations.Count >= 6);
        Assert.Contains(question.Remarks, r => r.Us().Contains("held, not measured", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cam_further_into_overlap_needs_more_room_over_the_piston_and_it_is_said()
    {
        var question = Of(new MadePort(13) { Plan = Plan, RingsAt = [], Places = [] });
        Assert.Contains("valve needs", question.Cautions[0].Us(), StringComparison.Ordinal);
        double Room(double centre) => PistonGap.UsualIntake - PistonGap.Least(
            ValveLift.OfIntake(new(0.0085, 270 * Math.PI / 180, 220 * Math.PI / 180, centre * Math.PI / 180) { RockerRatio = 1.5 }, out _)!, question.Plan.Throw, 0, 0).Gap;
        Assert.True(Room(100) > Room(108) + 0.0005);
        Assert.InRange(Room(108), 0.003, 0.008);
    }

    [Fact]
    public void Without_an_exhaust_sweep_the_usual_balance_stands_in_and_is_said()
    {
        var question = Of(new MadePort(14) { Plan = Plan, RingsAt = [], Places = [], ExhaustShare = null });
        Assert.Contains(question.Remarks, r => r.Us().StartsWith("No exhaust was swept", StringComparison.Ordinal));
        Assert.Equal(0.75 * question.Intake.Areas[^1].Value, question.Exhaust.Areas[^1].Value, 1e-12);
    }

    [Fact]
    public void Swept_both_ways_the_engines_stream_comes_first_whichever_was_swept_last()
    {
        var made = new MadePort(15) { Plan = Plan, RingsAt = [], Places = [], ExhaustShare = null };
        var bench = made.Bench(out _, out var cut);
        var forwards = Question(bench).Intake.Side.Areas;
        var blown = bench.Sweep(cut, FlowDirection.Blow);
        foreach (var (lift, area) in forwards.Lifts.Zip(forwards.WithTheStream)) bench.Read(blown, lift, 0.8 * area);
        var both = Question(bench).Intake;
        Assert.Equal(forwards.WithTheStream, both.Side.Areas.WithTheStream);
        Assert.Equal(0.8, both.Side.Areas.Backwards![^1] / forwards.WithTheStream[^1], 0.03);
        Assert.Contains(both.Remarks, r => r.Us().Contains("swept both ways", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_swept_is_said_as_what_is_missing()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var reductions = new Reductions(bench.Ledger);
        Assert.Null(EngineQuestion.Of(PlanInFull.Of(Plan), EngineChoice.Of(reductions, bench.JobId).Pair(reductions), out var problems));
        Assert.Contains("Sweep an intake first.", Assert.Single(problems).Words.Us(), StringComparison.Ordinal);
    }

    private static EngineQuestion Of(MadePort made) => Question(made.Bench(out _, out _));

    private static EngineQuestion Question(SimulatedBench bench)
    {
        var reductions = new Reductions(bench.Ledger);
        var question = EngineQuestion.Of(Reading(reductions, bench.JobId), EngineChoice.Of(reductions, bench.JobId).Pair(reductions), out var problems);
        Assert.Empty(problems);
        return question!;
    }

    private static PlanReading Reading(Reductions reductions, Guid job) => PlanInFull.Of(reductions.Ledger.Get<Job>(job).Fact.Plan, EnginePorts.Of(reductions, job));

    private static IReadOnlyList<OperatingPoint> Run(IReadOnlyList<EngineTask> tasks) => new EngineBatch().Run(tasks);
}
