using MathNet.Numerics;

namespace Portwright.Physics.Statistics;

/// <summary>The F distribution of a ratio of two variances, and chi-squared.</summary>
public static class Fisher
{
    /// <summary>Probability that F is exceeded, accurate in the far tail.</summary>
    /// <param name="f">0 or more, no unit.</param>
    /// <param name="df1">Degrees of freedom of the numerator, above 0.</param>
    /// <param name="df2">Degrees of freedom of the denominator, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double UpperTail(double f, double df1, double df2)
    {
        Check(f, df1, df2);
        return double.IsPositiveInfinity(f) ? 0 : SpecialFunctions.BetaRegularized(df2 / 2, df1 / 2, df2 / (df2 + df1 * f));
    }

    /// <summary>The value exceeded with probability <paramref name="tail"/>, no unit.</summary>
    /// <param name="tail">Above 0 and below 1, no unit.</param>
    /// <param name="df1">Degrees of freedom of the numerator, above 0.</param>
    /// <param name="df2">Degrees of freedom of the denominator, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double UpperPoint(double tail, double df1, double df2)
    {
        CheckTail(tail);
        return Solve(f => UpperTail(f, df1, df2), tail);
    }

    /// <summary>Probability that chi-squared with the degrees of freedom given is exceeded.</summary>
    /// <param name="chiSquared">No unit, 0 or more.</param>
    /// <param name="df">Degrees of freedom, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double ChiSquaredUpperTail(double chiSquared, double df)
    {
        Check(chiSquared, df, 1);
        return SpecialFunctions.GammaUpperRegularized(df / 2, chiSquared / 2);
    }

    /// <summary>The value of chi-squared exceeded with probability <paramref name="tail"/>, no unit.</summary>
    /// <param name="tail">Probability above 0 and below 1.</param>
    /// <param name="df">Degrees of freedom, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double ChiSquaredUpperPoint(double tail, double df)
    {
        CheckTail(tail);
        return Solve(x => ChiSquaredUpperTail(x, df), tail);
    }

    /// <summary>Root over the logarithm of the value, where both tails are smooth.</summary>
    private static double Solve(Func<double, double> upperTail, double tail)
    {
        double Off(double logarithm) => Math.Log(Math.Max(upperTail(Math.Exp(logarithm)), double.Epsilon) / tail);
        double low = -1, high = 1;
        while (Off(low) < 0) low *= 2;
        while (Off(high) > 0) high *= 2;
        return Math.Exp(Root.Between(Off, low, high));
    }

    private static void Check(double value, double df1, double df2)
    {
        if (!(value >= 0)) throw new ArgumentOutOfRangeException(nameof(value), value, "A ratio of variances is 0 or more.");
        if (!(df1 > 0)) throw new ArgumentOutOfRangeException(nameof(df1), df1, "Degrees of freedom must be above 0.");
        if (!(df2 > 0)) throw new ArgumentOutOfRangeException(nameof(df2), df2, "Degrees of freedom must be above 0.");
    }

    private static void CheckTail(double tail)
    {
        if (!(tail > 0 && tail < 1))
            throw new ArgumentOutOfRangeException(nameof(tail), tail, "A tail probability must be above 0 and below 1.");
    }
}
