using Portwright.Shop.Units;

namespace Portwright.Shop.Budgets;

/// <summary>A meter's reading as it was typed, letter for letter.</summary>
internal static class AsTyped
{
    /// <summary><c>54.2 % of range middle</c>: with the unit where the typing left it out, and the range it belongs to.</summary>
    public static string Of(Typed typed, string range)
    {
        var text = typed.Text.Trim();
        var number = typed.Unit.Length == 0 || text.EndsWith(typed.Unit, StringComparison.OrdinalIgnoreCase) ? text : $"{text} {typed.Unit}";
        return typed.Unit == "%" ? $"{number} of range {range}" : $"{number} on range {range}";
    }
}
