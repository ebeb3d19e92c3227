namespace Portwright.Physics.Metering;

/// <summary>Where the pressure beside the plate is tapped.</summary>
public enum OrificeTaps
{
    // Records hold the name and are read by number too: neither is ever changed.
    Corner = 0,

    /// <summary>One pipe diameter before the plate, half a diameter behind it.</summary>
    DAndHalfD = 1,

    /// <summary>25.4 mm before and behind the plate.</summary>
    Flange = 2,
}

/// <summary>Discharge coefficient of an orifice plate as a function of Reynolds number, for one plate in one pipe.</summary>
/// <remarks>
/// The Reader-Harris/Gallagher (1998) equation, ISO 5167-2:2003, 5.3.2.1, equation (4):
/// C = 0.5961 + 0.0261 b^2 - 0.216 b^8 + 0.000521 (1e6 b/Re)^0.7 + (0.0188 + 0.0063 A) b^3.5 (1e6/Re)^0.3
/// + (0.043 + 0.080 exp(-10 L1) - 0.123 exp(-7 L1)) (1 - 0.11 A) b^4/(1 - b^4) - 0.031 (M2 - 0.8 M2^1.1) b^1.3
/// + 0.011 (0.75 - b)(2.8 - D/25.4 mm) for D under 71.12 mm; A = (19000 b/Re)^0.8, M2 = 2 L2/(1 - b).
/// Written as sums of powers of 1e6/Re, so that one exponential serves them all and the slope comes with the value.
/// </remarks>
internal readonly record struct ReaderHarrisGallagher
{
    private static readonly double LogMillion = Math.Log(1e6);

    private readonly double _constant, _power07, _power03, _power11, _power08;

    public ReaderHarrisGallagher(double pipeDiameter, double diameterRatio, OrificeTaps taps)
    {
        var b = diameterRatio;
        var (l1, l2) = taps switch
        {
            OrificeTaps.Corner => (0.0, 0.0),
            OrificeTaps.DAndHalfD => (1.0, 0.47),
            OrificeTaps.Flange => (0.0254 / pipeDiameter, 0.0254 / pipeDiameter),
            _ => throw new ArgumentOutOfRangeException(nameof(taps), taps, "taps must be Corner, DAndHalfD or Flange."),
        };
        var m2 = 2 * l2 / (1 - b);
        var b4 = b * b * b * b;
        var tap = (0.043 + 0.080 * Math.Exp(-10 * l1) - 0.123 * Math.Exp(-7 * l1)) * b4 / (1 - b4);
        var a = Math.Pow(0.019 * b, 0.8); // A = a (1e6/Re)^0.8
        var b35 = Math.Pow(b, 3.5);
        _constant = 0.5961 + 0.0261 * b * b - 0.216 * b4 * b4 + tap - 0.031 * (m2 - 0.8 * Math.Pow(m2, 1.1)) * Math.Pow(b, 1.3)
            + (pipeDiameter < 0.07112 ? 0.011 * (0.75 - b) * (2.8 - pipeDiameter / 0.0254) : 0);
        _power07 = 0.000521 * Math.Pow(b, 0.7);
        _power03 = 0.0188 * b35;
        _power11 = 0.0063 * a * b35;
        _power08 = -0.11 * a * tap;
    }

    /// <summary>C at infinite Reynolds number.</summary>
    public double AtInfiniteReynolds => _constant;

    /// <summary>C and dC/d(ln Re) at ln Re.</summary>
    private (double C, double Slope) At(double logReynolds)
    {
        // One exponential: all powers are whole powers of y = (1e6/Re)^0.1.
        var y = Math.Exp(0.1 * (LogMillion - logReynolds));
        var cube = y * y * y;
        var seventh = cube * cube * y;
        var eighth = seventh * y;
        var t3 = _power03 * cube;
        var t7 = _power07 * seventh;
        var t8 = _power08 * eighth;
        var t11 = _power11 * eighth * cube;
        return (_constant + t3 + t7 + t8 + t11, -(0.3 * t3 + 0.7 * t7 + 0.8 * t8 + 1.1 * t11));
    }

    /// <summary>
    /// The Reynolds number that satisfies Re = <paramref name="reynoldsPerC"/> C(Re), by Newton in ln Re. Re/C rises with Re, so there is one.
    /// </summary>
    public (double C, double Reynolds) Solve(double reynoldsPerC)
    {
        var target = Math.Log(reynoldsPerC);
        var logRe = target - 0.5; // C near 0.61
        // A loop of its own, not Root: the slope comes with the value, and simulated benches ask for every reading many thousand times.
        for (var i = 0; i < 60; i++)
        {
            var (c, slope) = At(logRe);
            var step = (target + Math.Log(c) - logRe) / (1 - slope / c);
            logRe += Math.Clamp(step, -3, 3);
            // Newton squares its error: after a step of 1e-8 what is left is below rounding.
            if (Math.Abs(step) < 1e-8)
            {
                var coefficient = c + slope * step;
                return (coefficient, reynoldsPerC * coefficient);
            }
        }
        throw new InvalidOperationException("The orifice plate's Reynolds number did not converge.");
    }
}
