using Portwright.Physics.Targets;
using Portwright.Physics.Valves;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The engine at its highest speed asks for more air than this intake can pass below the knee of volumetric efficiency.</summary>
public sealed record PortSpeedAgainstPlan() : FindingRule("port-speed-against-plan", "The port is too small for the plan")
{
    public override Sentence Evidence => $"An intake swept up to its cam's lift; bore, stroke, highest speed, and the intake cam's lift and duration or its lift table stated in the engine plan.";

    public override Sentence Test => $"Taylor's inlet Mach index (piston area times mean piston speed, over mean effective area while the plan's own cam holds the valve open times the speed of sound) at the plan's highest speed is past the whole of its knee, {NamedLimits.InletMachKnee.Numbers}: the knee is no sharp line, and a port within it suits its plan. The chance is that of the index, whose doubt takes in the sweep, the intake's warmth, and the cam's flanks where the plan states one duration alone.";

    public override Sentence ElseExplains => $"A highest speed in the plan that the engine only over-revs to; a tuned intake, whose ram carries somewhat past the knee; supercharging, which moves the power but not the knee.";

    public override Sentence LookFirst => $"The plan: at which speed must it make its power? Then the smallest section and the valve's size against the bore.";

    public override Sentence Cut => $"The port as a whole: valve, throat and smallest section in step. A bigger bowl or a polished roof does not do it; more lift or longer timing may.";

    public override Sentence Risk => $"A port made for the highest speed is slow at the lowest: torque there goes. Class rules may fix the valve.";

    // Both cited from memory; docs/theory/sources.md says who else gives it.
    public override string Source => $"{NamedLimits.InletMachKnee.Source}: volumetric efficiency falls past {NamedLimits.InletMachKnee.Said}";

    public override double Minutes => BenchMinutes.OneFigure;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Engine.Plan is not { } plan || port.Sheet.Flow is not { } flow || InletMach.Of(plan, port) is not { NotStated.Count: 0, MeanArea: { } area, Index: { } index } mach)
        {
            yield break;
        }

        Sentence end = mach.ValvesEnd.IsEmpty ? Sentence.Empty : $" {mach.ValvesEnd}";
        var chance = Confidence.Above(index, InletMach.Knee.High);
        yield return new Finding(
            this,
            FindingKind.Port,
            $"At {Quantity.Turns(plan.HighestRevolutions)} the inlet Mach index is {Quantity.Of(index, Dimension.Ratio)}; volumetric efficiency falls past {NamedLimits.InletMachKnee.Said}. Mean effective area over the cam {Quantity.Of(area, Dimension.Area)}{(mach.Intakes > 1 ? $" through {mach.Intakes} intakes taken alike" : "")}, piston at {Quantity.Speed(InletMachIndex.MeanPistonSpeed(plan.Stroke.Value, plan.HighestRevolutions))} on the mean{Pinch(port)}.{end}",
            chance,
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id), port.Sheet.Job.Id],
            chance >= Confidence.AsGoodAsCertain ? Sentence.Empty
                : plan.IntakeCam.Flanks.Count > 0 ? $"State the cam's other duration: its flanks are part of the doubt." : (Sentence)$"Measure the temperature in the intake at full load: it is most of the doubt.")
        {
            Minutes = plan.IntakeCam.Flanks.Count > 0 ? Minutes : BenchMinutes.OneSetUp,
            Name = mach.ValveCannot ? "The valve is too small for the plan" : Name,
        };
    }

    /// <summary>Mean speed of the intake stroke in the smallest section, by continuity, for the porter's eye; no test rests on it.</summary>
    private static Sentence Pinch(PortSurvey port) => port.Sections.MinBy(s => s.Area.Value) is { } smallest && port.DemandSpeedIn(smallest) is { } demand
        ? (Sentence)$", the air in {smallest.Station.Fact.Letter} then at {Quantity.Speed(demand)}"
        : Sentence.Empty;
}
