namespace Portwright.Architecture;

/// <summary>Rooms as boxes, what is used above what uses it.</summary>
public static class RoomsPicture
{
    private const double RoomWidth = 128, RoomHeight = 36, Row = 80, Margin = 28;

    public static string Of(UseGraph uses, string title)
    {
        ArgumentNullException.ThrowIfNull(uses);
        var layout = new Layout(uses, RoomWidth, Row);
        var drawing = new Drawing(layout.Width + 2 * Margin, (layout.Rows - 1) * Row + RoomHeight + 2 * Margin, title);
        Place Moved(string name) => layout.At(name) is var at ? new(at.X + Margin, at.Y + Margin + RoomHeight / 2) : default;
        foreach (var group in layout.Ways)
        {
            var way = group.Through.Select(Moved).ToList();
            way[0] = way[0] with { X = Share(layout, Moved, group.Used, group, w => w.Used, w => w.Through[1]), Y = way[0].Y + RoomHeight / 2 };
            way[^1] = way[^1] with { X = Share(layout, Moved, group.User, group, w => w.User, w => w.Through[^2]), Y = way[^1].Y - RoomHeight / 2 };
            drawing.Arrow(way);
        }

        foreach (var (one, other) in uses.Ties())
            drawing.Arrow([Moved(one) with { Y = Moved(one).Y - RoomHeight / 2 }, Moved(other) with { Y = Moved(other).Y - RoomHeight / 2 }], tied: true);
        foreach (var room in uses.Rooms) drawing.Box(Moved(room).X, Moved(room).Y, RoomWidth, RoomHeight, room);
        return drawing.ToString();
    }

    /// <summary>Arrows share a side of a room evenly, in the order of the places they come from or go to.</summary>
    private static double Share(
        Layout layout, Func<string, Place> place, string room, (string, string, IReadOnlyList<string>) way,
        Func<(string Used, string User, IReadOnlyList<string> Through), string> end, Func<(string Used, string User, IReadOnlyList<string> Through), string> next)
    {
        var same = layout.Ways.Where(w => end(w) == room).OrderBy(w => place(next(w)).X).ToList();
        return place(room).X + RoomWidth * 0.7 * ((same.IndexOf(way) + 0.5) / same.Count - 0.5);
    }
}
