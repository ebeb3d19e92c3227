using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>The port against the plan's highest speed: one number, by the plan's own cam, in finding and target alike.</summary>
public sealed class PortSpeedTests
{
    private const double Degree = Math.PI / 180;

    private const string Key = "port-speed-against-plan";

    public static TheoryData<int> Seeds => [.. Enumerable.Range(21, 5)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void An_engine_that_asks_for_more_than_the_port_passes_is_found(int seed) =>
        Assert.Single(PortFindings.Of(Port(seed, p => p).Survey), f => f.Rule.Key == Key);

    public static TheoryData<string> Statements => [.. Ways.Keys];

    private static readonly Dictionary<string, Func<EnginePlan, EnginePlan>> Ways = new()
    {
        ["both durations"] = p => p,
        ["seat duration alone"] = p => p with { IntakeTiming = new CamTiming(270 * Degree) },
        [".050 duration alone"] = p => p with { IntakeTiming = new CamTiming(null, null, 220 * Degree) },
        ["a lift table"] = p => p with { IntakeTiming = new CamTiming(Table: [.. Enumerable.Range(0, 27).Select(i => new LiftAtAngle((-27 + 10 * i) * Degree, Math.Round(0.0125 * Math.Pow(Math.Sin(Math.PI * i / 26), 2), 6)))]) },
    };

    /// <summary>With the cam stated, finding and target print the same digits and come from the same number; the chance is the answer's.</summary>
    [Theory]
    [MemberData(nameof(Statements))]
    public void Finding_and_target_say_the_same_to_the_digit(string stated)
    {
        var (survey, targets) = Port(41, Ways[stated]);
        var finding = Look(survey);
        var row = Index(targets);
        Assert.Empty(row.Assumed);
        Assert.Contains($"the inlet Mach index is {row.MeasuredSaid.Us()};", finding.Sentence.Us(), StringComparison.Ordinal);
        Assert.Equal(Confidence.Above(row.Measured!, row.Wanted!.Value.HighEdge), finding.Confidence);
        Assert.Equal(TargetAnswer.Over, row.Answer);
        var area = targets.Rows.Single(r => r.What.Us() == "Mean effective area over the event");
        Assert.Contains($"over the cam {area.MeasuredSaid.Us()}", finding.Sentence.Us(), StringComparison.Ordinal);
        Assert.Contains($"and is {area.MeasuredSaid.Us()}.", row.Words.Us(), StringComparison.Ordinal);
        Assert.Equal(area.Measured!.Value, LiftEvent.MeanArea(survey.Sheet.Flow!.Curve, targets.Plan!.CamOf(PortKind.Intake))!.Value);
    }

    public static TheoryData<string> Gaps => [.. LeftOut.Keys];

    private static readonly Dictionary<string, (Func<EnginePlan, EnginePlan> Without, string Names)> LeftOut = new()
    {
        ["bore"] = (p => p with { Bore = null }, ""),
        ["stroke"] = (p => p with { Stroke = null }, ""),
        ["highest speed"] = (p => p with { HighestSpeed = null }, "highest speed"),
        ["cam"] = (p => p with { IntakeCam = null }, "intake lobe lift"),
        ["timing"] = (p => p with { IntakeTiming = null }, "intake seat duration"),
        ["durations"] = (p => p with { IntakeTiming = new CamTiming(null, null, null, null, 108 * Degree) }, "intake seat duration"),
    };

    /// <summary>What nobody stated is not missed: no finding, and the target's row says what was assumed in place of an answer.</summary>
    [Theory]
    [MemberData(nameof(Gaps))]
    public void Nothing_is_found_on_a_figure_nobody_stated(string gap)
    {
        var (without, names) = LeftOut[gap];
        // So small a port that any engine misses it.
        var (survey, targets) = Port(42, without, area: 0.0003);
        Assert.DoesNotContain(Catalogue.All.SelectMany(r => r.Look(survey)), f => f.Rule.Key == Key);
        if (names.Length == 0)
        {
            Assert.Empty(targets.Rows);
            return;
        }

        var row = Index(targets);
        Assert.Equal((TargetAnswer.None, "not judged"), (row.Answer, row.AnswerWords));
        Assert.True(row.Words.Us().Contains($"Not judged: nobody stated {names} (", StringComparison.Ordinal), row.Words.Us());
        Assert.EndsWith(" assumed).", row.Words.Us(), StringComparison.Ordinal);
    }

    /// <summary>A limit without a sharp line, here anywhere from 0.5 to 0.6 alike: a value known sharply is past it by how much of the range lies below.</summary>
    [Theory]
    [InlineData(0.49, 0.00)]
    [InlineData(0.525, 0.25)]
    [InlineData(0.55, 0.50)]
    [InlineData(0.59, 0.90)]
    [InlineData(0.61, 1.00)]
    public void The_chance_of_being_past_a_vague_limit_takes_in_its_width(double index, double chance) =>
        Assert.Equal(chance, Confidence.Above(Estimate.Exact(index), NamedLimits.InletMachKnee.Limits), 0.003);

    /// <summary>At 0.60 against a sharp 0.6 it is even odds; against a width it is not yet as good as certain.</summary>
    [Fact]
    public void Width_of_a_limit_and_doubt_of_the_value_add_up()
    {
        var index = Estimate.Exact(0.60).With(new Contribution("sound", 0.018));
        Assert.InRange(Confidence.Above(index, NamedLimits.InletMachKnee.Limits), 0.90, 0.95);
        Assert.Equal(0.5, Confidence.Above(index, 0.6), 6);
        Assert.Equal(1 - Confidence.Above(index, NamedLimits.InletMachKnee.Limits), Confidence.Below(index, NamedLimits.InletMachKnee.Limits), 12);
    }

    /// <summary>Air 20 kelvin warmer or cooler is 3 percent of the speed of sound: it is in the index with nothing else to hide it.</summary>
    [Fact]
    public void The_intakes_warmth_is_in_the_doubt()
    {
        var row = Index(Port(43, p => p).Targets);
        Assert.Equal(0.03 * row.Measured!.Value, Math.Abs(row.Measured.Contributions.Single(c => c.Source == "speed of sound in the engine's intake").Amount), 6);
        Assert.DoesNotContain(row.Measured.Contributions, c => c.Source == "shape of the cam");
    }

    /// <summary>Within the knee a port suits its plan, past it not: an index in the middle of it is as good as surely within, however small the doubt.</summary>
    [Theory]
    [InlineData(0.55, 0.05, TargetAnswer.Within)]
    [InlineData(0.60, 0.50, TargetAnswer.CannotTell)]
    [InlineData(0.66, 0.95, TargetAnswer.Over)]
    public void Within_the_knee_no_port_is_too_small(double index, double chance, TargetAnswer answer)
    {
        // The index goes with engine speed at one curve and cam.
        static (PortSurvey Survey, EngineTargets Targets) At(double speed) => Port(44, p => p with { HighestSpeed = speed });
        var speed = 9000 * index / Index(At(9000).Targets).Measured!.Value;
        var (survey, targets) = At(speed);
        var row = Index(targets);
        Assert.Equal(index, row.Measured!.Value, 6);
        Assert.InRange(Look(survey).Confidence, chance - 0.06, chance + 0.05);
        Assert.Equal((answer, "0.60 or less"), (row.Answer, row.WantedSaid.Us()));
    }

    /// <summary>Where no port on this valve would do, the finding is of the valve.</summary>
    [Theory]
    [InlineData(7000, "The port is too small for the plan")]
    [InlineData(14000, "The valve is too small for the plan")]
    public void What_is_too_small_is_named(double speed, string name) => Assert.Equal(name, Look(Port(45, p => p with { HighestSpeed = speed }).Survey).Name);

    private static Finding Look(PortSurvey survey) => Assert.Single(Catalogue.All.SelectMany(r => r.Look(survey)), f => f.Rule.Key == Key);

    private static EngineTarget Index(EngineTargets targets) => targets.Rows.Single(r => r.What.Us().StartsWith("Inlet Mach index", StringComparison.Ordinal));

    private static (PortSurvey Survey, EngineTargets Targets) Port(int seed, Func<EnginePlan, EnginePlan> plan, double area = 0.00130)
    {
        var made = new MadePort(seed) { RingsAt = [], Places = [], PortArea = area };
        made.Plan = plan(made.Plan with { HighestSpeed = 9000, IntakeTiming = new CamTiming(270 * Degree, null, 220 * Degree, null, 108 * Degree) });
        var bench = made.Bench(out var port, out _);
        var targets = EngineTargets.Of(new Reductions(bench.Ledger), port);
        return (targets.Survey, targets);
    }
}
