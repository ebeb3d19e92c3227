namespace Portwright.Physics.Drag;

/// <summary>Drag coefficient of a smooth sphere by Reynolds number. Published correlations differ by 14 to 20 percent up to 1.5e5.</summary>
public static class SphereDrag
{
    /// <summary>
    /// The standard drag curve of R. Clift, J. R. Grace and M. E. Weber, Bubbles, Drops and Particles (1978), table 5.2: one fit a range of
    /// Reynolds number, from creeping flow to past the drag crisis.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
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

    /// <summary>
    /// A. Haider and O. Levenspiel, Powder Technology 58 (1989) 63-70: 24/Re (1 + 0.1806 Re^0.6459) + 0.4251/(1 + 6880.95/Re); Reynolds number to 2.6e5. No unit.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double HaiderLevenspiel(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        return 24 / re * (1 + 0.1806 * Math.Pow(re, 0.6459)) + 0.4251 / (1 + 6880.95 / re);
    }

    /// <summary>By N.-S. Cheng, Powder Technology 189 (2009) 395-398: 24/Re (1 + 0.27 Re)^0.43 + 0.47 (1 - exp(-0.04 Re^0.38)); Reynolds number to 2e5. No unit.</summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double Cheng(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        return 24 / re * Math.Pow(1 + 0.27 * re, 0.43) + 0.47 * (1 - Math.Exp(-0.04 * Math.Pow(re, 0.38)));
    }

    /// <summary>
    /// J. Almedeij, Powder Technology 186 (2008) 218-223: asymptotes of four regimes matched in the tenth power; Reynolds number to 1e6, the drag
    /// crisis included.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double Almedeij(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        static double Tenth(double x) => Math.Pow(x, 10);
        var creeping = Tenth(24 / re) + Tenth(21 * Math.Pow(re, -0.67)) + Tenth(4 * Math.Pow(re, -0.33)) + Tenth(0.4);
        var newton = 1 / (1 / Tenth(0.148 * Math.Pow(re, 0.11)) + 1 / Tenth(0.5));
        var crisis = Tenth(1.57e8 * Math.Pow(re, -1.625));
        var past = 1 / (1 / Tenth(6e-17 * Math.Pow(re, 2.63)) + 1 / Tenth(0.2));
        return Math.Pow(1 / (1 / (creeping + newton) + 1 / crisis) + past, 0.1);
    }

    /// <summary>
    /// M. D. Mikhailov and A. P. Silva Freire, Powder Technology 237 (2013) 432-435: a ratio of quadratics by Shanks' transform; Reynolds number to
    /// 118,300. No unit.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double MikhailovFreire(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        return 3808 * (1_617_933.0 / 2030 + 178_861.0 / 1063 * re + 1219.0 / 1084 * re * re)
            / (681 * re * (77_531.0 / 422 + 13_529.0 / 976 * re - re * re / 71_154));
    }

    /// <summary>
    /// R. Barati, S. A. A. S. Neyshabouri and G. Ahmadi, Powder Technology 257 (2014) 11-19, their formula for the wider range; Reynolds number to
    /// 1e6, the drag crisis included. No unit.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double Barati(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        var square = re * re;
        var wide = Math.Log10(square + 10.7563);
        return 8e-6 * (square / (6530.0 * 6530) + Math.Tanh(re) - 8 * Math.Log10(re))
            - 0.4119 * Math.Exp(-2.08e43 / Math.Pow(re + square, 4))
            - 2.1344 * Math.Exp(-(wide * wide + 9.9867) / re)
            + 0.1357 * Math.Exp(-(square / (1620.0 * 1620) + 10_370) / re)
            - 8.5e-3 * (2 * Math.Log10(Math.Tanh(Math.Tanh(re))) - 2825.7162) / re
            + 2.4795;
    }

    /// <summary>
    /// A. Terfous, A. Hazzab and A. Ghenaim, Powder Technology 239 (2013) 12-20: 2.689 + 21.683/Re + 0.131/Re^2 - 10.616/Re^0.1 + 12.216/Re^0.2;
    /// Reynolds number 0.1 to 5e4. No unit.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double Terfous(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        return 2.689 + 21.683 / re + 0.131 / (re * re) - 10.616 / Math.Pow(re, 0.1) + 12.216 / Math.Pow(re, 0.2);
    }

    /// <summary>R. Clift and W. H. Gauvin (1970): 24/Re (1 + 0.152 Re^0.677) + 0.417/(1 + 5070 Re^-0.94); Reynolds number to 2e5. No unit.</summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double CliftGauvin(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        return 24 / re * (1 + 0.152 * Math.Pow(re, 0.677)) + 0.417 / (1 + 5070 * Math.Pow(re, -0.94));
    }

    /// <summary>
    /// F. A. Morrison, An Introduction to Fluid Mechanics (2013): 24/Re + 2.6 (Re/5)/(1 + (Re/5)^1.52) + 0.411 (Re/2.63e5)^-7.94/(1 + (Re/2.63e5)^-8)
    /// + Re^0.8/461000; Reynolds number to 1e6, the drag crisis included. In the form Barati, Neyshabouri and Ahmadi (2014) quote; a form with
    /// 0.25 (Re/1e6)/(1 + Re/1e6) for the last term is also in use and differs by 0.3 percent under 1e5. No unit.
    /// </summary>
    /// <param name="reynolds">Reynolds number of the sphere, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is outside the range of the formula.</exception>
    public static double Morrison(double reynolds)
    {
        var re = Require.Positive(reynolds, nameof(reynolds), "(no unit)");
        var s = re / 5;
        var c = re / 2.63e5;
        // (c^-7.94)/(1 + c^-8) written so that a small Reynolds number does not overflow.
        return 24 / re + 2.6 * s / (1 + Math.Pow(s, 1.52)) + 0.411 * Math.Pow(c, 0.06) / (Math.Pow(c, 8) + 1) + Math.Pow(re, 0.8) / 461_000;
    }
}
