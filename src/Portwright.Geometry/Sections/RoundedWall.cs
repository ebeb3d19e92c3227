using Portwright.Geometry.Paths;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>The wall through widths at heights, straight between them, rounded at floor and roof.</summary>
/// <param name="Corners">Counter-clockwise from the floor's cylinder-wall side.</param>
/// <param name="Radii">One for each corner.</param>
internal sealed record RoundedWall(IReadOnlyList<PlanePoint> Corners, IReadOnlyList<double> Radii)
{
    public static RoundedWall Of(IReadOnlyList<WidthAtHeight> levels, CornerRadii radii)
    {
        var corners = new List<PlanePoint>();
        var rounding = new List<double>();
        void Add(double x, double y, double radius)
        {
            // A width of nothing at floor or roof is one corner, not two.
            if (corners.Count > 0 && corners[^1] == new PlanePoint(x, y)) return;
            corners.Add(new(x, y));
            rounding.Add(radius);
        }
        var roof = levels.Count - 1;
        Add(levels[0].Wall, levels[0].Height, radii.FloorWall);
        for (var i = 0; i <= roof; i++) Add(levels[i].Centre, levels[i].Height, i == 0 ? radii.FloorCentre : i == roof ? radii.RoofCentre : 0);
        for (var i = roof; i > 0; i--) Add(levels[i].Wall, levels[i].Height, i == roof ? radii.RoofWall : 0);
        return new(corners, rounding);
    }

    public WallPath Path() => WallPath.Rounded(Corners, Radii);

    /// <summary>A corner too round for the walls it joins, or null.</summary>
    public SectionProblem? CornerProblem()
    {
        foreach (var radius in Radii)
            if (SectionProblem.Negative("corner radius", radius) is { } problem) return problem;
        for (var i = 0; i < Corners.Count; i++)
        {
            var next = (i + 1) % Corners.Count;
            var taken = WallPath.SetBack(Radii[i], WallPath.Turn(Corners, i)) + WallPath.SetBack(Radii[next], WallPath.Turn(Corners, next));
            if (taken > Corners[i].To(Corners[next]) * (1 + 1e-9))
                return new("corner radius", Math.Max(Radii[i], Radii[next]), "Two corners take more than the wall between them. Check the radius and the sizes, or measure the section as racetrack or by widths at heights.");
        }
        return null;
    }

    /// <summary>What rounding takes off each corner: r^2 (tan(turn/2) - turn/2); (1 - pi/4) r^2 for a square corner.</summary>
    public IEnumerable<WorkingLine> CornerWorking()
    {
        var turns = Enumerable.Range(0, Corners.Count).Select(i => WallPath.Turn(Corners, i)).ToArray();
        var square = turns.Length == 4 && turns.All(t => Math.Abs(t - Math.PI / 2) < 1e-12);
        if (square && Radii.All(r => r == Radii[0]))
        {
            if (Radii[0] > 0)
                yield return new("four corners", "(4 − π) × {0}²", [Quantity.Length(Radii[0])], Quantity.Area((4 - Math.PI) * Radii[0] * Radii[0]), Effect.TakesOff);
            yield break;
        }
        for (var i = 0; i < Corners.Count; i++)
        {
            var radius = Radii[i];
            if (radius == 0) continue;
            var turn = turns[i];
            var removed = Quantity.Area(radius * radius * (Math.Tan(turn / 2) - turn / 2));
            yield return Math.Abs(turn - Math.PI / 2) < 1e-12
                ? new(CornerName(i), "(1 − π/4) × {0}²", [Quantity.Length(radius)], removed, Effect.TakesOff)
                : new(CornerName(i), "{0}² × (tan {1} − {2})", [Quantity.Length(radius), Quantity.Angle(turn / 2), Quantity.Number(turn / 2)], removed, Effect.TakesOff);
        }
    }

    private string CornerName(int i)
    {
        var roof = Corners[i].Y > Corners[0].Y;
        var level = Corners.Where(c => c.Y == Corners[i].Y).ToList();
        if (level.Count == 1) return roof ? "roof corner" : "floor corner";
        var side = Corners[i].X == level.Max(c => c.X) ? "centre side" : "cylinder-wall side";
        return $"{(roof ? "roof" : "floor")} corner, {side}";
    }
}
