using Portwright.Physics.Uncertainty;
using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Families;

/// <summary>A port's flow over lift against its sisters': how it lies as a whole, and where its shape is its own. Logarithms of effective area throughout.</summary>
/// <param name="Lifts">Lifts (m) at which the port was read and every sister can be told, rising.</param>
/// <param name="Own">Logarithm of the port's effective area at each.</param>
/// <param name="Shape">What is left at each lift after the sisters' middle and the port's own level are taken off.</param>
/// <param name="Level">The port's level over its sisters' middle.</param>
/// <param name="LevelDoubt">What of it the port's own set-up and day may have made.</param>
/// <param name="LevelFamily">What levels its sisters show.</param>
/// <param name="ShapeFamily">What a sound port's shape may be off at each lift.</param>
/// <param name="Middle">Middle of the sisters' logarithms at each lift.</param>
/// <param name="SistersOver">What each sister's logarithms lie over the middle.</param>
/// <param name="Sisters">Curves compared with.</param>
public sealed record FlowAgainstSisters(
    IReadOnlyList<double> Lifts,
    IReadOnlyList<double> Own,
    IReadOnlyList<double> Shape,
    double Level,
    double LevelDoubt,
    Family LevelFamily,
    IReadOnlyList<Family> ShapeFamily,
    IReadOnlyList<double> Middle,
    IReadOnlyList<IReadOnlyList<double>> SistersOver,
    int Sisters)
{
    /// <summary>Usual standard deviation of sound sisters' level: cast ports and their seats, each in a set-up of its own; common practice, no source.</summary>
    public const double UsualLevel = 0.008;

    /// <summary>How many sisters that figure weighs as much as.</summary>
    public const double UsualLevelDegrees = 5;

    /// <summary>Usual standard deviation of a sound sister's shape at one lift; common practice, no source.</summary>
    public const double UsualShape = 0.006;

    /// <summary>How many sisters that figure weighs as much as.</summary>
    public const double UsualShapeDegrees = 8;

    /// <summary>Lifts compared before a level or a shape is spoken of; our own choice.</summary>
    public const int FewestLifts = 3;

    /// <summary>What the port's own logarithms lie over the sisters' middle.</summary>
    public IReadOnlyList<double> Over => [.. Own.Zip(Middle, (a, m) => a - m)];

    /// <summary>Place of a lift (m) among those compared; below zero where it is none of them.</summary>
    public int PlaceOf(double lift) => Lifts.ToList().FindIndex(l => LiftGroups.Same(l, lift));

    /// <summary>All sweeps of the cut together; null before a sweep, without a sister swept alike, or with too few lifts in common.</summary>
    public static FlowAgainstSisters? Of(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Sheet.Flow is not { } flow ? null : port.Remembered(() => new Known(Of(flow.Curve, Card(flow.Sweeps[^1]), SweptLike(port, flow)))).Value;
    }

    /// <summary>One sweep of the cut against its sisters and the port's other sweeps: a slip of the pen is in one sweep, not in the port.</summary>
    public static FlowAgainstSisters? OfSweep(PortSurvey port, ReducedSweep sweep)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(sweep);
        return port.Sheet.Flow is not { } flow ? null
            : flow.Sweeps.Count == 1 ? Of(port)
            : Of(sweep.Curve, Card(sweep), [.. SweptLike(port, flow), .. flow.Sweeps.Where(s => s != sweep).Select(s => s.Curve)]);
    }

    private static FlowCurve[] SweptLike(PortSurvey port, CutFlow flow) =>
        [.. port.Sisters.Select(s => s.Sheet.Flow).OfType<CutFlow>().Where(f => f.Fitting == flow.Fitting).Select(f => f.Curve)];

    private static double Card(ReducedSweep sweep) => sweep.Bench.Fact.Doubt.RepeatScatter;

    private static FlowAgainstSisters? Of(FlowCurve curve, double repeatScatter, FlowCurve[] alike)
    {
        alike = [.. alike.Where(c => c.Points.Count >= FewestLifts)];
        LiftPoint[] points = [.. curve.Flowing];
        // A sister swept too short would leave nothing to compare: the lifts most sisters cover are kept, and the sisters that cover them.
        points = [.. points.Where(p => 2 * alike.Count(s => s.BareAreaAt(p.Lift) > 0) >= alike.Length)];
        alike = [.. alike.Where(s => points.All(p => s.BareAreaAt(p.Lift) > 0))];
        if (alike.Length == 0 || points.Length < FewestLifts)
        {
            return null;
        }

        double[] own = [.. points.Select(p => Math.Log(p.EffectiveArea.Value))];
        double[] shapeDoubts = [.. points.Select(p => LiftDoubt.Of(p, repeatScatter))];
        double[][] sisters = [.. alike.Select(s => points.Select(p => Math.Log(s.BareAreaAt(p.Lift)!.Value)).ToArray())];
        double[] middle = [.. points.Select((_, k) => Family.Median([.. sisters.Select(s => s[k])]))];
        double[] over = [.. own.Zip(middle, (a, m) => a - m)];
        double[][] sistersOver = [.. sisters.Select(s => s.Zip(middle, (a, m) => a - m).ToArray())];
        var level = Family.Median(over);
        double[] levels = [.. sistersOver.Select(s => Family.Median(s))];
        double[] shape = [.. over.Select(o => o - level)];
        var levelDoubt = OwnDoubt(points, alike);
        return new FlowAgainstSisters(
            [.. points.Select(p => p.Lift)],
            own,
            shape,
            level,
            levelDoubt,
            Family.Of(levels, UsualLevel, UsualLevelDegrees).AtLeast(levelDoubt),
            [.. points.Select((_, k) => Family.Of(
                [.. sistersOver.Select((s, j) => s[k] - levels[j])],
                Math.Sqrt(UsualShape * UsualShape + shapeDoubts[k] * shapeDoubts[k]),
                UsualShapeDegrees))],
            middle,
            sistersOver,
            alike.Length);
    }

    /// <summary>What the port's level owes to its own set-up, and to its day where sisters were swept on others, as a share.</summary>
    private static double OwnDoubt(LiftPoint[] points, FlowCurve[] sisters)
    {
        HashSet<string>[] days = [.. sisters.Select(s => s.Flowing.SelectMany(p => p.EffectiveArea.Contributions).Where(c => c.Kind == ContributionKind.Drift).Select(c => c.Source).ToHashSet())];
        double Own(Contribution c) => c.Kind switch
        {
            ContributionKind.SetUp => 1,
            ContributionKind.Drift => days.Count(d => !d.Contains(c.Source)) / (double)days.Length,
            _ => 0,
        };
        return points.Average(p => Math.Sqrt(p.EffectiveArea.Contributions.Sum(c => Own(c) * c.Amount * c.Amount)) / p.EffectiveArea.Value);
    }

    /// <summary>A null remembered as well.</summary>
    private sealed record Known(FlowAgainstSisters? Value);
}
