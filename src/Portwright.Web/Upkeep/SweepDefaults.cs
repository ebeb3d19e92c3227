using Portwright.Shop.Bench;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Web.Upkeep;

/// <summary>What is offered where the shop has not said anything yet.</summary>
public static class SweepDefaults
{
    /// <summary>28 inches of water at 4 degC, Pa; common practice.</summary>
    public const double TestPressure = StandInBench.Trade;

    /// <summary>The run offered for a first sweep: every .050 in to .600, or every 1 mm to 15 mm; common practice.</summary>
    public static TestRun Run(UnitSystem units) => TestRun.Of([.. Lifts(units).Select(l => Print.Bare(l, Dimension.Lift, units)).Select(text =>
        TypedNumber.TryParse(text, Dimension.Lift, units, "Lift", out var lift, out var problem) ? lift : throw new InvalidOperationException(problem))]);

    /// <summary>Its lifts, m.</summary>
    public static IEnumerable<double> Lifts(UnitSystem units) => units == UnitSystem.UsCustomary
        ? Enumerable.Range(1, 12).Select(i => i * 0.050 * 0.0254)
        : Enumerable.Range(1, 15).Select(i => i * 0.001);
}
