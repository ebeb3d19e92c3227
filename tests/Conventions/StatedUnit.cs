using System.Text.RegularExpressions;

namespace Portwright.Conventions;

/// <summary>When a comment names the unit of the number it describes: one definition for all rooms.</summary>
/// <remarks>
/// One of three. A unit of the closed list, standing where a unit stands: first of all (<c>rad after top dead centre</c>), as a clause between stops
/// (<c>Bore, m, above zero.</c>), in brackets, behind <c>in</c>, or behind the end of a range (<c>200 to 1000 K</c>). The unit of something else
/// (<c>in the unit of the readings</c>). Or that there is none: <c>no unit</c>, or among the first words a kind of number that never has one.
/// </remarks>
public static partial class StatedUnit
{
    private const string Units =
        @"(?:m/s2|m/s|m3/s|m3/kg|m3/rad|m3/\(s Pa\)|m3|m2/s2|m2/s|m2 per m|m2 per rad|m2 rad|m2 s|m2|m4|m/rad2|m/rad|m rad|m/\(s K\)|m|1/m4|1/m|1/s|1/min|1/K|1/rad|s/m|s|Hz|"
        + @"rad/s|rad|hours|degrees|degC|K/m|K|Pa s2/m2|Pa s/m|Pa s|Pa/m|Pa|kg/\(s m2\)|kg/\(m2 s\)|kg/mol|kg/m3|kg/s|kg|"
        + @"J/\(kg K\)|J/\(mol K\)|J/mol|J/kg|J/K|J/m3|J|W/\(m2 K\)|W/m2|W s/m3|W|N m/m2|N m|N|percent)";

    [GeneratedRegex(@"^" + Units + @"(?=$|[,;:.)]| [a-z(])|\(" + Units + @"(?=[,;)]| (?:after|above|from))|(?:[,;:.] |\bin |\b(?:to|above|below|least|most) (?:-?[\d.,/]+|pi/2|pi) )" + Units + @"(?=$|[,;:.)]| \(| (?:absolute|or|at|from|of|after|for)\b)")]
    private static partial Regex Clause();

    [GeneratedRegex(@"\bin (?:the|its|any|one|the same) units?\b|\bany(?: one)? unit\b|\bin units of\b", RegexOptions.IgnoreCase)]
    private static partial Regex UnitOfAnother();

    [GeneratedRegex(@"\bno unit\b|^(?:\S+ ){0,3}(?:ratio|share|fraction|probability|probabilities|chance|degrees of freedom|Mach number|Reynolds number|drag coefficient|discharge coefficient|confidence level)\b", RegexOptions.IgnoreCase)]
    private static partial Regex NoUnit();

    /// <summary>True of a text that names a unit, or says there is none, and does not do both.</summary>
    public static bool In(string text) =>
        (Clause().IsMatch(text) || UnitOfAnother().IsMatch(text) || NoUnit().IsMatch(text)) && !(Clause().IsMatch(text) && text.EndsWith("no unit.", StringComparison.OrdinalIgnoreCase));
}
