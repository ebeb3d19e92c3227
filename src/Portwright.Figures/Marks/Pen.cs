using System.Collections.Immutable;

namespace Portwright.Figures;

/// <summary>Puts marks on a drawing one after another.</summary>
public sealed class Pen
{
    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();

    /// <summary>What is drawn so far.</summary>
    public ImmutableArray<Mark> Marks => _marks.ToImmutable();

    public void Put(Mark mark) => _marks.Add(mark);

    public void Put(IEnumerable<Mark> marks) => _marks.AddRange(marks);

    public void Line(double x1, double y1, double x2, double y2, Stroke stroke) => Put(new Segments([(new(x1, y1), new(x2, y2))], stroke));

    public void Segments(IEnumerable<(Place, Place)> pieces, Stroke stroke) => Put(new Segments([.. pieces], stroke));

    public void Polyline(IEnumerable<Place> places, Stroke stroke) => Put(new Polyline([.. places], stroke));

    public void Area(IEnumerable<Place> places, Role? fill, Stroke? outline = null) => Put(new Area([.. places], fill, outline));

    public void Circle(Place centre, double radius, Role? fill, Stroke? outline = null) => Put(new Circle(centre, radius, fill, outline));

    public void Box(Box box, double radius, Role? fill, Stroke? outline = null) => Put(new RoundedBox(box, radius, fill, outline));

    /// <summary>Text on a baseline. Control characters are taken out; an empty text draws nothing.</summary>
    public void Text(
        double x, double y, string words, double size, Role role = Role.Ink, Anchor anchor = Anchor.Start, Weight weight = Weight.Regular)
    {
        var clean = Lettering.Clean(words);
        if (clean.Length > 0) Put(new Text(new(x, y), clean, size, role, anchor, weight));
    }

    /// <summary>Thin lines at 45 degrees inside a rectangle, as cut metal is shown (ISO 128-3:2022).</summary>
    public void Hatch(Box box, double spacing, Stroke stroke)
    {
        var pieces = new List<(Place, Place)>();
        for (var s = spacing; s < box.Width + box.Height; s += spacing)
        {
            // The line x + y = s, cut off at the rectangle.
            var fromX = Math.Max(0, s - box.Height);
            var toX = Math.Min(s, box.Width);
            pieces.Add((new(box.X + fromX, box.Y + s - fromX), new(box.X + toX, box.Y + s - toX)));
        }

        Segments(pieces, stroke);
    }

    /// <summary>Marks that answer a finger or the keyboard.</summary>
    public void Touchable(string title, Box hit, Action<Pen> marks, Action<Pen>? tip = null, string? href = null, string? key = null, double corner = 3)
    {
        var seen = new Pen();
        marks(seen);
        var hidden = new Pen();
        tip?.Invoke(hidden);
        Put(new Touchable(Lettering.Clean(title), seen.Marks, hit, hidden.Marks, href, key, corner));
    }

    /// <summary>Marks with a name.</summary>
    public void Named(string key, Action<Pen> marks)
    {
        var own = new Pen();
        marks(own);
        Put(new Named(key, own.Marks));
    }

    /// <summary>The finished drawing.</summary>
    public Drawing Done(double width, double height, string title, string description) =>
        new(width, height, Lettering.Clean(title), Lettering.Clean(description), Marks);
}
