using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>A document's blocks on sheets of paper, in the document's order, small and close: a figure beside its table, small drawings abreast.</summary>
internal sealed class PaperBlocks(PaperColumn column, PortAtCut? port, UnitSystem units, double left, double width)
{
    private const double Body = 8.2, Line = 10.2, Small = 7, SmallLine = 8.6, Letters = 7.6, Gap = 12;

    /// <summary>Share of the width that three drawings of sections take: three rows of them then fit a sheet.</summary>
    private const double SectionsWide = 0.84;

    public void Write(Document document)
    {
        column.Put(32, (pen, y) =>
        {
            pen.Text(left, y + 14, Lettering.Fit(document.Title.In(units), 17, width, Weight.SemiBold), 17, Role.Ink, Anchor.Start, Weight.SemiBold);
            pen.Text(left, y + 26, Lettering.Fit(document.Place.In(units), 10, width), 10, Role.Quiet);
        });
        foreach (var part in document.Parts)
        {
            column.Space(4);
            column.Hold(13, (pen, y) => pen.Text(left, y + 9, Lettering.Fit(part.Heading.In(units), 9.4, width, Weight.SemiBold), 9.4, Role.Ink, Anchor.Start, Weight.SemiBold));
            for (var i = 0; i < part.Blocks.Count;) i += Put(part.Blocks, i);
        }
    }

    /// <summary>Puts a block, with those behind it that stand beside it; gives how many.</summary>
    private int Put(IReadOnlyList<Block> blocks, int at)
    {
        var next = at + 1 < blocks.Count ? blocks[at + 1] : null;
        switch (blocks[at])
        {
            case Paragraph p: Words(p.Text, Body, Line, Role.Ink); break;
            case Caution c: Barred([(c.Text, Weight.Regular)], Role.Thin); break;
            case Values v: Values(v); break;
            case Table t: Table(t); break;
            case Figure f when port is null: Words(f.Instead, Body, Line, Role.Ink); break;
            case Figure { Kind: FigureKind.Section }:
                var sections = blocks.Skip(at).TakeWhile(b => b is Figure { Kind: FigureKind.Section }).Cast<Figure>().ToList();
                Sections(sections);
                return sections.Count;
            case Figure f when next is Table t && Beside(f, t, at + 2 < blocks.Count ? blocks[at + 2] as Figure : null) is > 0 and var taken: return taken;
            case Figure f when next is Figure { Kind: not FigureKind.Section } g:
                Abreast([Drawn(f, Pitch(2) - Gap), Drawn(g, Pitch(2) - Gap)]);
                return 2;
            case Figure f: Abreast([Drawn(f, width)]); break;
            case FindingSaid f: Finding(f); break;
            default: throw new ArgumentOutOfRangeException(nameof(blocks), blocks[at].GetType().Name, "A kind of block that is not known here.");
        }

        return 1;
    }

    private void Words(Sentence words, double size, double line, Role role, Weight weight = Weight.Regular, double keep = 0)
    {
        foreach (var row in Lettering.Wrap(words.In(units), size, width - 6, weight).Chunk(8))
            column.Put(row.Length * line + 1.2, (pen, y) => Lines(pen, row, left, y, size, line, role, weight), keep);
    }

    private static void Lines(Pen pen, IReadOnlyList<string> rows, double x, double y, double size, double line, Role role, Weight weight = Weight.Regular)
    {
        for (var i = 0; i < rows.Count; i++) pen.Text(x, y + 0.95 * size + i * line, rows[i], size, role, Anchor.Start, weight);
    }

    /// <summary>Sentences beside a bar: what must not be passed over.</summary>
    private void Barred(IEnumerable<(Sentence Words, Weight Weight)> sentences, Role role, LineType type = LineType.Continuous)
    {
        var rows = sentences.SelectMany(s => Lettering.Wrap(s.Words.In(units), Body, width - 14, s.Weight).Select(w => (w, s.Weight))).ToList();
        foreach (var some in rows.Chunk(12))
        {
            column.Put(some.Length * Line + 3, (pen, y) =>
            {
                pen.Line(left + 2, y, left + 2, y + some.Length * Line, new Stroke(role, 2, type));
                for (var i = 0; i < some.Length; i++) Lines(pen, [some[i].w], left + 8, y + i * Line, Body, Line, Role.Ink, some[i].Weight);
            });
        }
    }

    private void Finding(FindingSaid finding)
    {
        Sentence title = finding.Odds.IsEmpty ? finding.Title : $"{finding.Title}, {finding.Odds}";
        Barred(
            [(title, Weight.SemiBold), (finding.Says, Weight.Regular), .. finding.Then.Select(t => (t, Weight.Regular))],
            finding.Kind == FindingKind.Port ? Role.Brass : Role.Thin, finding.Kind == FindingKind.Measurement ? LineType.Dotted : LineType.Continuous);
    }

    private void Values(Values values)
    {
        // The results in one glance are larger than what is to be looked up.
        var isHeadline = values.Key == "headline";
        var table = new Table(
            values.Key, Sentence.Empty, [new("name", Sentence.Empty), new("value", Sentence.Empty, Strong: isHeadline)],
            [.. values.Rows.Select(r => (IReadOnlyList<Cell>)[new(r.Name), new(r.Value, r.Shape)])], Sentence.Empty);
        // A column more must be worth it: one is read soonest.
        var (laid, abreast) = Enumerable.Range(1, 3).Select(n => (Laid: new PaperTable(table, units, Pitch(n) - Gap, isHeadline ? 9.6 : 7.8, list: true), n)).MinBy(l => l.Laid.Height(l.n) * (1 + 0.1 * l.n));
        Rows(laid, abreast, laid.HeightOf(0, abreast));
    }

