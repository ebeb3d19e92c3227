namespace Portwright.Physics.TestPiece;

/// <summary>
/// ln(1 + x) and exp(x) - 1 without loss of figures near zero, where a test pressure of an inch of water lies. The framework's own
/// LogP1 and ExpM1 are the plain expressions and lose three figures there.
/// </summary>
internal static class NearZero
{
    /// <summary>ln(1 + x), x above -1, to a few units in the last place.</summary>
    public static double Log1p(double x)
    {
        if (Math.Abs(x) > 0.1) return Math.Log(1 + x);
        // 2 artanh(s), s = x/(2+x): at |x| = 0.1 the first term left out is 2e-19 of the sum.
        var s = x / (2 + x);
        var q = s * s;
        return 2 * s * (1 + q * (1.0 / 3 + q * (1.0 / 5 + q * (1.0 / 7 + q * (1.0 / 9 + q * (1.0 / 11 + q * (1.0 / 13)))))));
    }

    /// <summary>exp(x) - 1, to a few units in the last place.</summary>
    public static double Expm1(double x)
    {
        if (Math.Abs(x) > 0.06) return Math.Exp(x) - 1;
        return x * (1 + x * (1.0 / 2 + x * (1.0 / 6 + x * (1.0 / 24 + x * (1.0 / 120 + x * (1.0 / 720
            + x * (1.0 / 5040 + x * (1.0 / 40320 + x * (1.0 / 362880)))))))));
    }
}
