using System.Collections.Immutable;
using Portwright.Geometry;
using Portwright.Physics.Rings;
using Portwright.Shop.Rings;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>The air's speed over a section: colours to the wall, readings as dots with their numbers by leaders, a scale beneath.</summary>
internal static class SectionSpeeds
{
    /// <summary>Nearer to the wall than this share of the deepest place the colour is that of this depth: the layer there is thinner than a line.</summary>
    private const double WallShare = 0.06;

    private const int Cells = 60;

    public static void Draw(SectionSheet sheet, double width)
    {
        var ring = sheet.Station.Ring ?? sheet.Station.Rings.OrderBy(r => r.Lift).LastOrDefault();
        if (ring is null)
        {
            sheet.Empty = "No ring yet. Hold the probe at the hours and in the middle: the air's speed fills the section.";
            return;
        }

        var lift = Print.Number(ring.Lift, Dimension.Lift, sheet.Units);
        if (ring.Map is { } map)
        {
            var (low, high) = Fill(sheet.Pen, sheet.Frame, map);
            var mean = Print.WithDoubt(map.Mean.Value, map.Mean.Expanded(), Dimension.Speed, sheet.Units);
            sheet.Foot = (pen, y) => ScaleBar(pen, y, width, sheet, low, high, $"mean {mean} at {lift} lift");
            sheet.Said.Add((null, $"mean {mean}"));
        }
        else
        {
            sheet.Under(ring.Problem, width);
        }

        Readings(sheet, ring);
    }

    /// <summary>Fills the opening with the map's colours; gives the speeds at the ends of the scale, m/s.</summary>
    public static (double Low, double High) Fill(Pen pen, SectionFrame frame, VelocityMap map)
    {
        var bounds = frame.Outline.Bounds;
        var step = Math.Max(bounds.Width, bounds.Height) / Cells;
        var (columns, rows) = ((int)Math.Ceiling(bounds.Width / step) + 5, (int)Math.Ceiling(bounds.Height / step) + 5);
        var speeds = new double[columns, rows];
        PlanePoint Metal(double i, double j) => new(bounds.Left + (i - 2) * step, bounds.Bottom + (j - 2) * step);
        var deepest = Math.Min(bounds.Width, bounds.Height) / 2;
        double low = double.PositiveInfinity, high = map.Readings.Max(r => r.Speed);
        for (var i = 0; i < columns; i++)
        {
            for (var j = 0; j < rows; j++)
            {
                speeds[i, j] = At(frame.Outline, map, Metal(i, j), WallShare * deepest);
                if (double.IsFinite(speeds[i, j])) low = Math.Min(low, speeds[i, j]);
            }
        }

        // An even field is to look even: the scale spans a tenth of the fastest at least.
        low = Math.Min(Math.Min(low, map.Readings.Min(r => r.Speed)), 0.9 * high);
        var (left, right) = (frame.Wall.Min(p => p.X) - 1, frame.Wall.Max(p => p.X) + 1);
        var (top, bottom) = (frame.Wall.Min(p => p.Y) - 1, frame.Wall.Max(p => p.Y) + 1);
        ImmutableArray<Place> whole = [new(left, top), new(right, top), new(right, bottom), new(left, bottom)];
        var layers = ImmutableArray.CreateBuilder<Shade>();
        layers.Add(new Shade([whole], SpeedColours.Step(0)));
        for (var k = 1; k < SpeedColours.Steps; k++)
        {
            var rings = Contours.Above(speeds, low + (high - low) * k / SpeedColours.Steps, (i, j) => frame.At(Metal(i, j)));
            if (rings.Length > 0) layers.Add(new Shade(rings, SpeedColours.Step(k)));
        }

        pen.Put(new Shades([.. frame.Wall], layers.ToImmutable()));
        return (low, high);
    }

