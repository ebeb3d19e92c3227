using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Web.Shell;

/// <summary>A flow and its doubt apart, for the bench where one stands larger than the other.</summary>
public static class FlowWords
{
    /// <summary>The number alone, to the place its doubt reaches: <c>221.9</c>.</summary>
    public static string Value(Estimate flow, UnitSystem units) => Split(flow, units).Value;

    /// <summary>The doubt with the unit: <c>± 1.1 cfm</c>; the unit alone where no doubt is known.</summary>
    public static string Doubt(Estimate flow, UnitSystem units) => Split(flow, units).Doubt;

    private static (string Value, string Doubt) Split(Estimate flow, UnitSystem units)
    {
        var whole = Quantity.Flow(flow).In(units);
        var at = whole.IndexOf(' ', StringComparison.Ordinal);
        return at < 0 ? (whole, "") : (whole[..at], whole[(at + 1)..]);
    }
}
