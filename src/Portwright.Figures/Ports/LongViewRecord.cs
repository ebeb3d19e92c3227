using Portwright.Geometry.LongView;
using Portwright.Physics.Drag;
using Portwright.Shop.Balls;
using Portwright.Shop.Findings;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>What has been recorded, at the metal it belongs to: balls on roof and floor, thin metal, findings, the smallest section.</summary>
internal sealed class LongViewRecord(LongFrame frame, LongViewLabels labels, UnitSystem units)
{
    private readonly List<Action<Pen>> _marks = [];
    private readonly HashSet<(Guid Station, Surface Surface)> _pointedAt = [];
    private readonly List<(Place At, string Words, Role Role, Place? Near)> _words = [];

    /// <summary>The answers drawn, for their row of words.</summary>
    public List<BallAnswer?> Answers { get; } = [];

    /// <summary>What found no room in the drawing, in sentences.</summary>
    public List<string> Unsaid { get; } = [];

    public void Smallest()
    {
        if (frame.Survey.Schedule?.Smallest is not { } least || frame.Stations.FirstOrDefault(s => s.Distance == least.Distance && s.Section is not null) is not { } station) return;
        var height = -0.45 * frame.Survey.Profile.FloorAt(station.Distance);
        var at = frame.At(station.Distance, height);
        Say(at, frame.Size.Width < 560 ? "smallest section" : $"smallest section, {Print.Number(station.Section!.Area.Value, Dimension.Area, units, units == UnitSystem.UsCustomary ? 2 : 0)}", Role.Ink);
        Mark(at, frame.Size.Thick(2.6), pen => pen.Circle(at, frame.Size.Thick(2.6), Role.Ink));
    }

    public void Walls()
    {
        foreach (var station in frame.Stations)
        {
            foreach (var wall in station.Walls.Where(w => w.Stops))
            {
                var surface = SurfaceOf(wall.Point.Fact.Bearing);
                var at = OnWall(station, wall.Point.Fact.Bearing);
                var away = frame.RoofwardAt(station.Distance);
                var sign = surface switch { Surface.Roof => 1, Surface.Floor => -1, _ => 0 };
                var (d, half) = (frame.Size.Thick(6), frame.Size.Thick(11));
                var middle = new Place(at.X + sign * d * away.X, at.Y + sign * d * away.Y);
                var thin = new Stroke(Role.Thin, frame.Size.Thick(4));
                // A heavy line along the wall, in the metal.
                Mark(middle, d, pen => pen.Line(middle.X - half * away.Y, middle.Y + half * away.X, middle.X + half * away.Y, middle.Y - half * away.X, thin));
                var words = $"thin, {Print.Bare(wall.Thickness, Dimension.Lift, units)} {Print.UnitName(Dimension.Length, units)} of metal";
                if (frame.Size.Width < 560) words = words.Replace(" of metal", "", StringComparison.Ordinal);
                if (surface is null) words = frame.Size.Width < 560 ? "thin side" : $"{words}, {Geometry.Views.ViewWords.Metal(wall.Point.Fact.Bearing)}";
                Say(middle, words, Role.Thin, InMetal(middle, sign, away));
            }
        }
    }

    public void Findings(IReadOnlyList<Finding> findings, int most)
    {
        var placed = 0;
        foreach (var finding in findings)
        {
            // Thin metal already stands there as itself.
            if (finding.Kind == FindingKind.Stop) continue;
            if (frame.Stations.FirstOrDefault(s => s.Station.Id == finding.Station?.Id) is not { } station || placed == most)
            {
                Unsaid.Add($"{finding.Title}.");
                continue;
            }

            placed++;
            if (finding.Bearing is { } bearing && SurfaceOf(bearing) is { } face) _pointedAt.Add((station.Station.Id, face));
            // A step towards the seat, so that a ball at the same place is not covered.
            var wall = OnWall(station, finding.Bearing);
            var step = frame.Size.Thick(18);
            var (along, roofward) = (frame.AlongAt(station.Distance), frame.RoofwardAt(station.Distance));
            var inward = finding.Bearing is { } h ? SurfaceOf(h) switch { Surface.Roof => -frame.Size.Thick(8), Surface.Floor => frame.Size.Thick(8), _ => 0 } : 0;
            var at = new Place(wall.X + step * along.X + inward * roofward.X, wall.Y + step * along.Y + inward * roofward.Y);
            Mark(at, frame.Size.Thick(7), pen => pen.Circle(at, frame.Size.Thick(6), Role.Brass, new Stroke(Role.Ink, frame.Size.Thick(1))));
            Say(at, finding.Rule.Name, Role.Ink, InMetal(at, -Math.Sign(inward), roofward));
        }
    }

