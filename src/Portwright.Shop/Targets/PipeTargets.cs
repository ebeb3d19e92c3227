using Portwright.Engine.Gas.Ends;
using Portwright.Physics.Targets;
using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Targets;

/// <summary>Runner and plenum: estimates to start a search from.</summary>
internal static class PipeTargets
{
    private const double Degree = Math.PI / 180;

    public static IEnumerable<EngineTarget> Of(PlanInFull plan, PortSurvey survey)
    {
        if (survey.Sheet.Port.Fact.Kind != PortKind.Intake)
        {
            yield break;
        }

        var sound = plan.Air.State.SpeedOfSound;
        var pipe = plan.Intake;
        var (area, port) = ((pipe.FlangeArea.Value + pipe.FarArea.Value) / 2, survey.Centreline.Length);
        var end = EndCorrection.InWall(Math.Sqrt(pipe.FarArea.Value / Math.PI));
        var acoustic = port + pipe.RunnerLength.Value + end;
        var range = new TargetRange(plan.LowestSpeed.Value, plan.HighestSpeed.Value);
        var (early, late) = (NamedLimits.EchoAngle.Limits.Low * Degree, NamedLimits.EchoAngle.Limits.High * Degree);
        Sentence lengths = $"Valve to open end {Quantity.Length(acoustic)}: port {Quantity.Length(port)}{(survey.CentrelineIsOwn ? "" : " (the usual one)")}, runner {Quantity.Length(pipe.RunnerLength.Value)}, end correction {Quantity.Length(end)}.";
        yield return new(RunnerTuning.EchoRule, $"The runner's echo helps at", Dimension.RotationalSpeed, range,
            Between(RunnerTuning.EchoRevolutionsASecond(acoustic, sound, early) * 2 * Math.PI, RunnerTuning.EchoRevolutionsASecond(acoustic, sound, late) * 2 * Math.PI, "angle of the echo"), lengths)
        {
            Assumed = NotStated(plan.LowestSpeed, plan.HighestSpeed, pipe.RunnerLength, pipe.FarArea),
        };
        var (shortest, longest) = (RunnerTuning.EchoLength(plan.HighestRevolutions, sound, early) - port - end, RunnerTuning.EchoLength(plan.HighestRevolutions, sound, late) - port - end);
        if (shortest > 0)
        {
            var stated = !pipe.RunnerLength.IsAssumed;
            yield return new(RunnerTuning.EchoRule, $"Runner that helps at the highest speed", Dimension.Length, new(shortest, longest, (longest + port + end) * InletMachIndex.SoundDoubt * Math.Sqrt(3)), stated ? Estimate.Exact(pipe.RunnerLength.Value) : null,
                $"From the flange{(stated ? "" : "; no runner stated")}.")
            {
                Assumed = NotStated(plan.HighestSpeed, pipe.RunnerLength, pipe.FarArea),
            };
        }

        var rings = RunnerTuning.VesselRevolutionsASecond(plan.Displacement, plan.CompressionRatio.Value, area, acoustic, sound) * 2 * Math.PI * RunnerTuning.EngelmanFactor;
        var factor = NamedLimits.VesselFactor.Limits;
        yield return new(RunnerTuning.VesselRule, $"Cylinder and runner ring together at", Dimension.RotationalSpeed, range, Between(rings / factor.High, rings / factor.Low, "factor of the vessel rule"), $"")
        {
            Assumed = NotStated(plan.LowestSpeed, plan.HighestSpeed, plan.CompressionRatio, pipe.RunnerLength, pipe.FlangeArea, pipe.FarArea),
        };
        var note = RunnerTuning.QuarterWave(acoustic, sound);
        yield return new(RunnerTuning.QuarterWaveRule, $"Swings of the shut runner in a cycle", Dimension.Ratio, null, Estimate.Exact(RunnerTuning.SwingsACycle(acoustic, sound, plan.HighestRevolutions)),
            $"Its note is {note:0} Hz, counted at the highest speed; a whole number lets a swing arrive as the valve opens again.");
        var throttle = pipe.ThrottleArea.Value;
        var neck = NamedLimits.ThrottleNeck.Limits.Middle * 1e-3 + 2 * EndCorrection.InWall(Math.Sqrt(throttle / Math.PI));
        var plenum = VesselResonance.Lumped(pipe.PlenumVolume.Value, throttle, neck, sound);
        yield return new(VesselResonance.Rule, $"Intake strokes beat with the plenum's note at", Dimension.RotationalSpeed, null, Estimate.Exact(plenum * 2 / plan.Cylinders * 2 * Math.PI),
            $"{plenum:0} Hz with {Quantity.Volume(pipe.PlenumVolume.Value)} behind {Quantity.Area(throttle)} of throttle, its neck taken as {Quantity.Length(neck)}.");
    }

    private static IReadOnlyList<PlanFigure> NotStated(params PlanFigure[] figures) => [.. figures.Where(f => f.IsAssumed)];

    /// <summary>Anywhere between two values alike, in air as warm as the engine makes it.</summary>
    private static Estimate Between(double low, double high, string cause) => Estimate.Exact((low + high) / 2)
        .With(new Contribution(InletMachIndex.SoundSource, (low + high) / 2 * InletMachIndex.SoundDoubt, double.PositiveInfinity, ContributionKind.Other))
        .With(new Contribution(cause, Math.Abs(high - low) / Math.Sqrt(12), Shape: InputShape.Rectangular));
}
