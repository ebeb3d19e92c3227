using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Reduction;

/// <summary>A lift whose flow does not lie where its neighbours put it.</summary>
/// <param name="Lift">m.</param>
/// <param name="Off">Measured less expected flow, m3/s, with the doubt of all the readings it rests on.</param>
/// <param name="Share">Of the expected flow.</param>
public sealed record Kink(double Lift, Estimate Off, double Share);

/// <summary>How steady a flow curve is: kinks, falls and the noises heard.</summary>
/// <param name="Kinks">Lifts off the smooth curve through their neighbours by more than the doubt allows.</param>
/// <param name="Falls">Steps of lift over which the flow really falls.</param>
/// <param name="Sounds">What was heard, by lift (m); steady ones left out.</param>
public sealed record CurveSteadiness(
    IReadOnlyList<Kink> Kinks,
    IReadOnlyList<(double From, double To, Difference Fall)> Falls,
    IReadOnlyList<(double Lift, string Sound)> Sounds)
{
    /// <summary>
    /// A smooth flow curve read at lifts a tenth of an inch apart leaves the cubic through four neighbours by up to this share; found on
    /// valve-window curves of common seats. Our own choice.
    /// </summary>
    public const double SmoothShare = 0.015;

    /// <param name="windows">The valve window at each lift, where valve and seat are known: the flow is then looked at over its window,
    /// whose own corners, above all where the throat takes over, are no fault of the air.</param>
    public static CurveSteadiness Of(FlowCurve curve, IReadOnlyList<WindowUse> windows)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(windows);
        var points = curve.Points.Where(p => p.Lift > 0).ToList();
        double[] openings = [.. points.Select(p => windows.FirstOrDefault(w => LiftGroups.Same(w.Lift, p.Lift))?.Window.Area ?? double.NaN)];
        if (openings.Any(double.IsNaN))
        {
            Array.Fill(openings, 1);
        }

        var kinks = new List<Kink>();
        for (var i = 1; i + 1 < points.Count; i++)
        {
            if (Off(points, openings, i) is { } off && off.Expected > 0
                && Math.Abs(off.Off.Value) > off.Off.Expanded() + SmoothShare * off.Expected)
            {
                kinks.Add(new Kink(points[i].Lift, off.Off, off.Off.Value / off.Expected));
            }
        }

        var falls = points.Zip(points.Skip(1), (a, b) => (a.Lift, b.Lift, Comparison.Compare(a.Flow, b.Flow)))
            .Where(f => f.Item3.Verdict == Verdict.Real && f.Item3.Of.Value < 0)
            .ToList();
        var sounds = points.SelectMany(p => p.Readings.Select(r => (p.Lift, r.Reading.Fact.Sound)))
            .Where(s => s.Sound.Length > 0 && s.Sound != "steady").Distinct().ToList();
        return new CurveSteadiness(kinks, falls, sounds);
    }

    /// <summary>
    /// A fourth difference: the point less the polynomial (Lagrange) through
    /// two neighbours on each side. What all points share, the meter above all, drops out by its name.
    /// </summary>
    private static (Estimate Off, double Expected)? Off(List<LiftPoint> points, double[] openings, int i)
    {
        int[] neighbours = [.. new[] { i - 2, i - 1, i + 1, i + 2 }.Where(n => n >= 0 && n < points.Count)];
        if (neighbours.Length < 4)
        {
            // Two neighbours alone would call every bend of a healthy curve a kink.
            return null;
        }

        var terms = new List<(double, Estimate)> { (1, points[i].Flow) };
        var expected = 0.0;
        foreach (var n in neighbours)
        {
            var weight = openings[i] / openings[n];
            foreach (var m in neighbours.Where(m => m != n))
            {
                weight *= (points[i].Lift - points[m].Lift) / (points[n].Lift - points[m].Lift);
            }

            expected += weight * points[n].Flow.Value;
            terms.Add((-weight, points[n].Flow));
        }

        return (Estimate.Combine([.. terms]), expected);
    }
}
