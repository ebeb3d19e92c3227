using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>
/// The section of a port at a station as it was measured. X = 0 is the middle of the floor and Y = 0 the floor, except where points were traced.
/// </summary>
/// <remarks>
/// Area, wall length and moments are closed forms of each kind; <see cref="Outline"/> replaces arcs by chords that keep the area. Ask
/// <see cref="Problem"/> first: with a problem the other members mean nothing.
/// </remarks>
public abstract record SectionMeasure
{
    internal const double WidestChord = Math.PI / 48;

    /// <summary>Angle between the measured plane's normal and the centreline, rad, above -pi/2 and below pi/2.</summary>
    public double Tilt { get; init; }

    /// <summary>The axis the plane is tilted about, rad from X in the plane. Zero: the plane leans in the long view, so heights shrink.</summary>
    public double TiltAxis { get; init; }

    /// <summary>What stands in the section: stem, guide boss.</summary>
    public IReadOnlyList<Island> Islands { get; init; } = [];

    /// <summary>"rectangle", "oval": what the page calls this kind.</summary>
    public abstract string Kind { get; }

    /// <summary>The readings of the shape itself in the order they are typed.</summary>
    private protected abstract IReadOnlyList<SectionReading> ShapeReadings { get; }

    /// <summary>The same kind with other readings, in the order of <see cref="ShapeReadings"/>.</summary>
    private protected abstract SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings);

    private protected abstract SectionProblem? ShapeProblem();

    internal abstract PlaneFigure Figure();

    /// <summary>Hand working of the shape, without tilt and islands; lines that add less lines that take off make its area.</summary>
    internal abstract IEnumerable<WorkingLine> ShapeWorking();

    /// <summary>Null when the readings make a section; else what is wrong.</summary>
    public SectionProblem? Problem()
    {
        if (ShapeProblem() is { } problem) return problem;
        if (!(Math.Abs(Tilt) < Math.PI / 2)) return new("tilt", Tilt, "The measured plane must lean less than 90 degrees from square to the centreline.");
        var own = Figure();
        foreach (var island in Islands)
        {
            if (island.Shape.ShapeProblem() is { } inner) return inner with { Field = $"{island.Name}: {inner.Field}" };
            if (!(island.WettedLength >= 0)) return new($"{island.Name}: edge against the wall", island.AgainstWall, "It is longer than the edge itself. Measure it again.");
        }
        var standing = Islands.Sum(i => i.Moments.Area);
        return standing < own.Moments.Area ? null : new("islands", standing, "They take more area than the section has. Check their sizes.");
    }

    /// <summary>The port's wall line in the measured plane, islands left out. Its area is that of the closed form.</summary>
    public Outline Outline() => Figure().Chords(WidestChord);

    /// <summary>The wall line seen along the centreline: the measured one shortened across the tilt axis by cos(tilt).</summary>
    public Outline SquaredOutline() => Squared(Outline());

    /// <summary>The edges of what stands in it, seen along the centreline, each with its name.</summary>
    public IEnumerable<(string Name, Outline Outline)> SquaredIslands() => Islands.Select(i => (i.Name, Squared(i.Outline())));

    /// <summary>Open area in the measured plane, m2.</summary>
    public double MeasuredArea => Figure().Moments.Area - Islands.Sum(i => i.Moments.Area);

    /// <summary>Open area square to the centreline, m2: measured area x cos(tilt).</summary>
    public double Area => MeasuredArea * Math.Cos(Tilt);

    /// <summary>Wetted wall length square to the centreline, m, islands included.</summary>
    /// <remarks>Closed form without tilt. With tilt the wall is summed over chords of 1/1440 turn, short by less than 1e-5 of its length; islands are taken to shrink as the wall does.</remarks>
    public double Perimeter
    {
        get
        {
            var own = Figure();
            var wetted = own.Perimeter + Islands.Sum(i => i.WettedLength);
            if (Tilt == 0) return wetted;
            var fine = own.Chords(Math.PI / 720);
            return wetted * Squared(fine).Perimeter / fine.Perimeter;
        }
    }

    /// <summary>4 area / wetted wall length, m, square to the centreline.</summary>
    public double HydraulicDiameter => 4 * Area / Perimeter;

    /// <summary>Area, centroid and second moments of the opening in the measured plane, islands taken off.</summary>
    public AreaMoments Moments
    {
        get
        {
            var own = Figure().Moments;
            if (Islands.Count == 0) return own;
            var sum = own.About(own.Centroid);
            foreach (var island in Islands) sum -= island.Moments.About(own.Centroid);
            return sum.AboutCentroid(own.Centroid);
        }
    }

    /// <summary>All readings the area rests on, islands last.</summary>
    public IReadOnlyList<SectionReading> Readings =>
        [.. ShapeReadings, .. Islands.SelectMany(i => i.Shape.ShapeReadings.Select(r => r with { Name = $"{i.Name}: {r.Name}" }))];

    /// <summary>Change of <see cref="Area"/> with each of <see cref="Readings"/>, m2 per m.</summary>
    /// <remarks>Central differences of the closed-form area over 1e-4 of the section's size: exact for a polynomial of second degree, within 1e-7 else.</remarks>
    public IReadOnlyList<double> Sensitivities
    {
        get
        {
            var square = Math.Cos(Tilt);
            return [.. Slopes(this).Select(s => s * square), .. Islands.SelectMany(i => Slopes(i.Shape).Select(s => -s * square))];
        }
    }

    /// <summary>Hand working of the area as a porter would do it on paper; the last line is the total.</summary>
    public IReadOnlyList<WorkingLine> Working()
    {
        var lines = ShapeWorking().ToList();
        foreach (var island in Islands)
        {
            lines.AddRange(island.Shape.ShapeWorking().Select(line => line with
            {
                Label = $"{island.Name}: {line.Label}",
                Effect = line.Effect switch { Effect.Adds => Effect.TakesOff, Effect.TakesOff => Effect.Adds, _ => line.Effect },
            }));
        }
        if (Tilt != 0)
        {
            lines.Add(new("area in the measured plane", "the sum so far", [], Quantity.Area(MeasuredArea), Effect.Aside));
            lines.Add(new("area square to the centreline", "{0} × cos {1}", [Quantity.Area(MeasuredArea), Quantity.Angle(Tilt)], Quantity.Area(Area), Effect.Total));
        }
        else
        {
            lines.Add(new("area", "the sum so far", [], Quantity.Area(Area), Effect.Total));
        }

        return lines;
    }

    private Outline Squared(Outline measured) =>
        Tilt == 0 ? measured : measured.Turned(-TiltAxis).Scaled(1, Math.Cos(Tilt)).Turned(TiltAxis);

    private static IEnumerable<double> Slopes(SectionMeasure shape)
    {
        var readings = shape.ShapeReadings;
        var step = 1e-4 * Math.Sqrt(shape.Figure().Moments.Area);
        var values = readings.Select(r => r.Value).ToArray();
        for (var i = 0; i < values.Length; i++)
        {
            var at = values[i];
            values[i] = at + step;
            var above = shape.WithShapeReadings(values).Figure().Moments.Area;
            values[i] = at - step;
            var below = shape.WithShapeReadings(values).Figure().Moments.Area;
            values[i] = at;
            yield return (above - below) / (2 * step);
        }
    }
}
