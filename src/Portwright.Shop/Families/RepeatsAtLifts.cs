using Portwright.Shop.Judgement;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Families;

/// <summary>How the repeats of one lift scatter, against what bench and lift screw make sound repeats scatter.</summary>
/// <param name="Lift">m.</param>
/// <param name="Scatter">Standard deviation of the repeats over that of sound ones: 1 is as it should be.</param>
/// <param name="Unsteady">Likelihood ratio of air that has two minds at this lift.</param>
/// <param name="Slip">Likelihood ratio of one of the readings being a slip of pen or dial.</param>
/// <param name="Farthest">The reading farthest from the others.</param>
/// <param name="Suspects">Which reading the slip may be, with the mean logarithm of the others of its sweep: the farthest; of two, either.</param>
/// <param name="Mean">Mean logarithm of all the readings of that sweep.</param>
/// <param name="MeanDoubt">Standard deviation of that mean by how far the readings lie apart.</param>
/// <param name="UpAgainstDown">True where the readings taken opening and those taken closing part by more than each scatters.</param>
public sealed record RepeatsAtLift(
    double Lift, double Scatter, double Unsteady, double Slip, ReducedReading Farthest,
    IReadOnlyList<(ReducedReading Reading, double Others)> Suspects, double Mean, double MeanDoubt, bool UpAgainstDown)
{
    /// <summary>Readings of unsteady air scatter so many times as much; judgement.</summary>
    public static readonly Step MoreScatter = new(4, 1.7, StepWay.Up);

    /// <summary>A slip moves a reading by this much, as a logarithm: a digit lost, swapped or doubled; judgement.</summary>
    public static readonly Step SlipOfThePen = new(0.12, 2.5, StepWay.EitherWay);

    /// <summary>A bench card's scatter is itself known to about this factor; judgement.</summary>
    public const double CardWithin = 1.35;

    /// <summary>Degrees of freedom given to a bench card's figure that is taken as certain.</summary>
    private const double CertainDegrees = 20;

    /// <summary>Every lift that was read more than once in a sweep, all sweeps of a cut together.</summary>
    public static IReadOnlyList<RepeatsAtLift> Of(CutFlow flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        return Of(flow.Curve, flow.Sweeps[^1].Bench.Fact.Doubt);
    }

    /// <summary>The same of one sweep.</summary>
    public static IReadOnlyList<RepeatsAtLift> Of(ReducedSweep sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return Of(sweep.Curve, sweep.Bench.Fact.Doubt);
    }

    private static IReadOnlyList<RepeatsAtLift> Of(FlowCurve curve, BenchDoubt doubt)
    {
        var (card, cardDegrees) = (Math.Max(1e-5, doubt.RepeatScatter), Math.Min(CertainDegrees, doubt.RepeatDegrees ?? CertainDegrees));
        var lifts = curve.Flowing.Select(Groups).Where(l => l.Degrees > 0).ToList();
        return [.. lifts.Select(l =>
        {
            // The others' own scatter joins the card's; one that is wild itself counts as no more than three times what is allowed.
            var (squares, degrees) = (cardDegrees * card * card, cardDegrees);
            foreach (var o in lifts.Where(o => o.Point != l.Point))
            {
                var allowed = card * card + o.Setting * o.Setting;
                squares += Math.Min(o.Squares, 9 * o.Degrees * allowed) * (card * card / allowed);
                degrees += o.Degrees;
            }

            var variance = squares / degrees + l.Setting * l.Setting;
            var f = l.Squares / l.Degrees / variance;
            double[] sound = [1 / CardWithin, 1, CardWithin];
            var unsteady = MoreScatter.Sizes.Average(s => Relative(f, s, l.Degrees, degrees)) / sound.Average(s => Relative(f, s, l.Degrees, degrees));
            var (farthest, off, group) = FarthestOf(l.Groups);
            var (others, logs) = (group.Count - 1, group.Select(LogOf).ToList());
            var mean = logs.Average();
            // What the other readings of the lift scatter is no slip's doing: it makes the far one less far.
            var rest = Math.Max(0, l.Squares - off * off * others / (others + 1));
            var still = (squares + rest) / (degrees + l.Degrees - 1) + l.Setting * l.Setting;
            var slip = SlipOfThePen.Ratio(off, CardWithin * Math.Sqrt(still * (1 + 1.0 / others)), degrees + l.Degrees - 1);
            return new RepeatsAtLift(
                l.Point.Lift, Math.Sqrt(f), unsteady, slip, farthest,
                [.. (others == 1 ? group : [farthest]).Select(r => (r, (group.Count * mean - LogOf(r)) / others))],
                mean, Math.Sqrt(logs.Sum(y => (y - mean) * (y - mean)) / (others * group.Count)), PartsByWay(l.Groups));
        })];
    }

    /// <summary>Density of a ratio of variances where the true one is the square of <paramref name="scatter"/>, over that where it is 1 (Fisher's distribution).</summary>
    private static double Relative(double f, double scatter, double upper, double lower) =>
        Math.Pow(scatter, -upper) * Math.Pow((1 + upper * f / lower) / (1 + upper * f / (lower * scatter * scatter)), (upper + lower) / 2);

    private static (LiftPoint Point, List<List<ReducedReading>> Groups, double Squares, double Degrees, double Setting) Groups(LiftPoint point)
    {
        // Two sweeps differ by their set-ups; a scatter is that of one sweep's repeats.
        List<List<ReducedReading>> groups = [.. point.Readings.Where(r => r.EffectiveArea.Value > 0).GroupBy(r => r.Reading.Fact.Sweep).Where(g => g.Count() > 1).Select(g => g.ToList())];
        var squares = groups.Sum(g =>
        {
            var mean = g.Average(r => Math.Log(r.EffectiveArea.Value));
            return g.Sum(r => Math.Pow(Math.Log(r.EffectiveArea.Value) - mean, 2));
        });
        // Setting the lift anew for each repeat moves it: by how much the card says, what that costs the slope of the curve. A digit of the scale does the same.
        return (point, groups, squares, groups.Sum(g => g.Count - 1), LiftDoubt.OfOneReading(point));
    }

    private static double LogOf(ReducedReading reading) => Math.Log(reading.EffectiveArea.Value);

    private static (ReducedReading Reading, double Off, List<ReducedReading> Group) FarthestOf(List<List<ReducedReading>> groups) => groups
        .SelectMany(g => g.Select(r => (Reading: r, Off: LogOf(r) - g.Where(o => o != r).Average(LogOf), Group: g)))
        .MaxBy(r => Math.Abs(r.Off));

    /// <summary>Opening and closing passes each keep to themselves: all readings of one lie above all of the other.</summary>
    private static bool PartsByWay(List<List<ReducedReading>> groups)
    {
        foreach (var group in groups)
        {
            var order = group.OrderBy(r => r.Reading.Sequence).Select(r => r.EffectiveArea.Value).ToList();
            var (first, second) = (order.Where((_, i) => i % 2 == 0).ToList(), order.Where((_, i) => i % 2 == 1).ToList());
            if (group.Count < 4 || !(first.Min() > second.Max() || first.Max() < second.Min()))
            {
                return false;
            }
        }

        return groups.Count > 0;
    }
}
