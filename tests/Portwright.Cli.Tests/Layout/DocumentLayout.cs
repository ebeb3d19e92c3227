using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Portwright.Cli.Layout;
using Portwright.Figures;
using Portwright.Figures.Tests;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Web.Documents;

namespace Portwright.Cli.Tests.Layout;

/// <summary>A layout as it leaves the program, and what of a document a reader misses in it.</summary>
/// <param name="Write">The text as a reader sees it.</param>
/// <param name="Missing">What the document says and the text does not.</param>
internal sealed record DocumentLayout(string Name, Func<Document, PortAtCut, UnitSystem, string> Write, Func<string, Document, UnitSystem, IEnumerable<string>> Missing)
{
    /// <summary>Every layout a document has. A page says job, head, port and cut over the document's parts, in its own words.</summary>
    public static IReadOnlyList<DocumentLayout> All { get; } =
    [
        new("terminal", (d, _, u) => Terminal(d, u), TerminalWords.Missing),
        new("JSON", (d, _, _) => Json(d), (text, d, _) => JsonSentences.Missing(text, d)),
        new("HTML", (d, p, u) => Text(DocumentHtml.Render(d, p, u)), (text, d, u) => InOrder(text, SaidWords.Of(d, u))),
        new("PDF", (d, p, u) => PdfWords.Of(DocumentPaper.Pdf(d, p, PaperSize.Of(u), u)), (text, d, u) => Counted(text, SaidWords.Of(d, u))),
        new("page", (d, p, u) => Text(Page(d, p, u)), (text, d, u) => InOrder(text, SaidWords.OfParts(d.Parts.OrderBy(s => s.For), u))),
    ];

    public override string ToString() => Name;

    private static string Terminal(Document document, UnitSystem units)
    {
        using var output = new StringWriter { NewLine = "\n" };
        new DocumentPage(output, units).Write(document);
        return output.ToString();
    }

    private static string Json(Document document)
    {
        using var output = new StringWriter { NewLine = "\n" };
        DocumentJson.Write(output, document, []);
        return output.ToString();
    }

    private static string Page(Document document, PortAtCut port, UnitSystem units)
    {
        using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        using var renderer = new HtmlRenderer(services, services.GetRequiredService<ILoggerFactory>());
        var given = ParameterView.FromDictionary(new Dictionary<string, object?> { ["Document"] = document, ["At"] = port, ["Units"] = units });
        return renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<Parts>(given)).ToHtmlString()).GetAwaiter().GetResult();
    }

    /// <summary>What is read, without what is only drawn or is for the browser: words in a drawing say nothing in the sentence's place.</summary>
    private static string Text(string html)
    {
        var read = Regex.Replace(html, "<svg.*?</svg>|<style>.*?</style>|<title>.*?</title>", " ", RegexOptions.Singleline);
        return WebUtility.HtmlDecode(Regex.Replace(Regex.Replace(read, "</?(a|b|span)( [^>]*)?>", ""), "<[^>]+>", " "));
    }

    private static List<string> InOrder(string text, IEnumerable<string> said)
    {
        var (words, at, missing) = (new LaidWords(text), 0, new List<string>());
        foreach (var line in said)
        {
            if (words.Find(line, at) is { } found) at = found.To;
            else missing.Add(line);
        }

        return missing;
    }

    /// <summary>On paper things stand beside each other: what is said as often as it is said, in whatever order.</summary>
    private static IEnumerable<string> Counted(string text, IEnumerable<string> said)
    {
        var words = new LaidWords(text);
        return said.CountBy(l => l).Where(l => words.Times(l.Key) < l.Value).Select(l => l.Key);
    }
}
