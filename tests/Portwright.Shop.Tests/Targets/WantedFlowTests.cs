using Portwright.Engine.Runs;
using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Valves;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Targets;

/// <summary>Flow over lift that the engine asks of a port: never what no port on this valve could give, and nothing near the seat.</summary>
public sealed class WantedFlowTests
{
    private static readonly EnginePlan Plan = EngineTargetsTests.Plan;

    [Fact]
    public void Flow_wanted_rises_with_lift_and_with_engine_speed_and_is_cut_in_two_by_a_second_intake()
    {
        var made = new MadePort(81) { Plan = Plan };
        var wanted = Wanted(made)!;
        Assert.Equal("wanted at 6,000 rpm", wanted.Words);
        Assert.Equal(wanted.Line.Select(p => p.Least).Order(), wanted.Line.Select(p => p.Least));
        Assert.All(wanted.Line, p => Assert.True(p.Most > p.Least && p.Least > 0));
        made.Plan = Plan with { HighestSpeed = 6600 };
        Assert.Equal(1.1, Wanted(made)!.Line[^1].Least / wanted.Line[^1].Least, 6);
        made.Plan = Plan;
        made.Also = (bench, cut) => bench.Add(bench.Ledger.Get<Port>(bench.Ledger.Get<Cut>(cut).Fact.Port).Fact);
        Assert.Equal(0.5, Wanted(made)!.Line[^1].Least / wanted.Line[^1].Least, 6);
    }

    /// <summary>From a tenth of the valve's diameter to the cam's lift: below it the seat rules.</summary>
    [Fact]
    public void Nothing_is_wanted_near_the_seat_or_past_the_cam()
    {
        var wanted = Wanted(new MadePort(83) { Plan = Plan })!;
        Assert.Equal(0.1 * 0.050, wanted.Line[0].Lift, 9);
        Assert.Equal(0.0125, wanted.Line[^1].Lift, 6);
        Assert.Null(wanted.At(0.0045));
        Assert.Null(wanted.At(0.0127));
        Assert.NotNull(wanted.At(0.005));
    }

    /// <summary>At speeds from easy to what the valve can just not do, no lift is asked for more than 0.95 of window or throat.</summary>
    [Theory]
    [InlineData(4000)]
    [InlineData(6000)]
    [InlineData(7500)]
    [InlineData(8200)]
    public void No_more_is_wanted_than_this_valve_could_pass(double speed)
    {
        var made = new MadePort(84) { Plan = Plan with { HighestSpeed = speed } };
        var (wanted, sheet) = (Wanted(made)!, made.Survey().Sheet);
        var perArea = RestatedFlow.VolumeFlow(1, sheet.Flow!.Curve.RestatedAt, sheet.Flow.Curve.Air, FlowDirection.Draw);
        Assert.All(wanted.Line, p => Assert.True(p.Most <= 0.95 * ValveWindow.At(made.Valve.Seat(), p.Lift).Area * perArea * (1 + 1e-12)));
        Assert.All(wanted.Line, p => Assert.True(p.Least < p.Most));
    }

    /// <summary>Ten thousand turns on this valve: no band is drawn over what cannot be, and one sentence says so with its figures.</summary>
    [Fact]
    public void Where_the_valve_cannot_one_sentence_says_so_and_no_band_is_drawn()
    {
        var made = new MadePort(85) { Plan = Plan with { HighestSpeed = 10000 } };
        Assert.Null(Wanted(made));
        var row = Index(made);
        Assert.Equal(TargetAnswer.Over, row.Answer);
        var words = row.Words.Us();
        Assert.Contains("This valve cannot: with 0.95 of its window and throat at every lift it gives ", words, StringComparison.Ordinal);
        Assert.Matches(@"and from \.\d{3} of lift on more lift opens nothing", words);
        Assert.Contains("A larger valve, a longer cam or fewer rpm: ", words, StringComparison.Ordinal);
        Assert.DoesNotContain("This valve cannot", Index(new MadePort(85) { Plan = Plan }).Words.Us(), StringComparison.Ordinal);
    }

