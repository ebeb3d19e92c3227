using Portwright.Shop.Units;
using Portwright.Shop.Walls;

namespace Portwright.Figures;

/// <summary>Metal outside the wall, to scale: a bar as long as the metal is thick, a cross line at the limit, the number beyond it.</summary>
internal static class SectionWalls
{
    public static void Draw(SectionSheet sheet, double width)
    {
        var walls = sheet.Station.Walls;
        if (walls.Count == 0)
        {
            sheet.Empty = "No wall point yet. Measure the metal at an hour: its thickness stands outside the wall there.";
            return;
        }

        foreach (var wall in walls)
        {
            var hours = wall.Point.Fact.Bearing;
            Bar(sheet.Pen, sheet.Frame, wall, sheet.Text);
            var number = Print.Bare(wall.Thickness, Dimension.Lift, sheet.Units);
            sheet.Said.Add((hours, $"{number} {Print.UnitName(Dimension.Length, sheet.Units)} of metal{(wall.Stops ? ", thin" : "")}, {WallLimit.Words(wall.Point.Fact.Behind)}"));
            var role = wall.Stops ? Role.Thin : Role.Ink;
            var end = sheet.Frame.OffWall(hours, Length(sheet.Frame, wall));
            sheet.Labels.Put(
                sheet.Pen, end, hours,
                wall.Stops ? [(number, role, Weight.SemiBold), ("thin", role, Weight.Regular)] : [(number, role, Weight.Regular)],
                Length(sheet.Frame, wall) + 0.4 * sheet.Text);
        }

        sheet.Under($"thickness of the metal, {Print.UnitName(Dimension.Length, sheet.Units)}; cross line: the limit", width);
    }

    /// <summary>A bar as long as the metal is thick, and the limit across it.</summary>
    public static void Bar(Pen pen, SectionFrame frame, WallState wall, double text)
    {
        var hours = wall.Point.Fact.Bearing;
        var (from, to, away) = (frame.WallAt(hours), frame.OffWall(hours, Length(frame, wall)), frame.Outward(hours));
        var role = wall.Stops ? Role.Thin : Role.Quiet;
        pen.Line(from.X, from.Y, to.X, to.Y, new Stroke(role, wall.Stops ? text / 3 : text / 6));
        var (limit, half) = (frame.OffWall(hours, Math.Min(frame.Px(wall.Limit), Longest(frame))), 0.45 * text);
        pen.Line(limit.X - half * away.Y, limit.Y + half * away.X, limit.X + half * away.Y, limit.Y - half * away.X, new Stroke(Role.Ink, text / 11));
    }

    private static double Length(SectionFrame frame, WallState wall) => Math.Min(frame.Px(wall.Thickness), Longest(frame));

    /// <summary>Metal thicker than this is drawn this long: it is far from mattering.</summary>
    private static double Longest(SectionFrame frame) => 0.08 * (frame.Wall.Max(p => p.Y) - frame.Wall.Min(p => p.Y));
}
