using System.Collections.Immutable;

namespace Portwright.Figures;

/// <summary>Puts a drawing somewhere on a larger one.</summary>
internal static class Moved
{
    /// <summary>The drawing larger or smaller, letters and lines with it.</summary>
    public static Drawing Scaled(Drawing drawing, double scale) =>
        drawing with { Width = drawing.Width * scale, Height = drawing.Height * scale, Marks = [.. To(drawing, 0, 0, scale)] };

    /// <param name="scale">Shrinks letters and lines with it; 1 as drawn.</param>
    public static IEnumerable<Mark> To(Drawing drawing, double x, double y, double scale = 1) => drawing.Marks.Select(m => Move(m, x, y, scale));

    private static Mark Move(Mark mark, double x, double y, double scale)
    {
        Place At(Place p) => new(p.X * scale + x, p.Y * scale + y);
        Stroke Thin(Stroke stroke) => stroke with { Width = stroke.Width * scale };
        Stroke? Thinner(Stroke? stroke) => stroke is { } s ? Thin(s) : null;
        ImmutableArray<Place> All(ImmutableArray<Place> places) => [.. places.Select(At)];
        Box In(Box box) => new(box.X * scale + x, box.Y * scale + y, box.Width * scale, box.Height * scale);
        return mark switch
        {
            Segments s => s with { Pieces = [.. s.Pieces.Select(p => (At(p.From), At(p.To)))], Stroke = Thin(s.Stroke) },
            Polyline p => p with { Places = All(p.Places), Stroke = Thin(p.Stroke) },
            Area a => a with { Places = All(a.Places), Outline = Thinner(a.Outline) },
            Circle c => c with { Centre = At(c.Centre), Radius = c.Radius * scale, Outline = Thinner(c.Outline) },
            RoundedBox b => b with { Box = In(b.Box), Radius = b.Radius * scale, Outline = Thinner(b.Outline) },
            Shades s => s with { Within = All(s.Within), Layers = [.. s.Layers.Select(l => l with { Rings = [.. l.Rings.Select(All)] })] },
            Text t => t with { At = At(t.At), Size = t.Size * scale },
            Named n => n with { Marks = [.. n.Marks.Select(m => Move(m, x, y, scale))] },
            Touchable t => t with { Marks = [.. t.Marks.Select(m => Move(m, x, y, scale))], Tip = [.. t.Tip.Select(m => Move(m, x, y, scale))], Hit = In(t.Hit) },
            _ => throw new ArgumentOutOfRangeException(nameof(mark), mark.GetType().Name, "A mark that can be moved."),
        };
    }
}
