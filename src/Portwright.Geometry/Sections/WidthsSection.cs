using Portwright.Geometry.Sums;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Sections;

/// <summary>A width measured at a height above the floor, m.</summary>
/// <param name="Height">m, above zero.</param>
/// <param name="Width">m, above zero.</param>
/// <param name="Shift">How far the width's middle lies towards the centre side from X = 0, m.</param>
public readonly record struct WidthAtHeight(double Height, double Width, double Shift = 0)
{
    internal double Wall => Shift - Width / 2;

    internal double Centre => Shift + Width / 2;
}

/// <summary>
/// Widths at heights from the floor up, walls straight between them, floor and roof corners rounded.
/// </summary>
/// <remarks>Straight walls cut off what bulges between two heights: a round end from widths alone comes out 1 to 3 percent small. <see cref="CurvedArea"/> tells how far.</remarks>
/// <param name="Levels">Two or more, heights rising; the first is the floor, the last the roof. Zero width is allowed at floor and roof.</param>
public sealed record WidthsSection(IReadOnlyList<WidthAtHeight> Levels, CornerRadii Corners) : SectionMeasure
{
    public override string Kind => "widths at heights";

    private protected override IReadOnlyList<SectionReading> ShapeReadings =>
    [
        .. Levels.Select((l, i) => SectionReading.Caliper($"width {i + 1}", l.Width)),
        .. Levels.Select((l, i) => SectionReading.Caliper($"height {i + 1}", l.Height)),
        .. Corners.Readings(),
    ];

    private protected override SectionMeasure WithShapeReadings(ReadOnlySpan<double> readings)
    {
        var levels = new WidthAtHeight[Levels.Count];
        for (var i = 0; i < levels.Length; i++) levels[i] = new(readings[levels.Length + i], readings[i], Levels[i].Shift);
        return this with { Levels = levels, Corners = Corners.From(readings[(2 * levels.Length)..]) };
    }

    private protected override SectionProblem? ShapeProblem()
    {
        if (Levels.Count < 2) return new("widths", Levels.Count, "It takes two heights or more, floor and roof first.");
        for (var i = 0; i < Levels.Count; i++)
        {
            var inner = i > 0 && i < Levels.Count - 1;
            var problem = inner ? SectionProblem.NotPositive($"width {i + 1}", Levels[i].Width) : SectionProblem.Negative($"width {i + 1}", Levels[i].Width);
            if (problem is not null) return problem;
            if (!double.IsFinite(Levels[i].Height) || !double.IsFinite(Levels[i].Shift)) return new($"height {i + 1}", Levels[i].Height, "Type it again.");
            if (i > 0 && !(Levels[i].Height > Levels[i - 1].Height)) return new($"height {i + 1}", Levels[i].Height, "Heights must rise from the floor to the roof. Put them in order.");
        }
        if (Levels.Count == 2 && Levels[0].Width + Levels[1].Width == 0) return new("width 1", 0, "Floor or roof must have a width.");
        return Wall.CornerProblem();
    }

    internal override PlaneFigure Figure() => PlaneFigure.Of(Wall.Path());

    private RoundedWall Wall => RoundedWall.Of(Levels, Corners);

    /// <summary>Area with walls bent through each three heights (Simpson's rule), before corners, m2: beside the straight one it shows what lies between the heights.</summary>
    /// <remarks>Three levels or more; with two it is the straight one.</remarks>
    public double CurvedArea => RuleOfSum.Simpson([.. Levels.Select(l => l.Height)], [.. Levels.Select(l => l.Width)]);

    internal override IEnumerable<WorkingLine> ShapeWorking()
    {
        for (var i = 1; i < Levels.Count; i++)
        {
            var (narrow, wide) = Levels[i - 1].Width <= Levels[i].Width ? (Levels[i - 1].Width, Levels[i].Width) : (Levels[i].Width, Levels[i - 1].Width);
            var rise = Levels[i].Height - Levels[i - 1].Height;
            var where = Levels.Count == 2 ? "" : $" {i}";
            if (narrow > 0) yield return new("rectangle" + where, "{0} × {1}", [Quantity.Length(narrow), Quantity.Length(rise)], Quantity.Area(narrow * rise));
            if (wide > narrow)
                yield return new("triangle" + where, "({0} − {1}) × {2} / 2", [Quantity.Length(wide), Quantity.Length(narrow), Quantity.Length(rise)], Quantity.Area((wide - narrow) * rise / 2));
        }
        foreach (var line in Wall.CornerWorking()) yield return line;
    }

    public bool Equals(WidthsSection? other) => other is not null && base.Equals(other) && Corners == other.Corners && Levels.SequenceEqual(other.Levels);

    public override int GetHashCode() => HashCode.Combine(base.GetHashCode(), Corners, Levels.Count);
}
