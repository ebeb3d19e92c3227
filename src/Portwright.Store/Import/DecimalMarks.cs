using System.Text.RegularExpressions;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>Finds out from all numbers of a file together whether it writes a point or a comma before the decimals.</summary>
internal static partial class DecimalMarks
{
    /// <summary>
    /// Only numbers that leave no choice count: 0,3 and 41,25 and ,300 say comma; 0.3 and .300 say point. 1,234 and
    /// 1.234 say nothing. Where both are found, or neither, each cell is judged by itself.
    /// </summary>
    internal static DecimalMark Of(IEnumerable<string> texts)
    {
        var (point, comma) = (false, false);
        foreach (var text in texts)
        {
            if (text.Length is 0 or > TypedNumber.MaximumLength) continue;
            point |= Point().IsMatch(text);
            comma |= Comma().IsMatch(text);
        }
        return (point, comma) switch { (true, false) => DecimalMark.Point, (false, true) => DecimalMark.Comma, _ => DecimalMark.Either };
    }

    [GeneratedRegex(@"^\s*[-+−]?(?:0?\.\d+|\d+\.(?:\d{1,2}|\d{4,})|\d{4,}\.\d+|\d{1,3}(?:,\d{3})+\.\d+)(?![\d.,])", RegexOptions.CultureInvariant)]
    private static partial Regex Point();

    [GeneratedRegex(@"^\s*[-+−]?(?:0?,\d+|\d+,(?:\d{1,2}|\d{4,})|\d{4,},\d+|\d{1,3}(?:\.\d{3})+,\d+)(?![\d.,])", RegexOptions.CultureInvariant)]
    private static partial Regex Comma();
}