    private void Table(Table table)
    {
        var (one, half) = (new PaperTable(table, units, width), new PaperTable(table, units, Pitch(2) - Gap));
        // A long narrow table stands in two halves, where both are seen at once and nothing is broken in two.
        var two = half.Height(2) < 0.75 * one.Height(1) && one.Rows >= 12 && half.Height(2) < 0.5 * column.Room;
        var keep = two ? half.Height(2) : one.HeadHeight + 2 * Line;
        column.Space(2);
        Words(table.Caption, Small, SmallLine, Role.Quiet, keep: keep);
        Rows(two ? half : one, two ? 2 : 1, keep);
        Words(table.Note, Small, SmallLine, Role.Quiet);
    }

    private void Rows(PaperTable laid, int abreast, double keep)
    {
        double Heads(Pen pen, double y) => Enumerable.Range(0, abreast).Max(a => laid.Head(pen, left + a * Pitch(abreast), y));
        column.Put(laid.HeadHeight, (pen, y) => Heads(pen, y), keep);
        for (var row = 0; row < laid.Per(abreast); row++)
        {
            var r = row;
            column.Put(laid.HeightOf(r, abreast), (pen, y) => laid.Row(pen, left, y, r, abreast, Pitch(abreast)), again: Heads);
        }

        column.Space(3);
    }

    /// <summary>From column to column where so many stand abreast.</summary>
    private double Pitch(int abreast) => (width + Gap) / abreast;

    /// <summary>
    /// A figure with its narrow table at its side, and under the table the figure that follows, where it has room; gives how many blocks it
    /// took, none where the table leaves too little room or is too long.
    /// </summary>
    private int Beside(Figure figure, Table table, Figure? after)
    {
        var laid = new PaperTable(table, units, 0.56 * width);
        var (caption, note) = (Lettering.Wrap(table.Caption.In(units), Small, laid.Width), Lettering.Wrap(table.Note.In(units), Small, laid.Width));
        var high = laid.Height(1) + (caption.Count + note.Count) * SmallLine + 6;
        if (laid.Natural > 0.56 * width || high > 0.4 * column.Room) return 0;
        var x = left + width - laid.Width;
        var drawn = Drawn(figure, width - Gap - laid.Width);
        var under = after is null ? null : Drawn(after, laid.Width);
        if (under is not null && high + under.Height > drawn.Height + Gap) under = null;
        column.Put(Math.Max(drawn.Height, high + (under?.Height ?? 0)) + 3, (pen, y) =>
        {
            drawn.Put(pen, left, y);
            Lines(pen, caption, x, y, Small, SmallLine, Role.Quiet);
            under?.Put(pen, x, y + high);
            y += caption.Count * SmallLine + 1;
            y += laid.Head(pen, x, y);
            for (var r = 0; r < laid.Rows; y += laid.HeightOf(r++, 1)) laid.Row(pen, x, y, r);
            Lines(pen, note, x, y + 2, Small, SmallLine, Role.Quiet);
        });
        return under is null ? 2 : 3;
    }

    private void Abreast(IReadOnlyList<Captioned> drawn) => column.Put(drawn.Max(d => d.Height) + 3, (pen, y) =>
    {
        var x = left;
        foreach (var one in drawn)
        {
            one.Put(pen, x, y);
            x += one.Drawing.Width + Gap;
        }
    });

    /// <summary>Stations side by side, each in the first row that has room for it.</summary>
    private void Sections(IEnumerable<Figure> figures)
    {
        List<List<Captioned>> rows = [];
        foreach (var drawn in figures.Select(f => Drawn(f, SectionsWide * width)))
        {
            if (rows.Find(r => r.Sum(d => d.Drawing.Width + Gap) + drawn.Drawing.Width <= width) is { } row) row.Add(drawn);
            else rows.Add([drawn]);
        }

        foreach (var row in rows) Abreast(row);
    }

    /// <summary>The figure with its sentence under it, as high as its kind wants, lower where little is left of the sheet and that is enough to read it.</summary>
    private Captioned Drawn(Figure figure, double room)
    {
        var (share, least, most) = figure.Kind switch
        {
            FigureKind.FlowOverLift => (0.62, 180, 220),
            FigureKind.TorqueAndPower or FigureKind.WorthOverLift => (0.6, 150, 200),
            _ => (0.3, 105, 125),
        };
        var wanted = Math.Clamp(share * room, least, most);
        var over = column.Left - 3 * SmallLine;
        var size = new FigureSize(room, over >= least && over < wanted ? over : wanted, Letters);
        var drawing = SheetFigures.Draw(port!, figure, units, size);
        return new(drawing, Lettering.Wrap(figure.Instead.In(units), Small, drawing.Width));
    }

    private sealed record Captioned(Drawing Drawing, IReadOnlyList<string> Caption)
    {
        public double Height => Drawing.Height + 3 + Caption.Count * SmallLine;

        public void Put(Pen pen, double x, double y)
        {
            pen.Put(Moved.To(Drawing, x, y));
            Lines(pen, Caption, x, y + Drawing.Height + 2, Small, SmallLine, Role.Quiet);
        }
    }
}
