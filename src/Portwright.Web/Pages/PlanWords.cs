using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Web.Pages;

/// <summary>An engine plan in a sentence.</summary>
internal static class PlanWords
{
    public static string Of(EnginePlan plan, UnitSystem units)
    {
        var parts = new List<string>();
        if (plan.Cylinders is { } cylinders)
        {
            parts.Add(cylinders == 1 ? "one cylinder" : $"{cylinders} cylinders");
        }

        if (plan.Bore is { } bore)
        {
            parts.Add($"bore {Print.Number(bore, Dimension.Length, units)}");
        }

        if (plan.Stroke is { } stroke)
        {
            parts.Add($"stroke {Print.Number(stroke, Dimension.Length, units)}");
        }

        if (plan.LiftOf(PortKind.Intake) is { } intake)
        {
            parts.Add($"intake lifts {Print.Number(intake, Dimension.Lift, units)}");
        }

        if (plan.LiftOf(PortKind.Exhaust) is { } exhaust)
        {
            parts.Add($"exhaust lifts {Print.Number(exhaust, Dimension.Lift, units)}");
        }

        if (plan is { LowestSpeed: { } low, HighestSpeed: { } high })
        {
            parts.Add(FormattableString.Invariant($"{low:N0} to {high:N0} rpm"));
        }

        if (plan.Fuel.Length > 0)
        {
            parts.Add(plan.Fuel);
        }

        return parts.Count == 0
            ? "Not written down yet. Without the cam the sheet cannot say what flows at its lift."
            : string.Join("; ", parts) + ".";
    }
}