    /// <summary>Speed to draw at a point: near the wall and outside it, that of the nearest place a little way in.</summary>
    private static double At(Outline outline, VelocityMap map, PlanePoint point, double least)
    {
        var wall = outline.NearestWall(point);
        var distance = point.To(wall);
        var inside = outline.Contains(point);
        if (!inside || distance < least)
        {
            var inwards = distance > 1e-9 ? (inside ? point - wall : wall - point) * (1 / distance) : (outline.BearingCentre - wall) * (1 / wall.To(outline.BearingCentre));
            point = wall + inwards * least;
        }

        var speed = map.At(point);
        return double.IsNaN(speed) ? double.NegativeInfinity : speed;
    }

    private static void Readings(SectionSheet sheet, ReducedRing ring)
    {
        var unit = Unit.Default(Dimension.Speed, sheet.Units);
        string Bare(double speed) => Print.Bare(speed, Dimension.Speed, sheet.Units, unit.FromSi(speed) >= 100 ? 0 : 1);
        foreach (var reading in ring.Readings.OrderBy(r => r.Place.To(sheet.Frame.Outline.BearingCentre)))
        {
            var at = sheet.Frame.At(reading.Place);
            var bearing = reading.Reading.Fact.Bearing;
            sheet.Said.Add((bearing, $"{Bare(reading.Speed)} {unit.Name}"));
            if (bearing is { } hours)
            {
                sheet.Labels.Put(sheet.Pen, at, hours, [(Bare(reading.Speed), Role.Ink, Weight.SemiBold)], 1.75 * sheet.Text);
            }
            else
            {
                var words = Bare(reading.Speed);
                var wide = Lettering.Width(words, sheet.Text, Weight.SemiBold) + 6;
                var box = new Box(at.X - wide / 2, at.Y + 0.5 * sheet.Text, wide, 1.25 * sheet.Text);
                sheet.Pen.Box(box, 3, Role.Ground);
                sheet.Pen.Text(box.Centre.X, box.Y + 0.95 * sheet.Text, words, sheet.Text, Role.Ink, Anchor.Middle, Weight.SemiBold);
            }

            sheet.Pen.Circle(at, sheet.Thick(4.5), Role.Ground, new Stroke(Role.Ink, sheet.Thick(1.4)));
        }
    }

    private static double ScaleBar(Pen pen, double y, double width, SectionSheet sheet, double low, double high, string words)
    {
        var t = sheet.Text;
        var unit = Unit.Default(Dimension.Speed, sheet.Units);
        var bar = new Box(width * 0.16, y + 0.2 * t, width * 0.68, 0.8 * t);
        var wide = bar.Width / SpeedColours.Steps;
        ImmutableArray<Place> Upright(double from, double to) => [new(from, bar.Y), new(to, bar.Y), new(to, bar.Bottom), new(from, bar.Bottom)];
        // Each step reaches under the next, so that no gap shows between them.
        pen.Put(new Shades(Upright(bar.X, bar.Right), [.. Enumerable.Range(0, SpeedColours.Steps).Select(k => new Shade([Upright(bar.X + k * wide, bar.Right)], SpeedColours.Step(k)))]));
        pen.Box(bar, 0, null, new Stroke(Role.Ink, sheet.Thick(1)));
        var scale = new Scale(unit.FromSi(low), unit.FromSi(high), bar.X, bar.Right);
        var step = Scale.Step(scale.To - scale.From, 4);
        foreach (var tick in Scale.Ticks(scale.From, scale.To, step))
        {
            var x = scale.At(tick);
            pen.Line(x, bar.Bottom, x, bar.Bottom + 0.3 * t, new Stroke(Role.Ink, sheet.Thick(1)));
            pen.Text(x, bar.Bottom + 1.3 * t, Print.Bare(unit.ToSi(tick), Dimension.Speed, sheet.Units, step < 1 ? 1 : 0), t, Role.Quiet, Anchor.Middle);
        }

        pen.Text(bar.Right + 0.6 * t, bar.Bottom - 0.1 * t, unit.Name, t, Role.Quiet);
        pen.Text(width / 2, bar.Bottom + 2.7 * t, Lettering.Fit(words, t, width - 8), t, Role.Quiet, Anchor.Middle);
        return bar.Bottom + 3 * t;
    }
}
