using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Targets;

/// <summary>What is assumed is never missed: a row that would read otherwise with another figure has no answer while nobody stated that figure.</summary>
public sealed class AssumedFigureTests
{
    private const double Degree = Math.PI / 180;

    private static readonly EnginePlan Whole = EngineTargetsTests.Plan with
    {
        Intake = new IntakeTract(0.25, 0.0013, 0.0014, 0.002, new ThrottleArea(0.002)),
        ExhaustTiming = new CamTiming(275 * Degree, null, 224 * Degree, null, 112 * Degree),
        PinOffset = 0,
        Air = new RunningAir(Pressure: 101325, Temperature: 293.15, RelativeHumidity: 0),
    };

    public static TheoryData<string> Figures => [.. Plans.Keys];

    /// <summary>Each figure of the plan left out, and stated as another that is quite possible.</summary>
    private static readonly Dictionary<string, (Func<EnginePlan, EnginePlan> Without, Func<EnginePlan, EnginePlan> Otherwise)> Plans = new()
    {
        ["rod"] = (p => p with { RodLength = null }, p => p with { RodLength = 1.9 * 0.086 }),
        ["pin offset"] = (p => p with { PinOffset = null }, p => p with { PinOffset = 0.0005 }),
        ["compression ratio"] = (p => p with { CompressionRatio = null }, p => p with { CompressionRatio = 12.5 }),
        ["lowest speed"] = (p => p with { LowestSpeed = null }, p => p with { LowestSpeed = 3500 }),
        ["highest speed"] = (p => p with { HighestSpeed = null }, p => p with { HighestSpeed = 7000 }),
        ["intake cam"] = (p => p with { IntakeCam = null }, p => p with { IntakeCam = new CamLift(0.0070, 1.5, 0.00025) }),
        ["exhaust cam"] = (p => p with { ExhaustCam = null }, p => p with { ExhaustCam = new CamLift(0.0066, 1.5, 0.0003) }),
        ["intake timing"] = (p => p with { IntakeTiming = null }, p => p with { IntakeTiming = new CamTiming(250 * Degree, null, 205 * Degree, null, 108 * Degree) }),
        ["exhaust timing"] = (p => p with { ExhaustTiming = null }, p => p with { ExhaustTiming = new CamTiming(255 * Degree, null, 205 * Degree, null, 112 * Degree) }),
        ["one intake duration"] = (p => p with { IntakeTiming = p.IntakeTiming! with { DurationAt050 = null } }, p => p with { IntakeTiming = p.IntakeTiming! with { DurationAt050 = 210 * Degree } }),
        ["runner length"] = (p => p with { Intake = p.Intake! with { RunnerLength = null } }, p => p with { Intake = p.Intake! with { RunnerLength = 0.40 } }),
        ["runner section"] = (p => p with { Intake = p.Intake! with { FlangeArea = null } }, p => p with { Intake = p.Intake! with { FlangeArea = 0.0018 } }),
        ["runner's far end"] = (p => p with { Intake = p.Intake! with { FarArea = null } }, p => p with { Intake = p.Intake! with { FarArea = 0.0030 } }),
        ["plenum"] = (p => p with { Intake = p.Intake! with { PlenumVolume = null } }, p => p with { Intake = p.Intake! with { PlenumVolume = 0.004 } }),
        ["throttle"] = (p => p with { Intake = p.Intake! with { Throttle = null } }, p => p with { Intake = p.Intake! with { Throttle = new ThrottleArea(0.0012) } }),
        ["air's temperature"] = (p => p with { Air = p.Air! with { Temperature = null } }, p => p with { Air = p.Air! with { Temperature = 308.15 } }),
        ["air's pressure"] = (p => p with { Air = p.Air! with { Pressure = null } }, p => p with { Air = p.Air! with { Pressure = 90000 } }),
        ["no intake tract"] = (p => p with { Intake = null }, p => p with { Intake = new IntakeTract(0.40, 0.0018, 0.0030, 0.004, new ThrottleArea(0.0012)) }),
        ["nothing but bore and stroke"] = (p => new EnginePlan(p.Bore, p.Stroke), p => Whole with { LowestSpeed = 3500, HighestSpeed = 7000, RodLength = 1.9 * 0.086 }),
    };

    [Theory]
    [MemberData(nameof(Figures))]
    public void No_row_is_judged_by_a_figure_nobody_stated(string figure)
    {
        var (without, otherwise) = Plans[figure];
        var others = Rows(otherwise(Whole));
        foreach (var row in Rows(without(Whole)).Where(r => r.Answer != TargetAnswer.None))
        {
            var other = others.Single(r => r.What.Us() == row.What.Us());
            Assert.True(Near(row, row.Wanted!.Value.Low, other.Wanted!.Value.Low, other.Wanted.Value.Vague) && Near(row, row.Wanted.Value.High, other.Wanted.Value.High, other.Wanted.Value.Vague),
                $"{row.What.Us()} wants {row.WantedSaid.Us()} without the {figure} and {other.WantedSaid.Us()} with another, and still says {row.AnswerWords}.");
            Assert.True(Math.Abs(row.Measured!.Value - other.Measured!.Value) <= row.Measured.Expanded(),
                $"{row.What.Us()} is {row.MeasuredSaid.Us()} without the {figure} and {other.MeasuredSaid.Us()} with another, and still says {row.AnswerWords}.");
        }
    }

    /// <summary>Stated, each of them is judged; so the guard above is not won by judging nothing.</summary>
    [Fact]
    public void A_whole_plan_is_judged_throughout()
    {
        var rows = Rows(Whole);
        Assert.All(rows, r => Assert.Empty(r.Assumed));
        Assert.True(rows.Count(r => r.Answer != TargetAnswer.None) >= 20);
        Assert.Contains(rows, r => r.What.Us() == "Runner that helps at the highest speed" && r.Answer != TargetAnswer.None);
    }

    [Fact]
    public void A_runner_nobody_stated_is_not_too_short()
    {
        var row = Rows(EngineTargetsTests.Plan with { Intake = null }).Single(r => r.What.Us() == "Runner that helps at the highest speed");
        Assert.Equal((TargetAnswer.None, null), (row.Answer, row.Measured));
        Assert.StartsWith("From the flange; no runner stated. Not judged: nobody stated runner length (5.906 in assumed), runner section at the far end (", row.Words.Us(), StringComparison.Ordinal);
        Assert.False(row.WantedSaid.IsEmpty);
    }

    private static bool Near(EngineTarget row, double one, double other, double vague) =>
        one == other || Math.Abs(one - other) <= Math.Max(Math.Max(row.Measured!.Expanded(), vague), 1e-9 * Math.Abs(one));

    private static IReadOnlyList<EngineTarget> Rows(EnginePlan plan)
    {
        var bench = new MadePort(80) { Plan = plan }.Bench(out var port, out _);
        return EngineTargets.Of(new Reductions(bench.Ledger), port).Rows;
    }
}
