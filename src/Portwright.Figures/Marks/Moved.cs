using System.Collections.Immutable;

namespace Portwright.Figures;

/// <summary>Puts a drawing somewhere on a larger one.</summary>
internal static class Moved
{
    public static IEnumerable<Mark> To(Drawing drawing, double x, double y) => drawing.Marks.Select(m => Move(m, x, y));

    private static Mark Move(Mark mark, double x, double y)
    {
        Place At(Place p) => new(p.X + x, p.Y + y);
        ImmutableArray<Place> All(ImmutableArray<Place> places) => [.. places.Select(At)];
        Box In(Box box) => box with { X = box.X + x, Y = box.Y + y };
        return mark switch
        {
            Segments s => s with { Pieces = [.. s.Pieces.Select(p => (At(p.From), At(p.To)))] },
            Polyline p => p with { Places = All(p.Places) },
            Area a => a with { Places = All(a.Places) },
            Circle c => c with { Centre = At(c.Centre) },
            RoundedBox b => b with { Box = In(b.Box) },
            Shades s => s with { Within = All(s.Within), Layers = [.. s.Layers.Select(l => l with { Rings = [.. l.Rings.Select(All)] })] },
            Text t => t with { At = At(t.At) },
            Touchable t => t with { Marks = [.. t.Marks.Select(m => Move(m, x, y))], Tip = [.. t.Tip.Select(m => Move(m, x, y))], Hit = In(t.Hit) },
            _ => throw new ArgumentOutOfRangeException(nameof(mark), mark.GetType().Name, "A mark that can be moved."),
        };
    }
}
