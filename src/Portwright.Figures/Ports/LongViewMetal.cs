using Portwright.Geometry;
using Portwright.Geometry.LongView;

namespace Portwright.Figures;

/// <summary>Metal, walls, seat and valve of the long view.</summary>
internal static class LongViewMetal
{
    /// <summary>The opening as a closed line: roof from flange to seat, the seat's chamfer, floor back.</summary>
    public static IReadOnlyList<Place> Opening(LongFrame frame) =>
    [
        .. frame.Survey.Profile.LineOf(Surface.Roof).Select(p => frame.At(p.Point)),
        frame.AtValve(frame.SeatDepth, frame.SeatRadius),
        frame.AtValve(frame.SeatDepth, -frame.SeatRadius),
        .. frame.Survey.Profile.LineOf(Surface.Floor).Reverse().Select(p => frame.At(p.Point)),
    ];

    public static void Draw(Pen pen, LongFrame frame)
    {
        var size = frame.Size;
        var opening = Opening(frame);
        var flange = frame.At(new PlanePoint(0, 0)).X;
        var end = frame.At(new PlanePoint(1, 0)).X > flange ? frame.Room.Right : frame.Room.X;
        Place[] block = [new(flange, frame.Room.Y), new(end, frame.Room.Y), new(end, frame.Room.Bottom), new(flange, frame.Room.Bottom)];
        var face = frame.AtValve(frame.SeatDepth, 0);
        var metal = Before(block, face, frame.Axis);
        pen.Segments(Hatching.Over(metal, opening, 0.62 * size.Text), new Stroke(Role.Hairline, size.Thick(1)));
        var thick = new Stroke(Role.Ink, size.Thick(2.4));
        // The flange's and the chamber's face: the edges of the block that are not just where the drawing ends.
        for (var i = 0; i < metal.Count; i++)
        {
            var (a, b) = (metal[i], metal[(i + 1) % metal.Count]);
            var onFlange = Math.Abs(a.X - flange) < 1e-6 && Math.Abs(b.X - flange) < 1e-6;
            if (onFlange || (Math.Abs(Along(a, face, frame.Axis)) < 1e-6 && Math.Abs(Along(b, face, frame.Axis)) < 1e-6))
                pen.Segments(Outside(a, b, opening), thick);
        }

        Valve(pen, frame, opening);
        foreach (var surface in (Surface[])[Surface.Roof, Surface.Floor]) Wall(pen, frame, surface, thick);
    }

    /// <summary>Pieces of the wall, whole where measured and dashed where the usual shape stands in, and the seat's chamfer.</summary>
    private static void Wall(Pen pen, LongFrame frame, Surface surface, Stroke thick)
    {
        var line = frame.Survey.Profile.LineOf(surface);
        var piece = new List<Place>();
        for (var i = 0; i < line.Count; i++)
        {
            piece.Add(frame.At(line[i].Point));
            if (i + 1 < line.Count && line[i + 1].IsGeneric == line[i].IsGeneric) continue;
            // The piece between a measured and an unmeasured place is not measured.
            if (i + 1 < line.Count && line[i].IsGeneric) piece.Add(frame.At(line[i + 1].Point));
            pen.Polyline(piece, line[i].IsGeneric ? thick with { Type = LineType.Dashed } : thick);
            piece = i + 1 < line.Count && !line[i].IsGeneric ? [frame.At(line[i].Point)] : [];
        }

        var sign = surface == Surface.Roof ? 1 : -1;
        pen.Polyline([frame.At(line[^1].Point), frame.AtValve(frame.SeatDepth, sign * frame.SeatRadius)], thick);
    }

