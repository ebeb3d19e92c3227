namespace Portwright.Engine.Cylinder;

/// <summary>Friction of the whole engine as a mean effective pressure: A + B pmax + C Sp + D Sp^2.</summary>
/// <remarks>
/// S. K. Chen, P. F. Flynn, Development of a Single Cylinder Compression Ignition Research Engine, SAE 650733 (1965), from memory, with the term in Sp^2 added
/// later. The usual coefficients are common practice, no source, for a petrol engine in good order; one engine differs from another by a third.
/// </remarks>
/// <param name="Constant">A, Pa.</param>
/// <param name="OfPeak">B, no unit.</param>
/// <param name="OfSpeed">C, Pa s/m.</param>
/// <param name="OfSpeedSquared">D, Pa s2/m2.</param>
public sealed record ChenFlynn(double Constant, double OfPeak, double OfSpeed, double OfSpeedSquared)
{
    public static readonly ChenFlynn Usual = new(0.4e5, 0.005, 0.09e5, 0.0009e5);

    /// <summary>Friction mean effective pressure, Pa.</summary>
    /// <param name="peakPressure">Pa, zero or above.</param>
    /// <param name="meanPistonSpeed">m/s, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public double Pressure(double peakPressure, double meanPistonSpeed)
    {
        Require.NotNegative(peakPressure, nameof(peakPressure), "Pa");
        Require.NotNegative(meanPistonSpeed, nameof(meanPistonSpeed), "m/s");
        return Constant + OfPeak * peakPressure + meanPistonSpeed * (OfSpeed + OfSpeedSquared * meanPistonSpeed);
    }
}

/// <summary>Work of a cycle as pressure, torque and power of a four-stroke engine: Heywood (1988), equations 2.14, 2.15, 2.19 and 2.20.</summary>
public static class MeanPressure
{
    /// <summary>Work of one cycle (J) over displacement (m3), Pa.</summary>
    /// <param name="work">J a cycle.</param>
    /// <param name="displacement">m3, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The displacement is not above zero.</exception>
    public static double Of(double work, double displacement) => work / Require.Positive(displacement, nameof(displacement), "m3");

    /// <summary>Torque of a mean effective pressure (Pa), N m; displacement of all cylinders, m3.</summary>
    /// <param name="pressure">Mean effective pressure, Pa.</param>
    /// <param name="displacement">m3, above zero.</param>
    public static double Torque(double pressure, double displacement) => pressure * displacement / (4 * Math.PI);

    /// <summary>Power of a mean effective pressure (Pa), W; displacement of all cylinders, m3.</summary>
    /// <param name="pressure">Mean effective pressure, Pa.</param>
    /// <param name="displacement">m3, above zero.</param>
    /// <param name="revolutionsASecond">1/s.</param>
    public static double Power(double pressure, double displacement, double revolutionsASecond) => pressure * displacement * revolutionsASecond / 2;
}
