using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>The port in its engine on paper: what it says, torque and power, what each lift is worth, and what the engine asks.</summary>
internal static class EnginePaper
{
    private const double Body = 8.2, Line = 10.8, Small = 6.8, SmallLine = 8.8, Gap = 10, Row = 12.2;

    /// <summary>Share of the width of each column of the targets.</summary>
    private static readonly double[] Shares = [0.46, 0.21, 0.21, 0.12];

    public static void Put(PaperColumn column, PortInEngine engine, UnitSystem units, double left, double width)
    {
        column.Space(7);
        column.Put(14, (pen, y) => pen.Text(left, y + 9, EngineSection.Heading, 9.2, Role.Ink, Anchor.Start, Weight.SemiBold), keep: 3 * Line);
        foreach (var sentence in EngineSection.Said(engine, units))
        {
            Words(column, sentence, Body, Line, Role.Ink, left, width);
            column.Space(1.5);
        }

        if (engine.Answer is { } answer)
        {
            column.Space(6);
            Figure(column, TorqueAndPower.Of(EngineSpeed.Of(answer), units, new FigureSize(width, 235, 8.5)), left);
            Figure(column, WorthOverLift.Of(answer, engine.Kind, units, new FigureSize(width, 215, 8.5)), left);
            Words(column, EngineSection.Small, Small, SmallLine, Role.Quiet, left, width);
            column.Space(4);
        }

        Targets(column, EngineSection.Targets(engine, units), left, width);
        column.Space(3);
        Words(column, EngineSection.Met(engine), Body, Line, Role.Ink, left, width);
    }

    private static void Targets(PaperColumn column, IReadOnlyList<IReadOnlyList<string>> rows, double left, double width)
    {
        if (rows.Count == 0) return;
        var edges = Shares.Select((_, i) => left + width * Shares.Take(i).Sum()).ToArray();
        double Head(Pen pen, double y)
        {
            for (var i = 0; i < edges.Length; i++) pen.Text(edges[i], y + 9, EngineSection.Heads[i], Body, i == 0 ? Role.Ink : Role.Quiet, Anchor.Start, i == 0 ? Weight.SemiBold : Weight.Regular);
            pen.Line(left, y + 12.5, left + width, y + 12.5, new Stroke(Role.Ink, 0.9));
            return 14;
        }

        column.Put(14, (pen, y) => Head(pen, y), keep: 3 * Row);
        foreach (var row in rows)
        {
            column.Put(Row, (pen, y) =>
            {
                for (var i = 0; i < edges.Length; i++) pen.Text(edges[i], y + 8.6, Lettering.Fit(row[i], Body, Shares[i] * width - 4), Body, Role.Ink, Anchor.Start, i == 3 ? Weight.SemiBold : Weight.Regular);
                pen.Line(left, y + Row - 0.4, left + width, y + Row - 0.4, new Stroke(Role.Hairline, 0.5));
            }, again: Head);
        }
    }

    private static void Words(PaperColumn column, string sentence, double size, double line, Role role, double left, double width)
    {
        foreach (var words in Lettering.Wrap(sentence, size, width - 10)) column.Put(line, (pen, y) => pen.Text(left, y + 8, words, size, role));
    }

    private static void Figure(PaperColumn column, Drawing drawing, double left) => column.Put(drawing.Height + Gap, (pen, y) =>
    {
        foreach (var mark in Moved.To(drawing, left, y)) pen.Put(mark);
    });
}