    private static void Valve(Pen pen, LongFrame frame, IReadOnlyList<Place> opening)
    {
        var r = frame.ValveRadius;
        var stem = StemRadius(frame);
        var seat = frame.SeatDepth + frame.Lift;
        // Where the stem leaves through the roof.
        var back = 0.0;
        while (back > -6 * r && Hatching.Holds(opening, frame.AtValve(back, 0))) back -= 0.02 * r;
        back = Math.Max(back, -4 * r);
        var line = new Stroke(Role.Ink, frame.Size.Thick(1.6));
        pen.Area(Head(frame), Role.Panel);
        pen.Polyline(Head(frame), line);
        foreach (var sign in (double[])[1, -1])
            pen.Polyline([frame.AtValve(back, sign * stem), frame.AtValve(seat - 0.75 * r, sign * stem)], new Stroke(Role.Quiet, frame.Size.Thick(1)));
        var centre = new Stroke(Role.Quiet, frame.Size.Thick(1.2), LineType.LongDashDot);
        pen.Polyline([frame.AtValve(back - frame.Metres(1.6 * frame.Size.Text), 0), frame.AtValve(seat + 0.4 * r, 0)], centre);
        pen.Polyline(Enumerable.Range(0, 65).Select(i => frame.At(frame.Length * i / 64, 0)), centre with { Width = frame.Size.Thick(1.4) });
    }

    /// <summary>Head of the valve from the end of its stem round to the other side of it: tulip, 45 degree seat, margin, face.</summary>
    public static IReadOnlyList<Place> Head(LongFrame frame)
    {
        var r = frame.ValveRadius;
        var stem = StemRadius(frame);
        var seat = frame.SeatDepth + frame.Lift;
        var half = Enumerable.Range(0, 13).Select(i => i / 12.0)
            .Select(share => (Along: seat - 0.12 * r - 0.63 * r * (1 - share), Off: stem + (0.88 * r - stem) * Math.Pow(share, 3)))
            .Append((Along: seat, Off: r)).Append((Along: seat + 0.09 * r, Off: r)).ToList();
        return [.. half.Select(p => frame.AtValve(p.Along, p.Off)), .. half.AsEnumerable().Reverse().Select(p => frame.AtValve(p.Along, -p.Off))];
    }

    private static double StemRadius(LongFrame frame) => (frame.Survey.Sheet.Port.Fact.Valve?.StemDiameter ?? 0.35 * frame.ValveRadius) / 2;

    private static double Along(Place p, Place on, Place axis) => (p.X - on.X) * axis.X + (p.Y - on.Y) * axis.Y;

    /// <summary>What of a convex shape lies before a line square to an axis (Sutherland and Hodgman 1974).</summary>
    private static List<Place> Before(Place[] shape, Place on, Place axis)
    {
        var kept = new List<Place>();
        for (var i = 0; i < shape.Length; i++)
        {
            var (a, b) = (shape[i], shape[(i + 1) % shape.Length]);
            var (da, db) = (Along(a, on, axis), Along(b, on, axis));
            if (da <= 0) kept.Add(a);
            if (da < 0 != db < 0) kept.Add(new(a.X + (b.X - a.X) * da / (da - db), a.Y + (b.Y - a.Y) * da / (da - db)));
        }

        return kept;
    }

    private static IEnumerable<(Place, Place)> Outside(Place a, Place b, IReadOnlyList<Place> opening)
    {
        const int steps = 400;
        Place P(int i) => new(a.X + (b.X - a.X) * i / steps, a.Y + (b.Y - a.Y) * i / steps);
        var from = -1;
        for (var i = 0; i < steps; i++)
        {
            var (p, q) = (P(i), P(i + 1));
            var open = Hatching.Holds(opening, new((p.X + q.X) / 2 + 1e-3, (p.Y + q.Y) / 2 - 1e-3)) || Hatching.Holds(opening, new((p.X + q.X) / 2 - 1e-3, (p.Y + q.Y) / 2 + 1e-3))
                || Hatching.Holds(opening, new((p.X + q.X) / 2 + 1e-3, (p.Y + q.Y) / 2 + 1e-3)) || Hatching.Holds(opening, new((p.X + q.X) / 2 - 1e-3, (p.Y + q.Y) / 2 - 1e-3));
            if (!open && from < 0) from = i;
            if (from >= 0 && (open || i == steps - 1)) yield return (P(from), P(open ? i : i + 1));
            if (open) from = -1;
        }
    }
}
