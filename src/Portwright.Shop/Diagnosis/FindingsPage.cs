using System.Text;
using Portwright.Shop.Findings;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Diagnosis;

/// <summary>The guide's page of all findings, written from the catalogue itself.</summary>
public static class FindingsPage
{
    /// <summary>Of the rules given: markdown, lines ended by a line feed.</summary>
    public static string Text(IReadOnlyList<FindingRule> rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        var page = new StringBuilder();
        void Line(string line = "") => page.Append(line).Append('\n');
        Line("# What the program finds, and how");
        Line();
        Line("This page is written from the catalogue itself: it says what the program does, no more and no less.");
        Line();
        Line(FormattableString.Invariant($"A finding is stated from a chance of {Confidence.Stated * 100:0} in 100 on. The chance is worked out from the readings and their doubt, against the sister ports where"));
        Line("there are any ([how](../theory/judgement.md), and how often it is wrong). It names the readings behind it and the one measurement that would decide it best.");
        Line("Where metal is thin, or two instruments disagree, the cut goes and the finding stays. The program advises; the person with the micrometer decides.");
        Line();
        foreach (var rule in rules)
        {
            Line($"- [{rule.Name}](#{Anchor(rule.Name)})");
        }

        foreach (var rule in rules)
        {
            Line();
            Line($"## {rule.Name}");
            Line();
            Line($"In the record: `{rule.Key}`");
            if (rule.Prior is { } prior)
            {
                Say("Before anything is read", $"{Confidence.InHundred(prior)} ports have it, taken so; our own judgement, no source.");
            }

            Say("What has to be measured", rule.Evidence);
            Say("The test", rule.Test);
            Say("What else could look like it", rule.ElseExplains);
            Say("Look first", rule.LookFirst);
            Say("What to cut", rule.Cut);
            Say("What that risks", rule.Risk);
            Say("Source", Sentence.Plain(rule.Source));
        }

        return page.ToString();

        void Say(string head, Sentence text)
        {
            Line();
            Line($"**{head}.** {text.Whole().In(UnitSystem.UsCustomary)}");
        }
    }

    /// <summary>The anchor a heading gets where markdown is shown: small letters, hyphens for spaces, nothing else.</summary>
    private static string Anchor(string heading) =>
        new([.. heading.ToLowerInvariant().Where(c => char.IsLetterOrDigit(c) || c is ' ' or '-').Select(c => c == ' ' ? '-' : c)]);
}
