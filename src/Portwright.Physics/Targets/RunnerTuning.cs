namespace Portwright.Physics.Targets;

/// <summary>Runner lengths and engine speeds that go together, by three estimates that need not agree.</summary>
/// <remarks>
/// Lengths are acoustic: valve to open end along the centreline, the end correction added by the caller. All take waves as small and the air as one temperature;
/// real waves in an intake are a tenth of an atmosphere and more. They start a search, the engine run ends it.
/// </remarks>
public static class RunnerTuning
{
    public static readonly TargetRule QuarterWaveRule = new(
        "Runner's quarter wave", TargetBasis.Published, "pipe open at one end: Kinsler, Frey, Coppens and Sanders, Fundamentals of Acoustics (4th ed. 2000), ch. 10; end correction Levine and Schwinger, Phys. Rev. 73 (1948) 383",
        "The note of the runner with the valve shut. Which of its beats helps depends on the cam.");

    public static readonly TargetRule EchoRule = NamedLimits.EchoAngle.Rule;

    public static readonly TargetRule VesselRule = NamedLimits.VesselFactor.Rule;

    /// <summary>Note over engine speed in the vessel rule. From memory, and so is half stroke: of Engelman's paper the first page was opened, which takes cylinder and pipe with the valve open as such a vessel. No unit.</summary>
    public const double EngelmanFactor = 2.1;

    /// <summary>First note of a runner shut at the valve, Hz: a/(4 L).</summary>
    /// <param name="acousticLength">m, above zero.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double QuarterWave(double acousticLength, double speedOfSound) =>
        Sound(speedOfSound) / (4 * Length(acousticLength));

    /// <summary>Swings of the shut runner in one engine cycle: its note over the cycles a second, n/2. No unit.</summary>
    /// <param name="acousticLength">m, above zero, end corrections included.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double SwingsACycle(double acousticLength, double speedOfSound, double revolutionsASecond) =>
        QuarterWave(acousticLength, speedOfSound) / (Require.Positive(revolutionsASecond, nameof(revolutionsASecond), "1/s") / 2);

    /// <summary>Length whose echo takes a given crank angle to return, m: a angle/(4 pi n).</summary>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <param name="echoAngle">rad of crank, above zero; pi/2 is usual.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double EchoLength(double revolutionsASecond, double speedOfSound, double echoAngle = Math.PI / 2) =>
        Sound(speedOfSound) * Require.Positive(echoAngle, nameof(echoAngle), "rad") / (4 * Math.PI * Require.Positive(revolutionsASecond, nameof(revolutionsASecond), "1/s"));

    /// <summary>Engine speed at which the echo of a runner takes a given crank angle, 1/s.</summary>
    /// <param name="acousticLength">m, above zero, end corrections included.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <param name="echoAngle">rad of crank, above zero; pi/2 is usual.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double EchoRevolutionsASecond(double acousticLength, double speedOfSound, double echoAngle = Math.PI / 2) =>
        Sound(speedOfSound) * Require.Positive(echoAngle, nameof(echoAngle), "rad") / (4 * Math.PI * Length(acousticLength));

    /// <summary>Engine speed at which runner and cylinder ring together, 1/s.</summary>
    /// <param name="displacement">Of one cylinder, m3, above zero.</param>
    /// <param name="compressionRatio">Above 1, no unit.</param>
    /// <param name="runnerArea">m2, above zero.</param>
    /// <param name="acousticLength">m, above zero, end corrections included.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double VesselRevolutionsASecond(double displacement, double compressionRatio, double runnerArea, double acousticLength, double speedOfSound) =>
        VesselResonance.Lumped(HalfStrokeVolume(displacement, compressionRatio), runnerArea, acousticLength, speedOfSound) / EngelmanFactor;

    /// <summary>Runner length at which runner and cylinder ring together at an engine speed, m, end correction included.</summary>
    /// <param name="displacement">m3, above zero.</param>
    /// <param name="compressionRatio">Ratio of largest to smallest volume, above 1.</param>
    /// <param name="runnerArea">m2, above zero.</param>
    /// <param name="revolutionsASecond">1/s, zero or above.</param>
    /// <param name="speedOfSound">m/s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double VesselLength(double displacement, double compressionRatio, double runnerArea, double revolutionsASecond, double speedOfSound)
    {
        var wave = Sound(speedOfSound) / (2 * Math.PI * EngelmanFactor * Require.Positive(revolutionsASecond, nameof(revolutionsASecond), "1/s"));
        return wave * wave * Require.Positive(runnerArea, nameof(runnerArea), "m2") / HalfStrokeVolume(displacement, compressionRatio);
    }

    /// <summary>Vd (r + 1)/(2 (r - 1)), m3: the cylinder with the piston half way, chamber included.</summary>
    private static double HalfStrokeVolume(double displacement, double compressionRatio)
    {
        if (!(compressionRatio > 1) || double.IsInfinity(compressionRatio)) Require.Refuse(compressionRatio, nameof(compressionRatio), "above 1");
        return Require.Positive(displacement, nameof(displacement), "m3") * (compressionRatio + 1) / (2 * (compressionRatio - 1));
    }

    private static double Length(double value) => Require.Positive(value, "acousticLength", "m");

    private static double Sound(double value) => Require.Positive(value, "speedOfSound", "m/s");
}
