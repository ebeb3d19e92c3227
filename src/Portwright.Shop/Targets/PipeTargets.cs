using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>Runner and plenum: estimates to start a search from.</summary>
internal static class PipeTargets
{
    /// <summary>End correction over radius for a pipe's end in a wall.</summary>
    private const double EndInWall = 0.85;

    /// <summary>The echo's usual angles, rad.</summary>
    private const double Early = 80 * Math.PI / 180, Late = 90 * Math.PI / 180;

    /// <summary>Engelman's factor spreads from 2.0 to 2.5.</summary>
    private const double LeastFactor = 2.0, MostFactor = 2.5;

    /// <summary>Length of a throttle's neck without its ends, m; common practice, no source.</summary>
    private const double ThrottleNeck = 0.06;

    public static IEnumerable<EngineTarget> Of(PlanInFull plan, PortSurvey survey)
    {
        if (survey.Sheet.Port.Fact.Kind != PortKind.Intake)
        {
            yield break;
        }

        var sound = plan.Air.State.SpeedOfSound;
        var pipe = plan.Intake;
        var (area, port) = ((pipe.FlangeArea.Value + pipe.FarArea.Value) / 2, survey.Centreline.Length);
        var end = EndInWall * Math.Sqrt(pipe.FarArea.Value / Math.PI);
        var acoustic = port + pipe.RunnerLength.Value + end;
        var range = new TargetRange(plan.LowestSpeed.Value, plan.HighestSpeed.Value);
        Sentence lengths = $"Valve to open end {Quantity.Length(acoustic)}: port {Quantity.Length(port)}{(survey.CentrelineIsOwn ? "" : " (the usual one)")}, runner {Quantity.Length(pipe.RunnerLength.Value)}, end correction {Quantity.Length(end)}.";
        yield return new(RunnerTuning.EchoRule, $"The runner's echo helps at", Dimension.RotationalSpeed, range,
            Between(RunnerTuning.EchoRevolutionsASecond(acoustic, sound, Early) * 2 * Math.PI, RunnerTuning.EchoRevolutionsASecond(acoustic, sound, Late) * 2 * Math.PI, "angle of the echo"), lengths);
        var (shortest, longest) = (RunnerTuning.EchoLength(plan.HighestRevolutions, sound, Early) - port - end, RunnerTuning.EchoLength(plan.HighestRevolutions, sound, Late) - port - end);
        if (shortest > 0)
        {
            yield return new(RunnerTuning.EchoRule, $"Runner that helps at the highest speed", Dimension.Length, new(shortest, longest), Estimate.Exact(pipe.RunnerLength.Value), $"From the flange.");
        }

        var rings = RunnerTuning.VesselRevolutionsASecond(plan.Displacement, plan.CompressionRatio.Value, area, acoustic, sound) * 2 * Math.PI * RunnerTuning.EngelmanFactor;
        yield return new(RunnerTuning.VesselRule, $"Cylinder and runner ring together at", Dimension.RotationalSpeed, range, Between(rings / MostFactor, rings / LeastFactor, "factor of the vessel rule"), $"");
        var note = RunnerTuning.QuarterWave(acoustic, sound);
        yield return new(RunnerTuning.QuarterWaveRule, $"Swings of the shut runner in a cycle", Dimension.Ratio, null, Estimate.Exact(RunnerTuning.SwingsACycle(acoustic, sound, plan.HighestRevolutions)),
            $"Its note is {note:0} Hz, counted at the highest speed; a whole number lets a swing arrive as the valve opens again.");
        var throttle = pipe.ThrottleArea.Value;
        var neck = ThrottleNeck + 2 * EndInWall * Math.Sqrt(throttle / Math.PI);
        var plenum = VesselResonance.Lumped(pipe.PlenumVolume.Value, throttle, neck, sound);
        yield return new(VesselResonance.Rule, $"Intake strokes beat with the plenum's note at", Dimension.RotationalSpeed, null, Estimate.Exact(plenum * 2 / plan.Cylinders * 2 * Math.PI),
            $"{plenum:0} Hz with {Quantity.Volume(pipe.PlenumVolume.Value)} behind {Quantity.Area(throttle)} of throttle, its neck taken as {Quantity.Length(neck)}.");
    }

    /// <summary>Anywhere between two values alike.</summary>
    private static Estimate Between(double low, double high, string cause) => Estimate.Exact((low + high) / 2)
        .With(new Contribution(cause, Math.Abs(high - low) / Math.Sqrt(12), double.PositiveInfinity, ContributionKind.Other));
}
