namespace Portwright.Geometry.Paths;

/// <summary>
/// A closed wall line of straight pieces and arcs, counter-clockwise, with closed-form area, length and moments: the chord polygon by Green's
/// theorem plus the segment over each arc.
/// </summary>
internal sealed class WallPath(IReadOnlyList<WallPiece> pieces)
{
    public AreaMoments Moments()
    {
        var origin = pieces[0].From;
        var sum = AreaIntegrals.OfPolygon([.. pieces.Select(p => p.From)], origin);
        foreach (var arc in pieces.Where(p => p.Sweep != 0))
            sum += AreaIntegrals.OfSegment(arc.Centre - origin, arc.Radius, arc.Start + arc.Sweep / 2, arc.Sweep);
        return sum.AboutCentroid(origin);
    }

    public double Length() => pieces.Sum(p => p.Length);

    /// <summary>The wall line in chords, at most <paramref name="widest"/> rad each, with the area of the arcs kept exactly (see <see cref="Corners"/>).</summary>
    public Outline Chords(double widest = Math.PI / 48)
    {
        var points = new List<PlanePoint>();
        foreach (var piece in pieces) points.AddRange(Corners(piece, widest));
        // Pieces of no length, as where two half circles meet, leave points that rounding may put in the wrong order. Rounding moves a point by
        // some 1e-16 of the wall; points left out cost the area as much as they lie apart, so that no more are.
        var near = pieces.Sum(p => p.Length) * 1e-13;
        var kept = new List<PlanePoint>();
        foreach (var p in points)
            if (kept.Count == 0 || kept[^1].To(p) > near) kept.Add(p);
        while (kept.Count > 3 && kept[^1].To(kept[0]) <= near) kept.RemoveAt(kept.Count - 1);
        return new(kept);
    }

    /// <summary>
    /// First point and inner corners of one piece. Chords with all corners on the arc would lose area (0.03 percent at 96 chords a turn), so the inner
    /// corners stand out by the factor q for which two end triangles and n - 2 inner ones have the sector's area:
    /// q sin d + (n - 2)/2 q^2 sin d = n d / 2, d the angle of one chord.
    /// </summary>
    private static IEnumerable<PlanePoint> Corners(WallPiece piece, double widest)
    {
        yield return piece.From;
        if (piece.Sweep == 0) yield break;
        var n = Math.Max(2, (int)Math.Ceiling(Math.Abs(piece.Sweep) / widest - 1e-9));
        var d = piece.Sweep / n;
        var stretch = d / Math.Sin(d);
        var q = n == 2 ? stretch : (Math.Sqrt(1 + (n - 2) * n * stretch) - 1) / (n - 2);
        for (var i = 1; i < n; i++) yield return WallPiece.On(piece.Centre, piece.Radius * q, piece.Start + i * d);
    }

    /// <summary>A polygon whose corners are rounded, each with its own radius (zero leaves it sharp); counter-clockwise.</summary>
    public static WallPath Rounded(IReadOnlyList<PlanePoint> corners, IReadOnlyList<double> radii)
    {
        var pieces = new List<WallPiece>();
        var count = corners.Count;
        for (var i = 0; i < count; i++)
        {
            var turn = Turn(corners, i);
            var heading = corners[(i + 1) % count] - corners[i];
            var after = Math.Atan2(heading.Y, heading.X);
            var start = corners[i];
            if (radii[i] > 0 && turn != 0)
            {
                var side = Math.Sign(turn);
                var setback = SetBack(radii[i], turn);
                start = corners[i] + new PlanePoint(Math.Cos(after), Math.Sin(after)) * setback;
                var centre = start + new PlanePoint(-Math.Sin(after), Math.Cos(after)) * (side * radii[i]);
                pieces.Add(WallPiece.Arc(centre, radii[i], after - turn - side * Math.PI / 2, turn));
            }
            var next = (i + 1) % count;
            var end = corners[next] - new PlanePoint(Math.Cos(after), Math.Sin(after)) * SetBack(radii[next], Turn(corners, next));
            pieces.Add(WallPiece.Straight(start, end));
        }
        return new(pieces);
    }

    /// <summary>How much the wall turns at a corner, rad, above zero where the opening bulges.</summary>
    internal static double Turn(IReadOnlyList<PlanePoint> corners, int i)
    {
        var before = corners[i] - corners[(i + corners.Count - 1) % corners.Count];
        var after = corners[(i + 1) % corners.Count] - corners[i];
        return Math.Atan2(PlanePoint.Cross(before, after), PlanePoint.Dot(before, after));
    }

    /// <summary>Length of straight wall a rounded corner takes on each side: r tan(turn/2), m.</summary>
    internal static double SetBack(double radius, double turn) => radius * Math.Abs(Math.Tan(turn / 2));
}
