using System.Globalization;
using Portwright.Shop.Units;

namespace Portwright.Shop.Entering;

/// <summary>What may have been meant by a value that can hardly be right: the slips of fingers and units, undone.</summary>
public static class Slips
{
    /// <summary>Every value one slip away from what was typed, by kind, the commonest first.</summary>
    /// <param name="system">The units the box asks in.</param>
    public static IReadOnlyList<MeantValue> Undone(Typed typed, Dimension dimension, UnitSystem system)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var asked = Unit.Find(typed.Unit, dimension) ?? throw new ArgumentException($"'{typed.Unit}' is not a unit of {dimension}.", nameof(typed));
        var (digits, rest) = Parted(typed.Text);
        var bare = rest.Length == 0;
        var candidates = new List<MeantValue>();
        void Add(string number, string unit, SlipKind kind)
        {
            var text = unit.Length == 0 ? number : $"{number} {unit}";
            if (TypedNumber.TryParse(text, dimension, system, "", DecimalMark.Either, bare && unit.Length == 0 ? asked : null, out var value, out _)
                && value.Si(dimension) is var si && candidates.TrueForAll(c => c.Si != si))
            {
                candidates.Add(new MeantValue(text, si, kind));
            }
        }

        if (digits.Length == 0) return candidates;
        var unit = bare ? "" : asked.Name;
        if (digits[0] is '-' or '+') Add(digits[1..], unit, SlipKind.Sign);
        // A hygrometer may show a share of one where percent are asked for.
        if (dimension == Dimension.Fraction && typed.Value is > 0 and <= 1) Add(Moved(digits, 2), unit, SlipKind.Share);
        foreach (var power in (int[])[-1, -2, -3, 1, 2, 3]) Add(Moved(digits, power), unit, SlipKind.Point);
        if (bare)
        {
            foreach (var other in Unit.All(dimension).Distinct().Where(u => u.Name != asked.Name && u.Name.Length > 0)) Add(digits, other.Name, SlipKind.Unit);
        }

        for (var i = 0; i + 1 < digits.Length; i++)
        {
            if (!char.IsAsciiDigit(digits[i]) || !char.IsAsciiDigit(digits[i + 1])) continue;
            if (digits[i] == digits[i + 1]) Add(digits.Remove(i, 1), unit, SlipKind.Doubled);
            else Add($"{digits[..i]}{digits[i + 1]}{digits[i]}{digits[(i + 2)..]}", unit, SlipKind.Swapped);
        }

        return candidates;
    }

    /// <summary>Digits with sign and point, and what follows.</summary>
    private static (string Digits, string Unit) Parted(string text)
    {
        var trimmed = text.Trim();
        var end = 0;
        while (end < trimmed.Length && (char.IsAsciiDigit(trimmed[end]) || trimmed[end] is '.' or ',' or '-' or '+')) end++;
        return (trimmed[..end].Replace(',', '.'), trimmed[end..].Trim());
    }

    /// <summary>The point moved by so many places, the digits as they were typed.</summary>
    private static string Moved(string digits, int power) =>
        decimal.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? (power < 0 ? number / Ten(-power) : number * Ten(power)).ToString("0.##########", CultureInfo.InvariantCulture)
            : digits;

    private static decimal Ten(int power) => power == 0 ? 1 : 10 * Ten(power - 1);
}
