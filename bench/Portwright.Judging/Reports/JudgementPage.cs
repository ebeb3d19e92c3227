using Portwright.Judging.Trial;

namespace Portwright.Judging.Reports;

/// <summary>Puts the tables between the marks of a page.</summary>
public static class JudgementPage
{
    private const string From = "<!-- rates: from here by command -->", To = "<!-- rates: to here -->";

    /// <exception cref="InvalidOperationException">The page has not both marks.</exception>
    public static void Write(string file, Run run, Rates rates)
    {
        var page = File.ReadAllText(file);
        var (start, end) = (page.IndexOf(From, StringComparison.Ordinal), page.IndexOf(To, StringComparison.Ordinal));
        if (start < 0 || end < start) throw new InvalidOperationException($"{file} has no lines '{From}' and '{To}' to put the tables between. Add them.");
        File.WriteAllText(file, $"{page[..(start + From.Length)]}\n\n```\n{Tables.Of(run, rates).ReplaceLineEndings("\n")}```\n\n{page[end..]}");
    }
}
