using System.Globalization;

namespace Portwright.Shop.Units;

/// <summary>
/// Reads a number with or without its unit, as a porter types it or a spreadsheet holds it, the same whatever the
/// machine's language. The rules are in <c>docs/guide/import.md</c>, "How numbers are read".
/// </summary>
/// <remarks>
/// Point or comma may stand before the decimals. <c>1,234</c> (one comma, three digits after, one to three before, no
/// leading zero) could be either and is refused, unless the caller knows the file's mark.
/// <para>
/// A bare lift in US customary: up to 1.5 it is inches; a whole number of 20 or more is thousandths of an inch
/// (<c>300</c> is <c>.300</c>); between them it could be millimetres, and is refused with that cure.
/// </para>
/// </remarks>
public static class TypedNumber
{
    /// <summary>Longest text looked at. A number with its unit is far shorter.</summary>
    public const int MaximumLength = 60;

    private const double MostBareInches = 1.5, LeastBareThousandths = 20;

    /// <summary>Reads <paramref name="text"/>; on failure <paramref name="problem"/> names the field, the value and the cure.</summary>
    /// <param name="fieldName">The field as the page or spreadsheet names it; opens the message.</param>
    public static bool TryParse(string? text, Dimension dimension, UnitSystem system, string fieldName, out Typed value, out string problem) =>
        TryParse(text, dimension, system, fieldName, DecimalMark.Either, null, out value, out problem);

    /// <summary>As above, knowing the decimal mark of the file and the unit its column is headed with.</summary>
    /// <param name="unit">The unit of a bare number; null for the default of dimension and system.</param>
    /// <exception cref="ArgumentException">A <paramref name="unit"/> of another dimension.</exception>
    public static bool TryParse(string? text, Dimension dimension, UnitSystem system, string fieldName, DecimalMark mark, Unit? unit, out Typed value, out string problem)
    {
        if (unit is not null && unit.Dimension != dimension)
            throw new ArgumentException($"{unit.Name} is a unit of {unit.Dimension}, not of {dimension}.", nameof(unit));
        value = new Typed(double.NaN, "", text ?? "");
        problem = "";
        var bare = unit ?? Unit.Default(dimension, system);
        if (string.IsNullOrWhiteSpace(text))
            return Refuse(out problem, $"{fieldName} is empty. Type a number, such as {Example(dimension, bare)}.");
        if (text.Length > MaximumLength)
            return Refuse(out problem, $"{fieldName} holds {text.Length.ToString(CultureInfo.InvariantCulture)} characters, too many for a number. Type only the number and its unit, such as {Example(dimension, bare)}.");

        var read = NumberText.Read(text, mark, out var number, out var rest);
        if (read == NumberText.Outcome.Ambiguous)
            return Refuse(out problem, $"{fieldName} \"{Shown(text)}\" could be a thousand or a decimal. Type it without the comma, as {NumberText.BothWays(text)}.");
        if (read == NumberText.Outcome.NotANumber)
            return Refuse(out problem, $"{fieldName} \"{Shown(text)}\" is not a number. Type it as {Example(dimension, bare)}.");

        if (rest.Length > 0)
        {
            if (Unit.Find(rest, dimension) is not { } typed)
                return Refuse(out problem, $"{fieldName} \"{Shown(text)}\": \"{Shown(rest)}\" is not a unit known here. Use one of {Names(dimension)}, such as {Example(dimension, bare)}.");
            bare = typed;
        }
        else if (dimension == Dimension.Lift && unit is null && system == UnitSystem.UsCustomary && number > MostBareInches)
        {
            if (number < LeastBareThousandths || number != Math.Floor(number))
                return Refuse(out problem, $"{fieldName} \"{Shown(text)}\" could be millimetres or thousandths of an inch. Type its unit, as {Plain(number)} mm or {Plain(number)} thou.");
            bare = Unit.Find("thou", Dimension.Lift)!;
        }

        var si = bare.ToSi(number);
        if (!double.IsFinite(si))
            return Refuse(out problem, $"{fieldName} \"{Shown(text)}\" is too large. Type it as {Example(dimension, bare)}.");
        if (dimension == Dimension.Count && number != Math.Floor(number))
            return Refuse(out problem, $"{fieldName} \"{Shown(text)}\" is not a whole number. Type it as {Example(dimension, bare)}.");
        var (least, greatest) = TypedRange.Of(dimension);
        if (si < least || si > greatest)
            return Refuse(out problem, OutOfRange(fieldName, text, number, bare, least, greatest));

        value = new Typed(number, bare.Name, text);
        return true;
    }

    /// <summary>Splits a text into the number it begins with and what follows, without judging either.</summary>
    /// <returns>False when it does not begin with a number, or begins with one that could be read two ways.</returns>
    public static bool TrySplit(string? text, DecimalMark mark, out double number, out string unitText)
    {
        (number, unitText) = (double.NaN, "");
        return text is { Length: > 0 and <= MaximumLength } && NumberText.Read(text, mark, out number, out unitText) == NumberText.Outcome.Number;
    }

    private static string OutOfRange(string fieldName, string text, double number, Unit unit, double least, double greatest)
    {
        if (number < 0 && least == 0)
            return $"{fieldName} \"{Shown(text)}\" is below zero. Type it without the minus sign.";
        var from = Rounded(unit.FromSi(least));
        var to = Rounded(unit.FromSi(greatest));
        return $"{fieldName} \"{Shown(text)}\" is outside {from} to {to} {unit.Name}".TrimEnd() + ". Check the point and the unit, and type it again with its unit.";
    }

    private static string Example(Dimension dimension, Unit unit) => dimension switch
    {
        Dimension.Count => "12",
        Dimension.Lift or Dimension.Length when unit.Name == "in" => ".350 or 8.9 mm",
        Dimension.Barometer when unit.Name == "inHg" => "29.92 or 1013 hPa",
        Dimension.Barometer => "101.3 or 1013 hPa",
        Dimension.Pressure => "28 inH2O or 6.97 kPa",
        _ => $"12.5 {unit.Name}".TrimEnd(),
    };

    private static string Names(Dimension dimension) =>
        string.Join(", ", Unit.All(dimension).Select(u => u.Name).Where(n => n.Length > 0).Distinct()) is { Length: > 0 } names ? names : "no unit";

    private static string Shown(string text)
    {
        var clean = new string([.. text.Trim().Select(c => char.IsControl(c) ? ' ' : c)]);
        return clean.Length <= 24 ? clean : clean[..24] + "…";
    }

    private static string Plain(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Rounded(double number) => number.ToString("G4", CultureInfo.InvariantCulture);

    private static bool Refuse(out string problem, string because)
    {
        problem = because;
        return false;
    }
}
