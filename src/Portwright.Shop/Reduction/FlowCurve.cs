using Portwright.Physics.Air;
using Portwright.Physics.Curves;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>One reading, reduced.</summary>
/// <param name="Lift">m.</param>
/// <param name="TestPressure">Pa, as it was at this reading.</param>
/// <param name="EffectiveArea">m2, leak taken off, without the doubt of set-up and repeat, which belong to the sweep.</param>
/// <param name="MassFlow">kg/s through the meter, leak included.</param>
/// <param name="Remarks">Limits of a standard that were left, in sentences.</param>
public sealed record ReducedReading(
    Kept<FlowReading> Reading,
    double Lift,
    double TestPressure,
    Estimate EffectiveArea,
    double MassFlow,
    IReadOnlyList<string> Remarks);

/// <summary>All readings at one lift, as one result.</summary>
/// <param name="Lift">m.</param>
/// <param name="EffectiveArea">m2, with every doubt of the bench.</param>
/// <param name="Flow">m3/s of standard air at the restated pressure.</param>
/// <param name="PlainRuleFlow">m3/s: the same readings carried to the restated pressure by the plain square-root rule.</param>
public sealed record LiftPoint(
    double Lift,
    IReadOnlyList<ReducedReading> Readings,
    Estimate EffectiveArea,
    Estimate Flow,
    double PlainRuleFlow)
{
    /// <summary>The point with its flow restated from the effective area.</summary>
    /// <param name="restatedAt">Test pressure, Pa.</param>
    public static LiftPoint Of(
        double lift, IReadOnlyList<ReducedReading> readings, Estimate area, FlowDirection direction, double restatedAt, StandardAir air)
    {
        var plain = readings.Average(r => RestatedFlow.SquareRootRule(
            RestatedFlow.VolumeFlow(r.EffectiveArea.Value, r.TestPressure, air, direction), r.TestPressure, restatedAt));
        return new LiftPoint(lift, readings, area, area.Scale(RestatedFlow.VolumeFlow(1, restatedAt, air, direction)), plain);
    }
}

/// <summary>Flow over lift: the points as measured and the monotone cubic between them.</summary>
public sealed class FlowCurve
{
    private readonly CurveOfEstimates? _flow;

    /// <summary>Points in any order; one a lift.</summary>
    public FlowCurve(IEnumerable<LiftPoint> points, FlowDirection direction, double restatedAt, StandardAir air)
    {
        Points = [.. points.OrderBy(p => p.Lift)];
        Direction = direction;
        RestatedAt = restatedAt;
        Air = air;
        _flow = Points.Count >= 2 ? new CurveOfEstimates([.. Points.Select(p => p.Lift)], [.. Points.Select(p => p.Flow)]) : null;
    }

    public IReadOnlyList<LiftPoint> Points { get; }

    public FlowDirection Direction { get; }

    /// <summary>Test pressure the flow is restated at, Pa.</summary>
    public double RestatedAt { get; }

    /// <summary>The standard air the flow is stated in.</summary>
    public StandardAir Air { get; }

    /// <summary>The points at which the valve is open and air flows: those that have a logarithm.</summary>
    public IEnumerable<LiftPoint> Flowing => Points.Where(p => p.Lift > 0 && p.EffectiveArea.Value > 0);

    public bool IsEmpty => Points.Count == 0;

    public double LowestLift => Points.Count == 0 ? double.NaN : Points[0].Lift;

    public double HighestLift => Points.Count == 0 ? double.NaN : Points[^1].Lift;

    /// <summary>The same readings restated at the pressure and in the air of another curve, so that the two can be compared.</summary>
    public FlowCurve RestatedLike(FlowCurve other) => RestatedAt == other.RestatedAt && Air == other.Air
        ? this
        : new FlowCurve(
            Points.Select(p => LiftPoint.Of(p.Lift, p.Readings, p.EffectiveArea, Direction, other.RestatedAt, other.Air)),
            Direction, other.RestatedAt, other.Air);

    /// <summary>The measured point at a lift (m); null where the lift was not set.</summary>
    public LiftPoint? PointAt(double lift) => Points.FirstOrDefault(p => LiftGroups.Same(p.Lift, lift));

    /// <summary>Mean flow of some readings by themselves, m3/s; null where none of them counts.</summary>
    public double? FlowOf(IEnumerable<Kept<FlowReading>> readings)
    {
        HashSet<Guid> wanted = [.. readings.Select(r => r.Id)];
        List<double> areas = [.. Points.SelectMany(p => p.Readings).Where(r => wanted.Contains(r.Reading.Id)).Select(r => r.EffectiveArea.Value)];
        return areas.Count == 0 ? null : areas.Average() * RestatedFlow.VolumeFlow(1, RestatedAt, Air, Direction);
    }

    /// <summary>True where the lift (m) lies inside the tested range.</summary>
    public bool Covers(double lift) => Points.Count > 0 && lift >= LowestLift - 1e-9 && lift <= HighestLift + 1e-9;

    /// <summary>Flow at a lift (m) inside the tested range; null outside it, where nothing was measured.</summary>
    public Estimate? At(double lift) =>
        !Covers(lift) ? null
        : Points.FirstOrDefault(p => Math.Abs(p.Lift - lift) < 1e-7) is { } measured ? measured.Flow
        : _flow?.At(lift).Estimate;

    /// <summary>Effective area (m2) at a lift (m) inside the tested range; null outside it.</summary>
    public Estimate? AreaAt(double lift) => At(lift)?.Scale(1 / RestatedFlow.VolumeFlow(1, RestatedAt, Air, Direction));

    /// <summary>Effective area (m2) at a lift (m) inside the tested range, without its doubt; null outside it.</summary>
    public double? BareAreaAt(double lift) => !Covers(lift) ? null
        : PointAt(lift) is { } measured ? measured.EffectiveArea.Value
        : _flow?.Values.At(lift).Value / RestatedFlow.VolumeFlow(1, RestatedAt, Air, Direction);

    /// <summary>Mean flow over a lift range (m) inside the tested range, m3/s; null where the range was not tested whole.</summary>
    public Estimate? MeanOver(double from, double to) =>
        // A lift typed in inches and one in millimetres differ in the last figure of the double: the curve itself ends at the one it was given.
        _flow is not null && to > from && Covers(from) && Covers(to) ? _flow.MeanOver(Math.Max(from, LowestLift), Math.Min(to, HighestLift)) : null;

    /// <summary>The drawn line: <paramref name="steps"/> points from the lowest to the highest lift, (lift m, flow m3/s).</summary>
    public IReadOnlyList<(double Lift, double Flow)> Line(int steps = 120)
    {
        if (_flow is null)
        {
            return [.. Points.Select(p => (p.Lift, p.Flow.Value))];
        }

        var line = new List<(double, double)>(steps + 1 + Points.Count);
        for (var i = 0; i <= steps; i++)
        {
            // The last step may round to a hair past the highest lift, where the curve gives nothing.
            var lift = Math.Min(HighestLift, LowestLift + (HighestLift - LowestLift) * i / steps);
            line.Add((lift, _flow.Values.At(lift).Value));
        }

        return line;
    }
}
