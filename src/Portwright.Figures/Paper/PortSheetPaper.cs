using Portwright.Shop.Runs;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>The port sheet on paper: title block, curve and strip, table, words; as many sheets as it needs.</summary>
public static class PortSheetPaper
{
    private const double Margin = 34, Small = 7.2, Body = 8.2, Line = 10.8;

    /// <summary>The sheet as a PDF.</summary>
    public static byte[] Pdf(PortSurvey survey, PaperSize paper, UnitSystem units = UnitSystem.UsCustomary, DateTimeOffset? created = null, PortInEngine? engine = null) =>
        Figures.Pdf.Render(Pages(survey, paper, units, engine), Theme.White, created);

    /// <summary>The sheet as drawings, one a page.</summary>
    public static IReadOnlyList<Drawing> Pages(PortSurvey survey, PaperSize paper, UnitSystem units = UnitSystem.UsCustomary, PortInEngine? engine = null)
    {
        ArgumentNullException.ThrowIfNull(survey);
        var sheet = survey.Sheet;
        var content = SheetContent.Of(sheet, units);
        var width = paper.Width - 2 * Margin;
        var column = new PaperColumn(Margin, paper.Height - Margin - TitleBlock.Height - 10);
        Heading(column, content, width);
        var figure = FlowOverLift.Draw(FlowPlot.Of(sheet, units: units), new FigureSize(width, sheet.Earlier.Count > 0 ? 310 : 260, 8.5), units);
        column.Put(figure.Height + 10, (pen, y) => { foreach (var mark in Moved.To(figure, Margin, y)) pen.Put(mark); });
        PaperTable.Put(column, content, Margin, width);
        Coefficients(column, sheet, units, width);
        foreach (var section in content.Sections) Section(column, section, width);
        SurveyPaper.Put(column, survey, units, Margin, width, engine?.Answer);
        if (engine is not null) EnginePaper.Put(column, engine, units, Margin, width);

        var title = $"{content.What}, {content.Where}";
        return [.. column.Pages.Select((pen, i) =>
        {
            TitleBlock.Draw(pen, content.TitleBlock, new Box(Margin, paper.Height - Margin - TitleBlock.Height, width, TitleBlock.Height), i + 1, column.Pages.Count);
            return pen.Done(paper.Width, paper.Height, title, "Port sheet");
        })];
    }

    private static void Heading(PaperColumn column, SheetContent content, double width)
    {
        column.Put(34, (pen, y) =>
        {
            pen.Text(Margin, y + 15, Lettering.Fit(content.What, 17, width, Weight.SemiBold), 17, Role.Ink, Anchor.Start, Weight.SemiBold);
            pen.Text(Margin, y + 28, Lettering.Fit(content.Where, 10, width), 10, Role.Quiet);
        });
        if (content.Headline.Count == 0) return;
        var each = width / 3;
        column.Put(38, (pen, y) =>
        {
            for (var i = 0; i < content.Headline.Count; i++)
            {
                var field = content.Headline[i];
                var room = each - 8;
                var size = Math.Min(13, 13 * room / Math.Max(1, Lettering.Width(field.Value, 13, Weight.SemiBold)));
                pen.Text(Margin + each * i, y + 10, Lettering.Fit(field.Name, Body, room), Body, Role.Quiet);
                pen.Text(Margin + each * i, y + 25, field.Value, size, Role.Ink, Anchor.Start, Weight.SemiBold);
            }
        });
    }

    private static void Coefficients(PaperColumn column, PortSheet sheet, UnitSystem units, double width)
    {
        if (sheet.Windows.Count < 2 || sheet.Port.Fact.Valve is not { } valve) return;
        column.Space(8);
        // It takes what the table left of the sheet where that is enough to be read.
        var height = column.Left >= 125 ? Math.Min(column.Left, 170) : 170;
        var figure = DischargeCoefficients.Draw(sheet.Windows, sheet.ThroatTakesOver / valve.HeadDiameter, new FigureSize(width, height, 8.5), units);
        column.Put(figure.Height, (pen, y) => { foreach (var mark in Moved.To(figure, Margin, y)) pen.Put(mark); });
    }

    private static void Section(PaperColumn column, SheetSection section, double width)
    {
        column.Space(7);
        column.Put(Line + 2, (pen, y) =>
            pen.Text(Margin, y + 9, section.Heading, 9.2, section.Caution ? Role.Thin : Role.Ink, Anchor.Start, Weight.SemiBold), keep: 2 * Line);
        foreach (var sentence in section.Sentences)
        {
            foreach (var line in Lettering.Wrap(sentence, Body, width - 10))
                column.Put(Line, (pen, y) => pen.Text(Margin, y + 8, line, Body));
            column.Space(1.5);
        }
    }
}
