using System.Globalization;

namespace Portwright.Shop.Units;

/// <summary>
/// Prints SI values in the units of the reader, always with the invariant culture's point. What is not finite is
/// printed as a dash. A lift in inches is printed as the trade writes it, <c>.350</c>, and needs no unit.
/// </summary>
public static class Print
{
    /// <summary>What stands where there is no number.</summary>
    public const string Nothing = "–";

    /// <summary>The unit's name, as over a column.</summary>
    public static string UnitName(Dimension dimension, UnitSystem system) => Unit.Default(dimension, system).Name;

    /// <summary>Number and unit: <c>221.9 cfm</c>, <c>.350</c>, <c>8.89 mm</c>.</summary>
    /// <param name="decimals">0 to 12; null for the unit's usual.</param>
    public static string Number(double si, Dimension dimension, UnitSystem system, int? decimals = null) =>
        WithUnit(Bare(si, dimension, system, decimals), dimension, system);

    /// <summary>The number alone, for a table whose head names the unit.</summary>
    public static string Bare(double si, Dimension dimension, UnitSystem system, int? decimals = null)
    {
        var unit = Unit.Default(dimension, system);
        return Digits(unit.FromSi(si), decimals ?? unit.Decimals, IsBareInchLift(dimension, system));
    }

    /// <summary>The number alone with as many decimals as give it back, for a box it was typed in: <c>0.6125</c> comes back as that and not as 0.613.</summary>
    public static string Whole(double si, Dimension dimension, UnitSystem system)
    {
        var unit = Unit.Default(dimension, system);
        var number = unit.FromSi(si);
        var decimals = unit.Decimals;
        while (decimals < 9 && Math.Abs(Math.Round(number, decimals) - number) > 1e-9 * Math.Max(1e-3, Math.Abs(number))) decimals++;
        // What takes so many was not typed in this unit: it is printed as usual.
        return Bare(si, dimension, system, decimals < 9 ? decimals : unit.Decimals);
    }

    /// <summary>
    /// Value and expanded uncertainty, the doubt to two significant figures and the value to the same place (JCGM
    /// 100:2008, 7.2.6): <c>221.9 ± 1.1 cfm</c>. Without a positive finite doubt the value alone.
    /// </summary>
    /// <param name="expandedSi">Expanded uncertainty in SI; a temperature's is a difference in kelvins.</param>
    public static string WithDoubt(double si, double expandedSi, Dimension dimension, UnitSystem system)
    {
        if (!double.IsFinite(si) || !double.IsFinite(expandedSi) || expandedSi <= 0) return Number(si, dimension, system);
        var unit = Unit.Default(dimension, system);
        var doubt = expandedSi / unit.Factor;
        var decimals = DecimalsOfDoubt(doubt);
        var lift = IsBareInchLift(dimension, system);
        var value = Digits(unit.FromSi(si), decimals, lift);
        return WithUnit($"{value} ± {Digits(RoundTo(doubt, decimals), Math.Max(decimals, 0), lift)}", dimension, system);
    }

    /// <summary>Decimals that show two significant figures of a doubt; negative when they end left of the point.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A doubt that is not positive and finite.</exception>
    public static int DecimalsOfDoubt(double doubt)
    {
        if (!(doubt > 0) || !double.IsFinite(doubt))
            throw new ArgumentOutOfRangeException(nameof(doubt), doubt, "Positive and finite.");
        var decimals = 1 - (int)Math.Floor(Math.Log10(doubt));
        // 0.0996 rounds to 0.10: one place fewer.
        if (decimals is >= 0 and <= 15 && Math.Round(doubt, decimals) >= Math.Pow(10, 2 - decimals)) decimals--;
        return Math.Clamp(decimals, -12, 12);
    }

    private static bool IsBareInchLift(Dimension dimension, UnitSystem system) => dimension == Dimension.Lift && system == UnitSystem.UsCustomary;

    private static string WithUnit(string number, Dimension dimension, UnitSystem system)
    {
        if (IsBareInchLift(dimension, system) || number == Nothing) return number;
        var name = UnitName(dimension, system);
        return name.Length == 0 ? number : name is "%" or "°" ? number + name : $"{number} {name}";
    }

    private static double RoundTo(double number, int decimals)
    {
        if (decimals >= 0) return Math.Round(number, Math.Min(decimals, 15), MidpointRounding.AwayFromZero);
        var place = Math.Pow(10, -decimals);
        return Math.Round(number / place, MidpointRounding.AwayFromZero) * place;
    }

    private static string Digits(double number, int decimals, bool withoutLeadingZero)
    {
        if (!double.IsFinite(number)) return Nothing;
        if (decimals < 0) number = RoundTo(number, decimals);
        var text = number.ToString("F" + Math.Clamp(decimals, 0, 12).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        // -0.0 is a rounding of something smaller than the last figure shown.
        if (text[0] == '-' && text.AsSpan(1).IndexOfAnyInRange('1', '9') < 0) text = text[1..];
        return withoutLeadingZero && text.Contains('.', StringComparison.Ordinal)
            ? text.StartsWith("0.", StringComparison.Ordinal) ? text[1..] : text.StartsWith("-0.", StringComparison.Ordinal) ? "-" + text[2..] : text
            : text;
    }
}
