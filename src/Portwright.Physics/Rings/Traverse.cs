using System.Collections.Immutable;

namespace Portwright.Physics.Rings;

/// <summary>Where to put a probe so that the plain mean of its readings is the mean speed of the section.</summary>
/// <remarks>
/// The arithmetical methods of ISO 3966 (clause 11 of the 2020 edition), derived here rather than read from its tables; log-linear after
/// F. A. L. Winternitz and C. F. Fischl, Water Power 9 (1957) 225-234 (citation from memory). Some public guides print the log-linear positions under the
/// name log-Tchebycheff. Made for developed pipe flow: in a port they are good places for a probe, and the closure tells how good.
/// </remarks>
public static class Traverse
{
    /// <summary>
    /// Log-linear positions of a round section: distance from the wall over the radius, nearest the wall first. In each pair of equal-area rings
    /// v = A + B ln y + C y has its mean at two points; with an odd count the outermost ring has one point, for ln y alone. No unit.
    /// </summary>
    /// <param name="pointsARadius">1 to 20.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 20 points.</exception>
    public static ImmutableArray<double> LogLinear(int pointsARadius)
    {
        var n = Count(pointsARadius, 1, nameof(pointsARadius));
        var positions = new List<double>(n);
        for (var outer = n; outer > 0;)
        {
            if ((outer & 1) == 1)
            {
                positions.Add(Math.Exp(MeanLog((outer - 1.0) / n, (double)outer / n)));
                outer--;
                continue;
            }
            double from = (outer - 2.0) / n, to = (double)outer / n;
            var half = MeanDistance(from, to);
            var root = Math.Sqrt(half * half - Math.Exp(2 * MeanLog(from, to)));
            positions.Add(half - root);
            positions.Add(half + root);
            outer -= 2;
        }
        return [.. positions];
    }

    /// <summary>
    /// Log-Tchebycheff positions of a round section: distance from the wall over the radius, nearest the wall first. The outermost of n equal rings has
    /// its point where ln y has its ring mean, the others are Tchebycheff's points of equal weight in the square of the radius. No unit.
    /// </summary>
    /// <param name="pointsARadius">3 to 6.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 3 to 6 points.</exception>
    public static ImmutableArray<double> LogTchebycheff(int pointsARadius)
    {
        var n = pointsARadius;
        var inner = (n - 1.0) / n;
        var wall = Math.Exp(MeanLog(inner, 1));
        return [wall, .. EqualWeightPoints(n - 1, nameof(pointsARadius)).Reverse().Select(t => 1 - Math.Sqrt(inner * (1 + t) / 2))];
    }

    /// <summary>
    /// Log-Tchebycheff positions across one side of a rectangle: distance from one wall over the side, from wall to wall; a grid of lines both ways. The two
    /// outer elements have their points at 1/e of their width. No unit.
    /// </summary>
    /// <param name="points">4 to 7.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 4 to 7 points.</exception>
    public static ImmutableArray<double> RectangleSide(int points)
    {
        double n = points, wall = Math.Exp(-1) / n, half = 0.5 - 1 / n;
        return [wall, .. EqualWeightPoints(points - 2, nameof(points)).Select(t => 0.5 + half * t), 1 - wall];
    }

    /// <summary>Middles of equal-area rings: distance from the wall over the radius, nearest the wall first. The plain rule, up to a percent high. No unit.</summary>
    /// <param name="pointsARadius">1 to 20.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 20 points.</exception>
    public static ImmutableArray<double> EqualArea(int pointsARadius)
    {
        var n = Count(pointsARadius, 1, nameof(pointsARadius));
        return [.. Enumerable.Range(0, n).Select(i => 1 - Math.Sqrt((n - i - 0.5) / n))];
    }

    /// <summary>Plain mean of the readings at such positions, in their unit, in the unit of the readings.</summary>
    /// <param name="speeds">Any one unit, at least 1.</param>
    public static double Mean(ReadOnlySpan<double> speeds) => Uncertainty.RepeatScatter.Mean(speeds);

    /// <summary>Volume flow through a section, m3/s: its area times the plain mean of the readings.</summary>
    /// <param name="area">m2, above zero.</param>
    /// <param name="speeds">Readings at such positions, m/s, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The area is not above zero.</exception>
    /// <exception cref="ArgumentException">There is no reading.</exception>
    public static double Flow(double area, ReadOnlySpan<double> speeds) => Require.Positive(area, nameof(area), "m2") * Mean(speeds);

    /// <summary>Mean of ln y over a ring between two shares of the area from the axis; y is the distance from the wall over the radius.</summary>
    private static double MeanLog(double from, double to) => (LogPrimitive(Math.Sqrt(to)) - LogPrimitive(Math.Sqrt(from))) / (to - from);

    /// <summary>Integral of 2 r ln(1 - r).</summary>
    private static double LogPrimitive(double r) => (r < 1 ? (r * r - 1) * Math.Log(1 - r) : 0) - r * r / 2 - r;

    private static double MeanDistance(double from, double to) => 1 - 2.0 / 3 * (Math.Pow(to, 1.5) - Math.Pow(from, 1.5)) / (to - from);

    /// <summary>
    /// Points in -1 to 1, ascending, whose plain mean is exact for polynomials as high as can be (P. L. Tchebycheff 1874); closed forms from the
    /// power sums they must have. Given here for 2 to 5 points.
    /// </summary>
    private static double[] EqualWeightPoints(int count, string name)
    {
        double[] squares = count switch
        {
            2 => [1.0 / 3],
            3 => [0.5],
            4 => Quadratic(2.0 / 3, 1.0 / 45),
            5 => Quadratic(5.0 / 6, 7.0 / 72),
            _ => Refused(count, name),
        };
        var positive = squares.Select(Math.Sqrt).Order().ToArray();
        return [.. positive.Reverse().Select(t => -t), .. (count & 1) == 1 ? new[] { 0.0 } : [], .. positive];
    }

    /// <summary>Roots of s^2 - sum s + product.</summary>
    private static double[] Quadratic(double sum, double product)
    {
        var root = Math.Sqrt(sum * sum / 4 - product);
        return [sum / 2 - root, sum / 2 + root];
    }

    private static double[] Refused(int count, string name) =>
        throw new ArgumentOutOfRangeException(name, count, "A log-Tchebycheff traverse takes 3 to 6 points a radius, or 4 to 7 across a side.");

    private static int Count(int n, int least, string name) => n >= least && n <= 20
        ? n
        : throw new ArgumentOutOfRangeException(name, n, $"A traverse takes {least} to 20 points a radius.");
}
