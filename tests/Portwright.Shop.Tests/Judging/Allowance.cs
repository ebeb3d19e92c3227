namespace Portwright.Shop.Tests.Judging;

/// <summary>Fair allowance for chance: how many of n may fail where so large a share may.</summary>
internal static class Allowance
{
    /// <summary>The least count that a true share of <paramref name="share"/> passes one time in a thousand, by the binomial sum.</summary>
    public static int Of(int count, double share)
    {
        var (term, sum, k) = (Math.Pow(1 - share, count), 0.0, 0);
        while (true)
        {
            sum += term;
            if (sum >= 0.999) return k;
            term *= share / (1 - share) * (count - k) / (k + 1);
            k++;
        }
    }
}
