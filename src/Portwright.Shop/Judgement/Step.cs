using Portwright.Physics.Statistics;

namespace Portwright.Shop.Judgement;

/// <summary>Which way a fault moves what is measured.</summary>
public enum StepWay
{
    Down,
    Up,
    EitherWay,
}

/// <summary>How far a fault moves what is measured, before anything is read: log-normal about a median. Each rule states its own; judgement, no source.</summary>
/// <param name="Median">Above zero, in the unit of what is measured.</param>
/// <param name="Factor">Two in three faults lie within this factor of the median, above 1.</param>
public sealed record Step(double Median, double Factor, StepWay Way)
{
    private const int Count = 15;

    /// <summary>Middles of equally likely classes of the normal distribution.</summary>
    private static readonly double[] Deviates = [.. Enumerable.Range(0, Count).Select(i => Deviate((i + 0.5) / Count))];

    /// <summary>Sizes of equal chance, with their sign.</summary>
    public IReadOnlyList<double> Sizes { get; } =
    [
        .. Deviates.Select(z => Median * Math.Pow(Factor, z)).SelectMany(size => Way switch
        {
            StepWay.Down => [-size],
            StepWay.Up => [size],
            _ => (double[])[-size, size],
        }),
    ];

    /// <summary>Likelihood of an offset with this fault over its likelihood without: above 1 it speaks for the fault.</summary>
    /// <param name="off">Measured less what is usual.</param>
    /// <param name="scatter">Standard deviation of a sound one's offset, the doubt of the measurement in it, above zero.</param>
    /// <param name="degrees">How well the scatter is known: the fewer, the less a far offset proves (Student).</param>
    public double Ratio(double off, double scatter, double degrees) =>
        // Without a scatter there is nothing to weigh by.
        !(scatter > 0) || !double.IsFinite(off) ? 1 : BySize(off, scatter, degrees).Average(s => s.Ratio);

    /// <summary>The same of each size by itself, and what of the offset that size leaves over.</summary>
    /// <param name="off">Finite.</param>
    internal IEnumerable<(double Size, double Left, double Ratio)> BySize(double off, double scatter, double degrees)
    {
        var largest = Sizes.Max(Math.Abs);
        foreach (var size in Sizes)
        {
            // The largest class stands for all that is larger: an offset past it speaks no less for the fault.
            var left = Math.Abs(size) == largest && size * off > 0 && Math.Abs(off) > largest ? 0 : off - size;
            yield return (size, left, DensityRatio(left / scatter, off / scatter, degrees));
        }
    }

    /// <summary>Student's density at t over that at s.</summary>
    private static double DensityRatio(double t, double s, double degrees) => double.IsPositiveInfinity(degrees)
        ? Math.Exp((s * s - t * t) / 2)
        : Math.Pow((1 + s * s / degrees) / (1 + t * t / degrees), (degrees + 1) / 2);

    private static double Deviate(double p) => p switch
    {
        0.5 => 0,
        < 0.5 => -Student.TwoSidedFactor(1 - 2 * p, double.PositiveInfinity),
        _ => Student.TwoSidedFactor(2 * p - 1, double.PositiveInfinity),
    };
}
