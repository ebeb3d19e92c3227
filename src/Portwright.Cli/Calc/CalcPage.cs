using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>Prints a calculation: what was given, the working line by line, the answer with its doubt.</summary>
internal static class CalcPage
{
    public static void Write(TextWriter output, string title, IReadOnlyList<(string Words, string Text)> given, Working working, IReadOnlyList<Answer> answers, UnitSystem system, Answer? about = null, bool asksForDoubt = true)
    {
        var page = new Page(output);
        page.Title(title);
        if (given.Count > 0)
        {
            page.Line();
            page.Line("given");
            foreach (var (words, text) in given) page.Pair(words, text);
        }
        if (working.Lines.Count > 0)
        {
            page.Line();
            page.Line("working");
            foreach (var line in working.Lines) Line(page, line, Worked(line, system));
        }
        page.Line();
        page.Line(answers.Count == 1 ? "answer" : "answers");
        foreach (var answer in answers) Line(page, answer.Line, Text(answer, system));
        Doubt(page, about is null ? answers : [about], asksForDoubt);
        foreach (var remark in working.Remarks)
        {
            page.Line();
            page.Paragraph(remark);
        }
    }

    /// <summary>Value and doubt in the reader's units, and in SI behind it where that differs.</summary>
    public static string Text(Answer answer, UnitSystem system)
    {
        if (!double.IsFinite(answer.Line.Value)) return Print.Nothing;
        var (value, doubt, dimension) = (answer.Estimate.Value, answer.Estimate.Expanded(), answer.Line.Dimension);
        if (dimension is Dimension.Ratio or Dimension.Count)
            return doubt > 0 ? Print.WithDoubt(value, doubt, dimension, system) : value.ToString(dimension == Dimension.Count ? "0" : "G5", CultureInfo.InvariantCulture);
        var first = One(value, doubt, dimension, system);
        if (system == UnitSystem.Si || Unit.Default(dimension, UnitSystem.UsCustomary) == Unit.Default(dimension, UnitSystem.Si)) return first;
        return $"{first}   ({One(value, doubt, dimension, UnitSystem.Si)})";
    }

    private static string One(double value, double doubt, Dimension dimension, UnitSystem system)
    {
        if (doubt > 0) return Print.WithDoubt(value, doubt, dimension, system);
        var unit = Unit.Default(dimension, system);
        var number = unit.FromSi(value);
        // Five figures at least, however small the unit makes the number.
        var decimals = number == 0 ? unit.Decimals : Math.Max(unit.Decimals, 3 - (int)Math.Floor(Math.Log10(Math.Abs(number))));
        return Print.Number(value, dimension, system, Math.Clamp(decimals, 0, 9));
    }

    /// <summary>Formulas work in SI; the reader's own unit stands behind it.</summary>
    private static string Worked(WorkedLine line, UnitSystem system)
    {
        var si = SiUnits.Text(line.Value, line.Dimension);
        var unit = Unit.Default(line.Dimension, system);
        return SiUnits.Name(line.Dimension).Length == 0 || unit.Name == SiUnits.Name(line.Dimension) || !double.IsFinite(line.Value)
            ? si
            : $"{si}   ({One(line.Value, 0, line.Dimension, system)})";
    }

    private static void Line(Page page, WorkedLine line, string value)
    {
        page.Pair(line.Words, value);
        var how = line.Source.Length == 0 ? line.How : line.How.Length == 0 ? line.Source : $"{line.How}; {line.Source}";
        page.Paragraph(how, 6);
    }

    private static void Doubt(Page page, IReadOnlyList<Answer> answers, bool asksForDoubt)
    {
        var doubted = answers.FirstOrDefault(a => a.Estimate.StandardUncertainty > 0);
        if (doubted is null && !asksForDoubt) return;
        page.Line();
        if (doubted is null)
        {
            page.Paragraph("No doubt was typed, so the answer carries none. Type it behind a number, as \"28 inH2O +- 0.1 inH2O\" or \"250 cfm +- 1 %\".");
            return;
        }
        page.Line($"doubt of {doubted.Line.Words}, by cause");
        var total = doubted.Estimate.Variance;
        foreach (var c in doubted.Estimate.Contributions.Where(c => c.Amount != 0).OrderByDescending(c => Math.Abs(c.Amount)).Take(8))
            page.Pair(c.Source, string.Create(CultureInfo.InvariantCulture, $"{c.Amount * c.Amount / total * 100:F0} percent of its square"));
        var dof = doubted.Estimate.EffectiveDegreesOfFreedom;
        page.Paragraph(string.Create(CultureInfo.InvariantCulture,
            $"± is half of a 95 percent interval: {doubted.Estimate.CoverageFactor():F2} standard uncertainties{(double.IsInfinity(dof) ? "" : $", {dof:F1} degrees of freedom")} (JCGM 100:2008)."));
    }
}