    /// <param name="words">Whether what is out of the ordinary is written out as well.</param>
    public void Balls(bool words)
    {
        foreach (var station in frame.Stations)
        {
            foreach (var surface in (Surface[])[Surface.Roof, Surface.Floor])
            {
                var here = station.Balls.Where(b => b.Bearing is { } h && SurfaceOf(h) == surface).ToList();
                if (here.Count == 0) continue;
                var worst = here.MaxBy(b => BallMark.Weight(b.Response?.Answer))!;
                var radius = frame.Size.Thick(6.5);
                var at = Inward(station, surface, radius + frame.Size.Thick(2));
                Mark(at, radius, pen => BallMark.Draw(pen, at, radius, worst.Response?.Answer, frame.Size.Thick(1.6)));
                Answers.Add(worst.Response?.Answer);
                // A finding at the place says it already.
                var found = _pointedAt.Contains((station.Station.Id, surface));
                if (words && !found && Words(worst) is { } said) Say(at, said, Role.Ink);
            }
        }
    }

    /// <summary>Finds room for all words, the first said first, once every mark has its place.</summary>
    public void Place()
    {
        foreach (var (at, words, role, near) in _words)
        {
            if (!labels.Put(at, words, role, near: near)) Unsaid.Add($"{words}.");
        }
    }

    public void Draw(Pen pen)
    {
        foreach (var mark in _marks) mark(pen);
    }

    /// <summary>Only what is out of the ordinary is written out: the shape says the rest.</summary>
    private string? Words(BallPlace ball) => ball.Response?.Answer switch
    {
        BallAnswer.TornOff or BallAnswer.Lazy or BallAnswer.Busier => $"ball {SurveyWords.Of(ball).In(units)}",
        _ => null,
    };

    private void Say(Place at, string words, Role role, Place? near = null) => _words.Add((at, words, role, near));

    /// <summary>Words about a wall are looked for in the metal behind it first.</summary>
    private Place InMetal(Place at, double sign, Place roofward) =>
        new(at.X + sign * frame.Size.Text * roofward.X, at.Y + sign * frame.Size.Text * roofward.Y);

    private void Mark(Place at, double radius, Action<Pen> draw)
    {
        _marks.Add(draw);
        labels.Take(new Box(at.X, at.Y, 0, 0).Grown(radius));
    }

    private Place OnWall(SurveyedStation station, double? bearing) => bearing is { } hours && SurfaceOf(hours) is { } surface
        ? frame.At(station.Distance, surface == Surface.Roof ? frame.Survey.Profile.RoofAt(station.Distance) : -frame.Survey.Profile.FloorAt(station.Distance))
        : frame.At(station.Distance, 0);

    private Place Inward(SurveyedStation station, Surface surface, double px)
    {
        var sign = surface == Surface.Roof ? 1 : -1;
        var wall = surface == Surface.Roof ? frame.Survey.Profile.RoofAt(station.Distance) : frame.Survey.Profile.FloorAt(station.Distance);
        return frame.At(station.Distance, sign * (wall - frame.Metres(px)));
    }

    /// <summary>Roof or floor within two and a half hours; null at the sides.</summary>
    private static Surface? SurfaceOf(double bearing) =>
        WallState.Apart(bearing, 12) <= 2.5 ? Surface.Roof : WallState.Apart(bearing, 6) <= 2.5 ? Surface.Floor : null;
}