    /// <summary>The speed named as the valve's end is where the sentence begins to be said.</summary>
    [Fact]
    public void The_valves_end_is_where_the_band_ends()
    {
        static InletMach At(double speed) => InletMach.Of(Shop.Plan.PlanInFull.Of(Plan with { HighestSpeed = speed }).Plan!, new MadePort(86) { Plan = Plan with { HighestSpeed = speed } }.Survey())!;
        var end = 6000 / At(6000).ShareOfBest!.Value.Low;
        Assert.InRange(end, 8200, 10000);
        Assert.Contains("This valve gives 0.60 at best, ", At(end * 0.999).ValvesEnd.Us(), StringComparison.Ordinal);
        Assert.Contains("This valve gives 0.55 at best, ", At(end * 0.55 / 0.6).ValvesEnd.Us(), StringComparison.Ordinal);
        Assert.True(At(end * 0.499 / 0.6).ValvesEnd.IsEmpty);
        Assert.Contains($"{Math.Round(end / 10) * 10:N0} rpm is its end", At(end * 1.001).ValvesEnd.Us(), StringComparison.Ordinal);
        Assert.False(At(end * 0.999).ValveCannot);
        Assert.True(At(end * 1.001).ValveCannot);
    }

    /// <summary>A port that flows just the wanted curve at every lift has just the index the curve is drawn for: the two rules are one.</summary>
    [Fact]
    public void A_port_that_flows_what_is_wanted_stands_at_the_knee()
    {
        var made = new MadePort(87) { Plan = Plan };
        var inlet = InletMach.Of(Shop.Plan.PlanInFull.Of(Plan).Plan!, made.Survey())!;
        var (lift, seat, share) = (inlet.Plan.IntakeCam.Lift, made.Valve.Seat(), inlet.ShareOfBest!.Value);
        foreach (var (of, knee) in ((double, double)[])[(share.Low, 0.6), (share.High, 0.5)])
        {
            var mean = TimeArea.MeanArea(TimeArea.AngleArea(lift.Opens, lift.Closes, lift.At, l => of * ValveAtBest.At(seat, l)), lift.Closes - lift.Opens);
            Assert.Equal(knee, InletMachIndex.Of(0.086, 0.086, 100, mean, inlet.Plan.Air.State.SpeedOfSound), 9);
        }

        var wanted = Wanted(made)!;
        Assert.Equal(share.Low / share.High, wanted.Line[40].Least / wanted.Line[40].Most, 9);
    }

    /// <summary>A polyline is smooth where no step turns by more than its neighbours: the second differences never jump.</summary>
    [Fact]
    public void The_band_is_smooth_where_the_throat_takes_over()
    {
        var wanted = Wanted(new MadePort(88) { Plan = Plan })!;
        foreach (var edge in (double[][])[[.. wanted.Line.Select(p => p.Least)], [.. wanted.Line.Select(p => p.Most)]])
        {
            var height = edge[^1];
            var bends = Enumerable.Range(1, edge.Length - 2).Select(i => (edge[i + 1] - 2 * edge[i] + edge[i - 1]) / height).ToList();
            // A corner of window and throat bends by 0.006 of the height at one step of 120.
            Assert.All(bends, b => Assert.InRange(Math.Abs(b), 0, 0.0008));
        }
    }

    /// <summary>Twice what is wanted at any lift is never a fault: more flow there only helps.</summary>
    [Fact]
    public void Being_over_what_is_wanted_is_never_a_fault()
    {
        var rows = Rows(new MadePort(89) { Plan = Plan with { HighestSpeed = 2600 } });
        Assert.Equal(4, rows.Count);
        Assert.All(rows, r => Assert.Equal((TargetAnswer.Within, "met"), (r.Answer, r.AnswerWords)));
        Assert.All(rows, r => Assert.Matches(@"^[\d.]+ to [\d.]+ cfm or more$", r.WantedSaid.Us()));
        Assert.All(Rows(new MadePort(89) { Plan = Plan with { HighestSpeed = 8000 }, PortArea = 0.0006 }), r => Assert.Equal(TargetAnswer.Short, r.Answer));
    }

