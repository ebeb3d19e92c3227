using Portwright.Shop.Judgement;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Families;

/// <summary>Where neighbours and sisters put one lift of a sweep.</summary>
/// <param name="Off">Measured less where they put it, logarithm, what may be the port's own at an end not taken off.</param>
/// <param name="Own">What may be the port's own.</param>
/// <param name="Scatter">Standard deviation of a sound lift's offset.</param>
/// <param name="Degrees">How well that is known.</param>
/// <param name="Mends">How well the lifts beside it lie in line once it is left out, 0 to 1: beside an innocent one the slip stays where it is.</param>
/// <param name="Sisters">True where sisters put it, false where its own curve does.</param>
public sealed record LiftInLine(double Off, double Own, double Scatter, double Degrees, double Mends, bool Sisters)
{
    /// <summary>The lowest or highest lift of a port may leave its sisters by so much of its own: a seat, a fall. Judgement.</summary>
    private const double OwnEnd = 0.10;

    /// <summary>What is left of the offset.</summary>
    public double Left => LeftOf(Off);

    /// <summary>Likelihood ratio of a slip that moved the whole lift.</summary>
    public double Slip => RepeatsAtLift.SlipOfThePen.Ratio(Left, Scatter, Degrees) * Mends;

    /// <summary>How likely a lift is whose logarithm is another by so much, over one that lies where it is put.</summary>
    /// <param name="moved">Logarithm.</param>
    /// <param name="besides">Standard deviation it has besides.</param>
    public double Likely(double moved, double besides = 0)
    {
        var scatter = Math.Sqrt(Scatter * Scatter + besides * besides);
        return Scatter / scatter * Density.StudentOverItsMiddle(LeftOf(Off + moved), scatter, Degrees);
    }

    /// <summary>Of one lift of a sweep; null where nothing tells.</summary>
    /// <param name="points">Of the sweep, by lift.</param>
    /// <param name="repeatScatter">By the bench card, a share.</param>
    public static LiftInLine? Of(IReadOnlyList<LiftPoint> points, int at, FlowAgainstSisters? against, double repeatScatter)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (against is { Sisters: > 1 } && against.PlaceOf(points[at].Lift) is >= 0 and var k)
        {
            // Against its neighbours' own offsets: a slip stands out from both alike. A band that is the port's own, or a corner where it begins, is no slip, and an end
            // may leave by a port's own low or high lift.
            var shape = against.Shape;
            var (off, own, weight) = k == 0 ? (shape[0] - 2 * shape[1] + shape[2], OwnEnd, 6.0)
                : k == shape.Count - 1 ? (shape[k] - 2 * shape[k - 1] + shape[k - 2], OwnEnd, 6.0)
                : (Nearer(shape[k] - shape[k - 1], shape[k] - shape[k + 1]), 0, 2.0);
            return new LiftInLine(off, own, Math.Sqrt(weight) * against.ShapeFamily[k].Deviation, against.ShapeFamily[k].Degrees, 1, true);
        }

        if (CurveNeighbours.Off(points, at) is not { } alone)
        {
            return null;
        }

        var doubt = LiftDoubt.Of(points[at], repeatScatter);
        return new LiftInLine(
            alone, 0, Math.Sqrt(CurveNeighbours.Usual * CurveNeighbours.Usual + 1.5 * doubt * doubt), CurveNeighbours.Degrees, MendedBy(points, at), false);
    }

    private double LeftOf(double off) => Math.CopySign(Math.Max(0, Math.Abs(off) - Own), off);

    /// <summary>The smaller of two offsets that point the same way; nothing where they do not.</summary>
    private static double Nearer(double one, double other) => one * other <= 0 ? 0 : Math.CopySign(Math.Min(Math.Abs(one), Math.Abs(other)), one);

    private static double MendedBy(IReadOnlyList<LiftPoint> points, int at) => Enumerable.Range(at - 1, 3)
        .Where(i => i != at && i >= 0 && i < points.Count)
        .Select(i => CurveNeighbours.Off(points, i, at)).OfType<double>()
        .Aggregate(1.0, (mends, off) => mends * Density.StudentOverItsMiddle(off, 4 * CurveNeighbours.Usual, CurveNeighbours.Degrees));
}
