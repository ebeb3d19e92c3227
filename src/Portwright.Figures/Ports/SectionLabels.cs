namespace Portwright.Figures;

/// <summary>Words around a section: outside its wall, none over another, a leader from the place they speak of.</summary>
internal sealed class SectionLabels(SectionFrame frame, Box room, double text)
{
    private readonly List<Box> _taken = [];

    public void Take(Box box) => _taken.Add(box);

    public bool IsFree(Box box) => !_taken.Exists(t => t.Overlaps(box)) && !Touches(box);

    /// <summary>Writes lines outside the wall at a bearing with a leader from a place; nothing where no room is left.</summary>
    public bool Put(Pen pen, Place from, double bearing, IReadOnlyList<(string Words, Role Role, Weight Weight)> lines, double gap)
    {
        if (Find(bearing, lines.Max(l => Lettering.Width(l.Words, text, l.Weight)) + 4, lines.Count * 1.15 * text + 2, gap) is not { } box) return false;
        var end = new Place(Math.Clamp(from.X, box.X, box.Right), Math.Clamp(from.Y, box.Y, box.Bottom));
        pen.Line(from.X, from.Y, end.X, end.Y, new Stroke(Role.Ink, text / 15));
        for (var i = 0; i < lines.Count; i++)
            pen.Text(box.Centre.X, box.Y + (0.9 + 1.15 * i) * text, lines[i].Words, text, lines[i].Role, Anchor.Middle, lines[i].Weight);
        return true;
    }

    private Box? Find(double bearing, double width, double height, double gap)
    {
        var (wall, away) = (frame.WallAt(bearing), frame.Outward(bearing));
        var reach = gap + (Math.Abs(away.X) * width + Math.Abs(away.Y) * height) / 2;
        for (var far = 0.0; far < 5 * text; far += 0.5 * text)
        {
            foreach (var aside in (double[])[0, 0.7, -0.7, 1.4, -1.4, 2.1, -2.1])
            {
                var x = wall.X + (reach + far) * away.X - aside * text * away.Y;
                var y = wall.Y + (reach + far) * away.Y + aside * text * away.X;
                var box = new Box(x - width / 2, y - height / 2, width, height);
                if (!room.Holds(box) || _taken.Exists(t => t.Overlaps(box.Grown(1))) || Touches(box.Grown(4))) continue;
                _taken.Add(box);
                return box;
            }
        }

        return null;
    }

    private bool Touches(Box box) => frame.Wall.Any(p => p.X > box.X && p.X < box.Right && p.Y > box.Y && p.Y < box.Bottom) || Hatching.Holds(frame.Wall, box.Centre);
}
