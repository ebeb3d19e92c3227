using System.Globalization;
using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Web.Sums;

namespace Portwright.Cli.Calc;

/// <summary>Prints a calculation: what was given, the working line by line, the answer with its doubt.</summary>
internal static class CalcPage
{
    public static void Write(TextWriter output, string title, IReadOnlyList<(string Words, string Text)> given, Working working, IReadOnlyList<Answer> answers, UnitSystem system, Answer? about = null, bool asksForDoubt = true)
    {
        var doubted = (about is null ? answers : [about]).FirstOrDefault(a => a.Estimate.StandardUncertainty > 0);
        var sheet = new SumSheet(
            title,
            [.. given.Select(g => new SumLine(g.Words, g.Text))],
            [.. working.Lines.Select(l => new SumLine(l.Words, Worked(l, system), How(l)))],
            [.. answers.Select(a => new SumLine(a.Line.Words, Text(a, system), How(a.Line)))],
            doubted?.Line.Words ?? "",
            doubted is null ? [] : Causes(doubted.Estimate),
            doubted is not null ? Interval(doubted.Estimate) : asksForDoubt ? NoDoubt : "",
            working.Remarks);
        // A page wants the sheet itself; the terminal its lines.
        if (output is SheetTaker taker) taker.Sheet = sheet;
        else Lay(new Page(output), sheet);
    }

    private const string NoDoubt = "No doubt was typed, so the answer carries none. Type it behind a number, as \"28 inH2O +- 0.1 inH2O\" or \"250 cfm +- 1 %\".";

    private static void Lay(Page page, SumSheet sheet)
    {
        page.Title(sheet.Title);
        Lines("given", sheet.Given);
        Lines("working", sheet.Working);
        Lines(sheet.Answers.Count == 1 ? "answer" : "answers", sheet.Answers);
        if (sheet.Doubt.Count > 0) Lines($"doubt of {sheet.DoubtOf}, by cause", sheet.Doubt);
        else if (sheet.DoubtSaid.Length > 0) page.Line();
        if (sheet.DoubtSaid.Length > 0) page.Paragraph(sheet.DoubtSaid);
        foreach (var remark in sheet.Remarks)
        {
            page.Line();
            page.Paragraph(remark);
        }

        void Lines(string heading, IReadOnlyList<SumLine> lines)
        {
            if (lines.Count == 0 && heading is ("given" or "working")) return;
            page.Line();
            page.Line(heading);
            foreach (var line in lines)
            {
                page.Pair(line.Words, line.Value);
                page.Paragraph(line.How, 6);
            }
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

    private static string How(WorkedLine line) => line.Source.Length == 0 ? line.How : line.How.Length == 0 ? line.Source : $"{line.How}; {line.Source}";

    private static SumLine[] Causes(Estimate doubted) =>
        [.. doubted.Contributions.Where(c => c.Amount != 0).OrderByDescending(c => Math.Abs(c.Amount)).Take(8)
            .Select(c => new SumLine(c.Source, string.Create(CultureInfo.InvariantCulture, $"{c.Amount * c.Amount / doubted.Variance * 100:F0} percent of its square")))];

    private static string Interval(Estimate doubted)
    {
        var dof = doubted.EffectiveDegreesOfFreedom;
        return string.Create(CultureInfo.InvariantCulture,
            $"± is half of a 95 percent interval: {doubted.CoverageFactor():F2} standard uncertainties{(double.IsInfinity(dof) ? "" : $", {dof:F1} degrees of freedom")} (JCGM 100:2008).");
    }
}

/// <summary>In place of a terminal: takes the sheet as it is, before it is laid out.</summary>
internal sealed class SheetTaker : StringWriter
{
    public SumSheet? Sheet { get; set; }
}
