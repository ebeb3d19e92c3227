namespace Portwright.Figures;

/// <summary>Finds room for labels: never over another text, off the lines where it can.</summary>
internal sealed class LabelPlaces(Box room)
{
    private readonly List<Box> _taken = [];
    private readonly List<Place> _lines = [];

    /// <summary>Keeps other labels off a text already drawn.</summary>
    public void Take(Box box) => _taken.Add(box);

    public void Take(IEnumerable<Mark> marks)
    {
        foreach (var text in marks.OfType<Text>()) _taken.Add(text.Bounds());
    }

    /// <summary>A line that labels stay off where they can.</summary>
    public void Avoid(IReadOnlyList<Place> line)
    {
        for (var i = 1; i < line.Count; i++)
        {
            var (a, b) = (line[i - 1], line[i]);
            var steps = (int)Math.Ceiling(Math.Max(Math.Abs(b.X - a.X), Math.Abs(b.Y - a.Y)) / 3);
            for (var s = 0; s <= steps; s++) _lines.Add(new(a.X + (b.X - a.X) * s / Math.Max(1, steps), a.Y + (b.Y - a.Y) * s / Math.Max(1, steps)));
        }

        if (line.Count == 1) _lines.Add(line[0]);
    }

    /// <summary>
    /// The best place for a block of text near a point: right of it first, then above, then further off. Null only where the whole
    /// room is taken.
    /// </summary>
    public Box? Find(Place near, double width, double height, double gap)
    {
        Box? best = null;
        var cost = double.PositiveInfinity;
        foreach (var (candidate, dislike) in Candidates(near, width, height, gap))
        {
            if (dislike >= cost || !room.Holds(candidate) || _taken.Any(t => t.Grown(1).Overlaps(candidate))) continue;
            var c = dislike + 9 * Crossed(candidate);
            if (c < cost) (best, cost) = (candidate, c);
        }

        if (best is { } found) _taken.Add(found);
        return best;
    }

    /// <summary>The pieces of an upright line that no text stands on.</summary>
    public IEnumerable<(double From, double To)> Free(double x, double top, double bottom)
    {
        var at = top;
        foreach (var box in _taken.Where(b => b.X < x + 2 && x - 2 < b.Right && b.Bottom > top && b.Y < bottom).OrderBy(b => b.Y))
        {
            if (box.Y - 2 > at) yield return (at, box.Y - 2);
            at = Math.Max(at, box.Bottom + 2);
        }

        if (bottom > at) yield return (at, bottom);
    }

    private int Crossed(Box box)
    {
        var wide = box.Grown(2);
        return _lines.Count(p => p.X > wide.X && p.X < wide.Right && p.Y > wide.Y && p.Y < wide.Bottom);
    }

    private IEnumerable<(Box Box, double Dislike)> Candidates(Place near, double width, double height, double gap)
    {
        var right = near.X + gap;
        var left = near.X - gap - width;
        var middle = near.X - width / 2;
        for (var far = 0; far < 12; far++)
        {
            var off = far * height * 0.5;
            yield return (new(right, near.Y - height / 2 - off, width, height), 6 * far);
            yield return (new(right, near.Y - height / 2 + off, width, height), 6 * far + 1);
            yield return (new(left, near.Y - height - gap - off, width, height), 6 * far + 3);
            yield return (new(middle, near.Y - height - gap - off, width, height), 6 * far + 2);
            yield return (new(right, near.Y + gap + off, width, height), 6 * far + 5);
            yield return (new(middle, near.Y + gap + off, width, height), 6 * far + 6);
            yield return (new(left, near.Y + gap + off, width, height), 6 * far + 7);
        }

        // Anywhere at all, the nearer the better.
        for (var y = room.Y; y + height <= room.Bottom; y += height * 0.5)
        {
            for (var x = room.X; x + width <= room.Right; x += Math.Max(4, width * 0.25))
            {
                var box = new Box(x, y, width, height);
                yield return (box, 80 + Math.Abs(box.Centre.X - near.X) + Math.Abs(box.Centre.Y - near.Y));
            }
        }
    }
}
