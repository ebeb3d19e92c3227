using System.Globalization;
using System.Text.RegularExpressions;
using Portwright.Shop.Record;

namespace Portwright.Store.Import;

/// <summary>What a file calls a port: <c>I2</c>, <c>Int. 2</c>, <c>exhaust 3</c>, <c>head B intake 2</c>.</summary>
public static partial class PortWords
{
    /// <summary>The port in the words of the record, <c>intake 2</c> with the head's name before it where the file gives one; the text itself where it is not understood.</summary>
    public static string Plain(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var words = Pattern().Match(text.Trim());
        if (!words.Success)
        {
            return text.Trim();
        }

        var kind = words.Groups["kind"].Value[0] is 'i' or 'I' ? "intake" : "exhaust";
        var cylinder = int.Parse(words.Groups["cylinder"].Value, CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"{words.Groups["head"].Value.Trim(' ', ',', '-', '_')} {kind} {cylinder}").Trim();
    }

    /// <summary>The one port of a job that is meant; null where none or several could be.</summary>
    public static Kept<Port>? Match(string text, Ledger record, Guid job)
    {
        ArgumentNullException.ThrowIfNull(record);
        var wanted = Plain(text);
        if (wanted.Length == 0)
        {
            return null;
        }

        var found = record.HeadsOf(job)
            .SelectMany(h => record.PortsOf(h.Id).Select(p => (Port: p, Whole: $"{h.Fact.Name} {p.Fact.Name}")))
            .Where(p => p.Port.Fact.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)
                || p.Whole.Equals(wanted, StringComparison.OrdinalIgnoreCase)
                || p.Whole.EndsWith(" " + wanted, StringComparison.OrdinalIgnoreCase))
            .ToList();
        return found.Count == 1 ? found[0].Port : null;
    }

    [GeneratedRegex(@"^(?<head>.*?)\b(?<kind>in(take|let|t)?|i|ex(haust|h)?|e)[ ._#]*(?<cylinder>\d{1,2})$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
