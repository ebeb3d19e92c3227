using Portwright.Physics.Valves;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Trials;

/// <summary>What a reading at a lift should come to before it is read.</summary>
/// <param name="Flow">m3/s, restated.</param>
/// <param name="Spread">Standard deviation of its logarithm, the largest change a sound port makes taken in; judgement, no source.</param>
/// <param name="Because">What says so: <c>cut 2 flowed 194.9 cfm here</c>.</param>
public sealed record ExpectedFlow(double Flow, double Spread, Sentence Because)
{
    /// <summary>A lift read before in the same sweep.</summary>
    private const double ReadBefore = 0.02;

    /// <summary>Another curve of like shape, moved by how the nearest lift read so far lies to it; and not moved, at the sweep's first reading.</summary>
    private const double Moved = 0.045, NotMoved = 0.075;

    /// <summary>The sweep's own neighbours alone: between two, and beyond the last.</summary>
    private const double Between = 0.10, Beyond = 0.20;

    /// <summary>Nothing but valve and seat: the usual share of the window that ports pass, and how far ports lie apart in it.</summary>
    private const double OfWindow = 0.58, Windows = 0.30;

    /// <summary>As it is told: to two figures where it is known no better.</summary>
    public Quantity Said => new(Flow, Dimension.VolumeFlow, Figures: Spread >= Between ? 2 : 0);

    /// <summary>The best that is known; null where nothing is.</summary>
    /// <param name="sofar">The sweep without the reading.</param>
    /// <param name="like">Curves of like shape with what they are called, the nearest first: the cut before, then sister ports.</param>
    /// <param name="lift">m.</param>
    public static ExpectedFlow? At(FlowCurve sofar, IEnumerable<(FlowCurve Curve, string Name)> like, ValveData? valve, double lift)
    {
        ArgumentNullException.ThrowIfNull(sofar);
        ArgumentNullException.ThrowIfNull(like);
        if (lift <= 0) return null;
        if (sofar.PointAt(lift) is { Flow.Value: > 0 } here)
        {
            return new(here.Flow.Value, ReadBefore, $"{Quantity.Flow(here.Flow.Value)} was read here before");
        }

        foreach (var (curve, name) in like)
        {
            if (curve.RestatedLike(sofar).At(lift) is not { Value: > 0 } there) continue;
            var nearest = sofar.Flowing.Where(p => curve.Covers(p.Lift)).MinBy(p => Math.Abs(p.Lift - lift));
            var step = nearest is null ? 1 : nearest.Flow.Value / curve.RestatedLike(sofar).At(nearest.Lift)!.Value;
            return new(there.Value * step, nearest is null ? NotMoved : Moved, $"{name} flowed {Quantity.Flow(there.Value)} here");
        }

        return Neighbours(sofar, lift) ?? (valve is null ? null : Window(sofar, valve, lift));
    }

    /// <summary>A straight line in lift through the two nearest lifts, and through the closed valve where one stands alone.</summary>
    private static ExpectedFlow? Neighbours(FlowCurve sofar, double lift)
    {
        var points = sofar.Flowing.ToList();
        if (points.Count == 0) return null;
        var below = points.LastOrDefault(p => p.Lift < lift);
        var above = points.FirstOrDefault(p => p.Lift > lift);
        if (below is not null && above is not null)
        {
            return new(Line(below.Lift, below.Flow.Value, above.Lift, above.Flow.Value, lift), Between, $"its neighbours say so");
        }

        if (points.Count == 1) return null;
        var (a, b) = below is not null ? (points[^2], points[^1]) : (points[0], points[1]);
        // Past the last lift a curve flattens: half of what a straight line says.
        var line = Line(a.Lift, a.Flow.Value, b.Lift, b.Flow.Value, lift);
        var flow = above is null ? (line + b.Flow.Value) / 2 : above.Flow.Value * lift / above.Lift;
        return flow > 0 ? new(flow, Beyond, $"the lifts read so far say so") : null;
    }

    private static ExpectedFlow Window(FlowCurve sofar, ValveData valve, double lift)
    {
        var area = OfWindow * ValveWindow.At(valve.Seat(), lift).Area;
        var flow = area * Physics.TestPiece.RestatedFlow.VolumeFlow(1, sofar.RestatedAt, sofar.Air, sofar.Direction);
        return new(flow, Windows, $"a valve of {Quantity.Length(valve.HeadDiameter)} usually passes that at {Quantity.Lift(lift)}");
    }

    private static double Line(double x1, double y1, double x2, double y2, double x) => y1 + (y2 - y1) * (x - x1) / (x2 - x1);
}
