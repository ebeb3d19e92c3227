using System.Text;
using System.Text.RegularExpressions;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>What a porter's page says, pasted or typed: a table, lines of lifts and flows, or one number.</summary>
/// <param name="Preview">Null where nothing could be read, or the lift is missing.</param>
/// <param name="NeedsLift">One flow, and no lift with it.</param>
/// <param name="Problem">Why nothing could be read.</param>
/// <param name="Lines">Of each row of the table the line of the page it came from, from 0; -1 where it is ours.</param>
public sealed record NotebookRead(ImportPreview? Preview, bool NeedsLift, string? Problem, IReadOnlyList<int> Lines);

/// <summary>
/// Reads a page of a notebook as the import reads a file: lines as people write them (<c>.100 - 62</c>, <c>.100: 62 cfm, 61.8</c>) are first put into columns.
/// What is a table already is left as it is.
/// </summary>
public static partial class Notebook
{
    /// <summary>Longest page taken, characters.</summary>
    public const int Longest = 20_000;

    /// <param name="lift">Of a page that is one flow: its lift, typed apart; null where it was not.</param>
    public static NotebookRead Read(string text, string? lift, UnitSystem system)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        if (string.IsNullOrWhiteSpace(text)) return Nothing("Nothing is written yet. Paste lifts and flows, a line for each lift, or type one flow.");
        if (text.Length > Longest) return Nothing("That is more than a page of a notebook. Bring it as a file instead.");
        if (lines.Where(l => !string.IsNullOrWhiteSpace(l)).ToList() is [var only] && OneNumber().Match(only) is { Success: true } one && !Row().IsMatch(only))
        {
            lift ??= one.Groups["lift"].Success ? one.Groups["lift"].Value : null;
            if (string.IsNullOrWhiteSpace(lift)) return new NotebookRead(null, true, null, []);
            var line = Array.IndexOf(lines, only);
            return Table(string.Join('\n', one.Groups["at"].Success ? one.Groups["at"].Value : "-", "lift\tflow", $"{lift}\t{one.Groups["flow"].Value.Trim()}"), [-1, -1, line], system);
        }

        return lines.Any(l => l.Contains('\t', StringComparison.Ordinal) || l.Contains(';', StringComparison.Ordinal) || l.Contains('|', StringComparison.Ordinal)) || !lines.Any(l => Row().IsMatch(l))
            ? Table(text, [.. Enumerable.Range(0, lines.Length)], system)
            : InColumns(lines, system);
    }

    private static NotebookRead InColumns(string[] lines, UnitSystem system)
    {
        var (table, from, width) = (new List<string>(), new List<int>(), 0);
        var headed = -1;
        for (var i = 0; i < lines.Length; i++)
        {
            if (Row().Match(lines[i]) is not { Success: true } row)
            {
                // A line over the numbers that names the lifts' column is ours to write.
                if (headed < 0 && Heading().IsMatch(lines[i])) continue;
                table.Add(lines[i].Trim().Replace("\"", " inH2O ", StringComparison.Ordinal));
                from.Add(i);
                continue;
            }

            if (headed < 0)
            {
                headed = table.Count;
                table.Add("");
                from.Add(-1);
            }

            var flows = Flow().Matches(row.Groups["flows"].Value).Select(f => f.Value.Trim(' ', ',', '/')).ToList();
            width = Math.Max(width, flows.Count);
            table.Add($"{row.Groups["lift"].Value}\t{string.Join('\t', flows)}");
            from.Add(i);
        }

        var said = lines.FirstOrDefault(l => Heading().IsMatch(l)) is { } heading && heading.Contains('%', StringComparison.Ordinal) ? "%" : "flow";
        table[headed] = "lift\t" + string.Join('\t', Enumerable.Range(1, width).Select(n => width == 1 ? said : FormattableString.Invariant($"{said} run {n}")));
        return Table(string.Join('\n', table), from, system);
    }

    private static NotebookRead Table(string text, IReadOnlyList<int> lines, UnitSystem system) =>
        TableFile.TryRead(Encoding.UTF8.GetBytes(text), "notebook", null, out var table, out var problem)
            ? new NotebookRead(SweepTable.Guess(table, system), false, null, lines)
            : Nothing(problem);

    private static NotebookRead Nothing(string problem) => new(null, false, problem, []);

    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    private const string Number = @"(?:\d+(?:[.,]\d+)?|[.,]\d+)", FlowUnit = @"\s*(?:cfm|%|l/s|m[³3]/h|kg/h|g/s)";

    [GeneratedRegex($@"^\s*(?:lift|at|@)?\s*(?<lift>{Number}(?:\s*(?:in|inch|inches|mm|thou|""))?)(?:\s*[:=→]\s*|\s*-+>?\s+|\s+(?:is|gives|lift)\s+|\s+|,\s+)(?<flows>{Number}(?:{FlowUnit})?(?:[\s,/]+{Number}(?:{FlowUnit})?)*)\s*$", Options)]
    private static partial Regex Row();

    [GeneratedRegex($"{Number}(?:{FlowUnit})?", Options)] private static partial Regex Flow();

    [GeneratedRegex(@"^\W*lift\b", Options)] private static partial Regex Heading();

    [GeneratedRegex($@"^\s*(?<flow>{Number}(?:{FlowUnit})?)(?:[\s,]*(?:(?:at\s+|@\s*)?(?<at>\d{{1,3}}(?:\.\d+)?\s*(?:""|in\.?\s?h2o|inh2o|inches(?:\s+of)?(?:\s+water)?|kpa))|(?:at\s+)?(?:lift\s*)?(?<lift>{Number}(?:\s*(?:in|mm|thou))?)(?:\s*lift)?))*\s*$", Options)]
    private static partial Regex OneNumber();
}
