using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Portwright.Engine.Gas.Ends;

/// <summary>What a plain open end in free air does with sound of one pitch, without flow: how much comes back, and from how far out.</summary>
/// <param name="Reflection">Size of the pressure that comes back over what went out; it comes back with its sign turned.</param>
/// <param name="CorrectionOverRadius">Length by which the end sounds longer, over its radius.</param>
/// <remarks>
/// H. Levine, J. Schwinger, On the radiation of sound from an unflanged circular pipe, Phys. Rev. 73 (1948) 383-406. The pipes' own open end sends all back from the long-wave
/// distance (<see cref="EndCorrection.Plain"/>): this tells what that leaves out. Their printed 0.6133 is 0.6127 by their own integral.
/// </remarks>
public readonly record struct PlainEndSound(double Reflection, double CorrectionOverRadius)
{
    // From here on three terms of the series for I1 K1 are exact to rounding.
    private const double Far = 60;

    /// <summary>1 - Reflection^2: share of the sound's power that leaves.</summary>
    public double Radiated => 1 - Reflection * Reflection;

    /// <param name="waveNumber">ka = 2 pi f r/c, zero or above and up to 3.83, below which of the round waves only the plane one runs in the pipe.</param>
    /// <exception cref="ArgumentOutOfRangeException">ka is outside that range.</exception>
    public static PlainEndSound At(double waveNumber)
    {
        var ka = Require.Between(waveNumber, 0, 3.83, nameof(waveNumber), "(no unit)");
        double lost = 0, nearer = 0;
        if (ka > 0)
        {
            lost = Within(ka, Phase);
            nearer = Within(ka, Modulus) / ka;
        }

        return new(Math.Exp(-2 / Math.PI * lost), (nearer + Beyond(ka)) / Math.PI);
    }

    /// <summary>ka times the integral of term(x)/(x sqrt(ka^2 - x^2)) up to ka: x = ka sin a takes the root out, a = pi/2 w^2 the edge off the logarithm.</summary>
    private static double Within(double ka, Func<double, double> term) => Integral(
        w =>
        {
            var sine = Math.Sin(Math.PI / 2 * w * w);
            return Math.PI * w * term(ka * sine) / sine;
        },
        0,
        1);

    /// <summary>atan(-J1/Y1), rising from zero.</summary>
    private static double Phase(double x)
    {
        var phase = Math.Atan2(SpecialFunctions.BesselJ(1, x), -SpecialFunctions.BesselY(1, x));
        return phase < 0 ? phase + Math.PI : phase;
    }

    private static double Modulus(double x)
    {
        double j = SpecialFunctions.BesselJ(1, x), y = SpecialFunctions.BesselY(1, x);
        return Math.Log(Math.PI * j * Math.Sqrt(j * j + y * y));
    }

    /// <summary>Integral of ln(1/(2 I1 K1))/(x sqrt(x^2 + ka^2)) from zero to infinity.</summary>
    private static double Beyond(double ka)
    {
        double Term(double x)
        {
            // For small x the product is 1 but for rounding: its series instead.
            var log = x < 3e-4
                ? x * x / 2 * (Math.Log(x / 2) + Constants.EulerMascheroni - 0.25)
                : Math.Log(2 * SpecialFunctions.BesselI(1, x) * SpecialFunctions.BesselK(1, x));
            return -log / (x * Math.Sqrt(x * x + ka * ka));
        }

        // In ln x, in pieces, from where nothing is left to where 2 I1 K1 is its series for large x, 1/x (1 - 3/(8 x^2) - 45/(128 x^4)).
        double sum = 0, from = Math.Log(1e-11), to = Math.Log(Far);
        const int pieces = 24;
        for (var i = 0; i < pieces; i++)
        {
            var low = from + (to - from) * i / pieces;
            sum += Integral(t => Math.Exp(t) * Term(Math.Exp(t)), low, low + (to - from) / pieces);
        }

        // Then over u = 1/x down to zero; u = v^4 takes the edge off the logarithm.
        return sum + Integral(
            v =>
            {
                var u = v * v * v * v;
                return -4 * v * v * v * Math.Log(u * (1 - 0.375 * u * u * (1 + 0.9375 * u * u))) / Math.Sqrt(1 + ka * ka * u * u);
            },
            0,
            Math.Pow(Far, -0.25));
    }

    private static double Integral(Func<double, double> term, double from, double to) => GaussLegendreRule.Integrate(term, from, to, 64);
}