    [Fact]
    public void Nothing_is_drawn_as_wanted_on_what_nobody_stated()
    {
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { HighestSpeed = null } }));
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { Bore = null } }));
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { IntakeCam = null } }));
        Assert.Null(Wanted(new MadePort(82) { Plan = Plan with { IntakeTiming = null } }));
    }

    /// <summary>Where the engine's answer says a percent is worth nothing, nothing is missed; where it pays most, all of it.</summary>
    [Fact]
    public void Worth_over_lift_of_the_engine_run_shapes_what_is_wanted()
    {
        var wanted = Wanted(new MadePort(90) { Plan = Plan })!;
        LiftWorth[] worth = [new(0.0025, 1e-4, 0), new(0.005, 1e-4, -0.1), new(0.0075, 1e-4, 0.1), new(0.010, 1e-4, 1), new(0.0125, 1e-4, 0.8)];
        var shaped = wanted.ShapedBy(worth)!;
        Assert.Equal("wanted at 6,000 rpm, by the engine run", shaped.Words);
        Assert.Equal(wanted.Line.Select(p => p.Most), shaped.Line.Select(p => p.Most));
        Assert.Equal(0, shaped.At(0.005)!.Value.Low, 12);
        // Half of the share from which a lift pays in full.
        Assert.Equal(0.5, shaped.At(0.0075)!.Value.Low / wanted.At(0.0075)!.Value.Low, 0.02);
        Assert.Equal(wanted.At(0.0125)!.Value.Low, shaped.At(0.0125)!.Value.Low, 12);
        Assert.Null(wanted.ShapedBy([.. worth.Select(w => w with { Torque = -1 })]));
    }

    /// <summary>The rule of exhaust and intake speaks of each cam's lift: an exhaust is asked for nothing at another.</summary>
    [Fact]
    public void An_exhaust_is_asked_for_its_share_at_its_cams_lift_alone()
    {
        var made = new MadePort(91) { Plan = Plan };
        var bench = made.Bench(out _, out _);
        var reductions = new Reductions(bench.Ledger);
        var exhaust = bench.Ledger.All<Port>().Single(p => p.Fact.Kind == PortKind.Exhaust).Id;
        var sheet = PortSheet.Of(reductions, exhaust);
        var wanted = WantedFlow.Of(reductions, sheet)!;
        Assert.Equal("70 to 80 % of intake", wanted.Words);
        var place = Assert.Single(wanted.Line);
        Assert.Equal(Plan.ExhaustCam!.NetLift(), place.Lift, 6);
        Assert.Equal(0.7 / 0.8, place.Least / place.Most, 9);
        Assert.Null(wanted.At(0.6 * place.Lift));
        // The port's area is 71 percent of the intake's: blown it stands where the mark says.
        var curve = sheet.Flow!.Curve;
        double PerArea(FlowDirection way) => RestatedFlow.VolumeFlow(1, curve.RestatedAt, curve.Air, way);
        Assert.Equal(0.71 / 0.70 * PerArea(FlowDirection.Blow) / PerArea(FlowDirection.Draw), curve.At(place.Lift)!.Value / place.Least, 0.01);
        made.Plan = Plan with { ExhaustCam = null };
        var without = new Reductions(made.Bench(out _, out _).Ledger);
        Assert.Null(WantedFlow.Of(without, PortSheet.Of(without, without.Ledger.All<Port>().Single(p => p.Fact.Kind == PortKind.Exhaust).Id)));
    }

    private static IReadOnlyList<EngineTarget> Rows(MadePort made) => [.. Targets(made).Rows.Where(r => r.Rule == ValveAtBest.Rule)];

    private static EngineTarget Index(MadePort made) => Targets(made).Rows.Single(r => r.What.Us().StartsWith("Inlet Mach index", StringComparison.Ordinal));

    private static EngineTargets Targets(MadePort made)
    {
        var bench = made.Bench(out var port, out _);
        return EngineTargets.Of(new Reductions(bench.Ledger), port);
    }

    private static WantedFlow? Wanted(MadePort made)
    {
        var bench = made.Bench(out var port, out _);
        var reductions = new Reductions(bench.Ledger);
        return WantedFlow.Of(reductions, PortSheet.Of(reductions, port));
    }
}
