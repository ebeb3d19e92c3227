namespace Portwright.Physics.Drag;

/// <summary>What walls do to the drag of a sphere: continuity and published relations of the diameter ratio, sphere over tube.</summary>
/// <remarks>
/// None of them was made for a ball held in a port. Each is given as published with its range; <see cref="Confinement"/> takes what they have
/// in common and keeps their spread as doubt. A section that is not round enters with the tube of equal area.
/// </remarks>
public static class Blockage
{
    /// <summary>
    /// (1/pi) times the integral of t^2 K1(t)/I1(t) from 0 to infinity: the doublet on the axis of a round tube (C.N.H. Lock, ARC R&amp;M 1275
    /// (1929), as used by A. D. Young and H. B. Squire, ARC R&amp;M 1984 (1945)). No unit.
    /// </summary>
    public const double Tau = 0.7968241722986522;

    /// <summary>Factor of Maskell's wake blockage: a little over 5/2 in axisymmetric flow, a little under 1 in two-dimensional flow, near 5/2 for aspect ratios of 1 to 10 (E. C. Maskell, ARC R&amp;M 3400 (1963), summary). No unit.</summary>
    public const double MaskellFactor = 2.5;

    /// <summary>Share by which the air at a small sphere on the axis is faster than the stream: tau (d/D)^3, no wake (solid blockage).</summary>
    /// <param name="diameterRatio">0 to 0.5: first order in its cube. No unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double SolidSpeedIncrease(double diameterRatio)
    {
        var b = Ratio(diameterRatio);
        return Tau * b * b * b;
    }

    /// <summary>Speed in the gap beside the sphere over the speed before it: 1/(1 - (d/D)^2), continuity. No unit.</summary>
    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double GapSpeed(double diameterRatio)
    {
        var b = Ratio(diameterRatio);
        return 1 / (1 - b * b);
    }

    /// <summary>
    /// Drag coefficient in the closed section over that in free air: 1 + 5/2 CD S/C with the confined coefficient (Maskell). The factor hangs on
    /// the pressure in the wake, so for a sphere it gives the size of the effect only.
    /// </summary>
    /// <param name="confinedDrag">Drag coefficient as it is in the section, zero or above.</param>
    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MaskellDragRatio(double confinedDrag, double diameterRatio)
    {
        var b = Ratio(diameterRatio);
        return 1 + MaskellFactor * Require.NotNegative(confinedDrag, nameof(confinedDrag), "(no unit)") * b * b;
    }

    /// <summary>
    /// Maskell's relation the other way round: what a free coefficient becomes in the section, the root of CDc = CD (1 + 5/2 CDc S/C). No unit.
    /// </summary>
    /// <param name="freeDrag">Drag coefficient in free air, zero or above.</param>
    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The section is so small that the relation has no root: 5/2 CD S/C is 1 or above.</exception>
    public static double MaskellConfinedDrag(double freeDrag, double diameterRatio)
    {
        var b = Ratio(diameterRatio);
        var share = MaskellFactor * Require.NotNegative(freeDrag, nameof(freeDrag), "(no unit)") * b * b;
        if (share >= 1) Require.Refuse(diameterRatio, nameof(diameterRatio), "small enough that 5/2 CD (d/D)^2 stays under 1");
        return freeDrag / (1 - share);
    }

    /// <summary>
    /// H. S. Munroe (1888): a sphere falls in a tube at 1 - (d/D)^1.5 of its free speed, drag coefficient constant; as collected by Clift, Grace and
    /// Weber (1978), chapter 9 (from memory). For the coefficient at equal speed take it to the power -2. No unit.
    /// </summary>
    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double MunroeSpeedFactor(double diameterRatio) => 1 - Math.Pow(Ratio(diameterRatio), 1.5);

    /// <summary>I. Newton, Principia, book II: (1 - (d/D)^2) (1 - (d/D)^2/2)^0.5, used as <see cref="MunroeSpeedFactor"/> (from memory). No unit.</summary>
    /// <param name="diameterRatio">Ratio of sphere to tube by diameter, 0 to below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double NewtonSpeedFactor(double diameterRatio)
    {
        var s = Ratio(diameterRatio) * diameterRatio;
        return (1 - s) * Math.Sqrt(1 - s / 2);
    }

    private static double Ratio(double diameterRatio) => diameterRatio >= 0 && diameterRatio < 1
        ? diameterRatio
        : throw new ArgumentOutOfRangeException(nameof(diameterRatio), diameterRatio, "diameterRatio must be 0 or above and below 1.");
}
