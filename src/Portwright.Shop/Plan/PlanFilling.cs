using Portwright.Physics.Crank;
using Portwright.Physics.Targets;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>Fills a plan's gaps. Every default is common practice without a source unless its reason says more.</summary>
internal static class PlanFilling
{
    private const double RodOverStroke = 1.65, UsualCompression = 10, UsualPistonSpeed = 18, LowestOverHighest = 0.4, TurnAMinute = Math.PI / 30;
    private const double IntakeValveOverBore = 0.5, ExhaustOverIntakeValve = 0.8, FlangeOverValve = 0.8;

    public static PlanReading Fill(EnginePlan plan, EnginePorts ports)
    {
        var problems = new List<PlanProblem>();
        PlanChecks.Figures(plan, problems);
        if (plan is not { Bore: > 0 and var bore, Stroke: > 0 and var stroke } || problems.Count > 0)
        {
            return new PlanReading(null, problems);
        }

        var rod = PlanFigure.Of("Rod", plan.RodLength, Dimension.Length, RodOverStroke * stroke, $"not given: 1.65 x stroke, common practice");
        var offset = PlanFigure.Of("Pin offset", plan.PinOffset, Dimension.Length, 0, $"not given: none");
        var cylinders = PlanFigure.Of("Cylinders", plan.Cylinders, Dimension.Count, 1, $"not given: one");
        var high = PlanFigure.Of("Highest speed", plan.HighestSpeed * TurnAMinute, Dimension.RotationalSpeed, Math.PI * UsualPistonSpeed / stroke,
            $"not given: mean piston speed of {Quantity.Speed(UsualPistonSpeed)}, common practice");
        var low = PlanFigure.Of("Lowest speed", plan.LowestSpeed * TurnAMinute, Dimension.RotationalSpeed, LowestOverHighest * high.Value, $"not given: 0.4 x the highest, common practice");
        var intakeValve = PlanFigure.Of("Intake valve", ports.Intake.ValveDiameter, Dimension.Length, IntakeValveOverBore * bore / Math.Sqrt(ports.Intake.Count), $"not written down with a port: half the bore, common practice");
        var exhaustValve = PlanFigure.Of("Exhaust valve", ports.Exhaust.ValveDiameter, Dimension.Length,
            ExhaustOverIntakeValve * intakeValve.Value, $"not written down with a port: 0.8 x the intake's, common practice");
        var intakeCam = CamInFull.Of(plan, PortKind.Intake, intakeValve.Value, problems);
        var exhaustCam = CamInFull.Of(plan, PortKind.Exhaust, exhaustValve.Value, problems);
        var air = AirInFull.Of(plan.Air, problems);
        if (intakeCam is null || exhaustCam is null || air is null || problems.Count > 0)
        {
            return new PlanReading(null, problems);
        }

        if (low.Value > high.Value)
        {
            problems.Add(new("Highest speed", $"Highest speed is not given, and the usual one, {high.Value / TurnAMinute:0} rpm, is below the lowest. Type the highest too."));
        }

        PlanChecks.Events(intakeCam, exhaustCam, problems);
        PlanChecks.Limits(plan.Limits, plan.CompressionRatio, intakeCam, exhaustCam, problems);
        var crank = new SliderCrank(stroke, rod.Value, offset.Value);
        var count = (int)cylinders.Value;
        var flange = PlanFigure.Of("Intake port at the flange", ports.Intake.FlangeArea * ports.Intake.Count, Dimension.Area, FlangeOverValve * ports.Intake.Count * PistonDemand.PistonArea(intakeValve.Value), $"0.8 x the area of the cylinder's intake valves, common practice");
        var (fuel, fuelWhy) = FuelOf(plan);
        var weights = plan.SpeedWeights is { Count: > 0 } stated ? [.. stated.OrderBy(w => w.Speed)] : EvenWeights(low.Value / TurnAMinute, high.Value / TurnAMinute);
        return problems.Count > 0 ? new PlanReading(null, problems) : new PlanReading(
            new PlanInFull(
                new PlanFigure("Bore", bore, Dimension.Length),
                new PlanFigure("Stroke", stroke, Dimension.Length),
                rod,
                offset,
                PlanFigure.Of("Compression ratio", plan.CompressionRatio, Dimension.Ratio, UsualCompression, $"not given: 10, common practice"),
                cylinders,
                low,
                high,
                intakeValve,
                exhaustValve,
                crank,
                plan.FiringOrder is { Count: > 0 } order ? order : FiringOrders.Usual(count),
                plan.FiringOrder is { Count: > 0 } || count == 1 ? (Sentence)$"" : $"not given: usual for this many cylinders, at even intervals",
                intakeCam,
                exhaustCam,
                IntakeInFull.Of(plan, flange, PistonDemand.PistonArea(bore) * crank.Travel * count, high.Value / (2 * Math.PI)),
                ExhaustInFull.Of(plan, exhaustValve.Value, ports.Exhaust.Count, count),
                fuel,
                fuelWhy,
                PlanFigure.Of("Mixture", plan.Mixture?.Richness, Dimension.Ratio, fuel == FuelKind.Methanol ? 1.25 : 1.15, $"not given: rich for power, common practice"),
                air,
                weights,
                plan.SpeedWeights is { Count: > 0 } ? (Sentence)$"" : $"not given: every speed of the range alike",
                plan.Layout ?? CylinderLayout.OneForAll,
                plan.PortSpeed,
                ports),
            []);
    }

    private static (FuelKind Fuel, Sentence Why) FuelOf(EnginePlan plan)
    {
        if (plan.Mixture?.Fuel is { } stated)
        {
            return (stated, Sentence.Empty);
        }

        bool Says(string word) => plan.Fuel.Contains(word, StringComparison.OrdinalIgnoreCase);
        // "Petrol with 10 percent ethanol" is petrol.
        Sentence read = $"read from the fuel's words";
        return Says("petrol") || Says("gasoline") || Says("free") ? (FuelKind.Petrol, read)
            : Says("methanol") ? (FuelKind.Methanol, read)
            : Says("ethanol") || Says("E85") ? (FuelKind.Ethanol, read)
            : (FuelKind.Petrol, $"not given: {Term.Gasoline}");
    }

    /// <summary>Steps of about 500 rpm from lowest to highest, alike.</summary>
    private static IReadOnlyList<SpeedWeight> EvenWeights(double low, double high)
    {
        if (high <= low)
        {
            return [new SpeedWeight(high, 1)];
        }

        var steps = Math.Clamp((int)Math.Round((high - low) / 500), 1, 20);
        return [.. Enumerable.Range(0, steps + 1).Select(i => new SpeedWeight(low + (high - low) * i / steps, 1))];
    }
}
