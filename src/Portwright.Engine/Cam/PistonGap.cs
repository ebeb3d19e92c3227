using Portwright.Physics.Crank;

namespace Portwright.Engine.Cam;

/// <summary>How close a valve comes to its piston: a caution, never a release.</summary>
/// <param name="Gap">Least distance along the cylinder, m; below zero they would meet.</param>
/// <param name="Crank">Where, rad after top dead centre of gas exchange.</param>
/// <remarks>
/// By geometry alone. The valve's head as a disc, its edge against a tilted pocket, stretch of the rod, crush of the gasket, float of the valve and the timing chain's slack are not in it: only clay on the
/// piston, or a checking spring and a dial, show the real gap.
/// </remarks>
public readonly record struct PistonGap(double Gap, double Crank)
{
    /// <summary>0.080 in, m: least gap many take for an intake. Common practice, no source.</summary>
    public const double UsualIntake = 2.032e-3;

    /// <summary>0.100 in, m: for an exhaust, whose valve grows and is chased by the piston. Common practice, no source.</summary>
    public const double UsualExhaust = 2.54e-3;

    /// <summary>The least gap over half a turn to either side of top dead centre of gas exchange.</summary>
    /// <param name="clearanceAtTop">Measured: travel along the cylinder until the shut valve would touch the piston at its top dead centre, m, zero or above.</param>
    /// <param name="valveAngle">Of the stem from the cylinder's axis, 0 to below pi/2 rad.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static PistonGap Least(ValveLift lift, SliderCrank crank, double clearanceAtTop, double valveAngle)
    {
        ArgumentNullException.ThrowIfNull(lift);
        ArgumentNullException.ThrowIfNull(crank);
        Require.NotNegative(clearanceAtTop, nameof(clearanceAtTop), "m");
        if (!(valveAngle >= 0 && valveAngle < Math.PI / 2)) Require.Refuse(valveAngle, nameof(valveAngle), "0 or above and below pi/2 rad");
        var along = Math.Cos(valveAngle);
        double Gap(double at) => clearanceAtTop + crank.FromTop(at) - lift.At(at) * along;

        const double step = Math.PI / 360;
        var nearest = 0;
        for (var i = -360; i <= 360; i++)
            if (Gap(i * step) < Gap(nearest * step)) nearest = i;
        double low = (nearest - 1) * step, high = (nearest + 1) * step;
        for (var i = 0; i < 60; i++)
        {
            double a = low + (high - low) / 3, b = high - (high - low) / 3;
            if (Gap(a) < Gap(b)) high = b;
            else low = a;
        }

        var least = (low + high) / 2;
        return new(Gap(least), least);
    }
}
