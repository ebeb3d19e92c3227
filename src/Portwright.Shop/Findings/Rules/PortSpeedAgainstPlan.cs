using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The engine at its highest speed asks for more air than this intake can pass below the knee of volumetric efficiency.</summary>
public sealed record PortSpeedAgainstPlan() : FindingRule("port-speed-against-plan", "The port is too small for the plan")
{
    /// <summary>Standard uncertainty of the speed of sound in the engine's intake against that of standard air, relative: air 20 K warmer or cooler; judgement, no source.</summary>
    public const double SoundDoubt = 0.03;

    public override Sentence Evidence => $"An intake swept up to its cam's lift; bore, stroke, highest speed and intake cam in the engine plan.";

    public override Sentence Test => $"Taylor's inlet Mach index (piston area times mean piston speed, over mean effective area while the cam holds the valve open times the speed of sound) at the plan's highest speed is above 0.6. The doubt takes in the sweep, the shape of the cam, which the plan does not say, and the intake's warmth.";

    public override Sentence ElseExplains => $"A highest speed in the plan that the engine only over-revs to; a tuned intake, whose ram carries somewhat past the knee; supercharging, which moves the power but not the knee.";

    public override Sentence LookFirst => $"The plan: at which speed must it make its power? Then the smallest section and the valve's size against the bore.";

    public override Sentence Cut => $"The port as a whole: valve, throat and smallest section in step. A bigger bowl or a polished roof does not do it; more lift or longer timing may.";

    public override Sentence Risk => $"A port made for the highest speed is slow at the lowest: torque there goes. Class rules may fix the valve.";

    // Both cited from memory; docs/theory/sources.md says who else gives it.
    public override string Source => "Taylor, The Internal Combustion Engine in Theory and Practice, vol. 1, ch. 6; Livengood and Stanitz, NACA TN 915 (1943): volumetric efficiency falls past 0.5 to 0.6";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var plan = port.Sheet.Job.Fact.Plan;
        if (port.Sheet is not { Flow: { } flow, Cam: { } cam } || port.Sheet.Port.Fact.Kind != PortKind.Intake
            || plan is not { Bore: > 0 and var bore, Stroke: > 0 and var stroke, HighestSpeed: > 0 and var speed }
            || LiftEvent.MeanArea(flow.Curve, cam.Lift) is not { Value: > 0 } one)
        {
            yield break;
        }

        // A cylinder with two intakes breathes through both; the other is taken to be like this one, as a matched set is.
        var intakes = port.Intakes;
        var area = one.Scale(intakes);
        var sound = flow.Curve.Air.State.SpeedOfSound;
        var index = InletMachIndex.Of(bore, stroke, speed / 60, area.Value, sound);
        var doubted = Estimate.Linear(index, (-index / area.Value, area))
            .With(new Contribution("speed of sound in the engine's intake", index * SoundDoubt, double.PositiveInfinity, ContributionKind.Other));
        yield return new Finding(
            this,
            FindingKind.Port,
            $"At {speed:0} rpm the inlet Mach index is {index:0.00} ± {doubted.Expanded():0.00}; volumetric efficiency falls past {InletMachIndex.Knee:0.0}. Mean effective area over the cam {Quantity.Area(area.Value)}{(intakes > 1 ? $" through {intakes} intakes taken alike" : "")}, piston at {Quantity.Speed(InletMachIndex.MeanPistonSpeed(stroke, speed / 60))} on the mean{Pinch(port)}.",
            Confidence.Above(doubted, InletMachIndex.Knee),
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id), port.Sheet.Job.Id],
            $"The cam's lift over crank angle: its shape is most of the doubt.");
    }

    /// <summary>Mean speed of the intake stroke in the smallest section, by continuity, for the porter's eye; no test rests on it.</summary>
    private static Sentence Pinch(PortSurvey port) => port.Sections.MinBy(s => s.Area.Value) is { } smallest && port.DemandSpeedIn(smallest) is { } demand
        ? (Sentence)$", air at {Quantity.Speed(demand)} in {smallest.Station.Fact.Letter}"
        : Sentence.Empty;
}
