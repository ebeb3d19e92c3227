namespace Portwright.Physics.Drag;

/// <summary>Drag coefficient of a smooth sphere by Reynolds number. Published correlations differ by 14 to 20 percent up to 1.5e5.</summary>
public static class SphereDrag
{
    /// <summary>
    /// The standard drag curve of R. Clift, J. R. Grace and M. E. Weber, Bubbles, Drops and Particles (1978), table 5.2: one fit a range of
    /// Reynolds number, from creeping flow to past the drag crisis.
    /// </summary>
    public static double StandardCurve(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        var w = Math.Log10(re);
        return re switch
        {
            < 0.01 => 24 / re + 3.0 / 16,
            < 20 => 24 / re * (1 + 0.1315 * Math.Pow(re, 0.82 - 0.05 * w)),
            < 260 => 24 / re * (1 + 0.1935 * Math.Pow(re, 0.6305)),
            < 1500 => Math.Pow(10, 1.6435 - 1.1242 * w + 0.1558 * w * w),
            < 1.2e4 => Math.Pow(10, -2.4571 + 2.5558 * w - 0.9295 * w * w + 0.1049 * w * w * w),
            < 4.4e4 => Math.Pow(10, -1.9181 + 0.6370 * w - 0.0636 * w * w),
            < 3.38e5 => Math.Pow(10, -4.3390 + 1.5809 * w - 0.1546 * w * w),
            < 4e5 => 29.78 - 5.3 * w,
            < 1e6 => 0.1 * w - 0.49,
            _ => 0.19 - 8e4 / re,
        };
    }

    /// <summary>R. Clift and W. H. Gauvin (1970): 24/Re (1 + 0.152 Re^0.677) + 0.417/(1 + 5070 Re^-0.94); Reynolds number to 2e5.</summary>
    public static double CliftGauvin(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        return 24 / re * (1 + 0.152 * Math.Pow(re, 0.677)) + 0.417 / (1 + 5070 * Math.Pow(re, -0.94));
    }

    /// <summary>
    /// F. A. Morrison, An Introduction to Fluid Mechanics (2013): 24/Re + 2.6 (Re/5)/(1 + (Re/5)^1.52) + 0.411 (Re/2.63e5)^-7.94/(1 + (Re/2.63e5)^-8)
    /// + Re^0.8/461000; Reynolds number to 1e6, the drag crisis included. In the form Barati, Neyshabouri and Ahmadi (2014) quote; a form with
    /// 0.25 (Re/1e6)/(1 + Re/1e6) for the last term is also in use and differs by 0.3 percent under 1e5.
    /// </summary>
    public static double Morrison(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        var s = re / 5;
        var c = re / 2.63e5;
        // (c^-7.94)/(1 + c^-8) written so that a small Reynolds number does not overflow.
        return 24 / re + 2.6 * s / (1 + Math.Pow(s, 1.52)) + 0.411 * Math.Pow(c, 0.06) / (Math.Pow(c, 8) + 1) + Math.Pow(re, 0.8) / 461_000;
    }
}
