using Portwright.Physics.Valves;

namespace Portwright.Physics.Targets;

/// <summary>The most effective area a valve passes at a lift, and over its whole event: window and throat at the best coefficient there is.</summary>
/// <remarks>
/// Heywood, Internal Combustion Engine Fundamentals (1988), equations 6.7 to 6.9, times <see cref="NamedLimits.BestOfWindow"/>. Near the lift where throat and window are alike air loses at both, so
/// the smaller of the two is joined smoothly: (window^-n + throat^-n)^(-1/n), n = 8, which lies 8.3 percent under it where they meet and never above it.
/// </remarks>
public static class ValveAtBest
{
    public static readonly TargetRule Rule = new(
        "Wanted flow over lift", TargetBasis.WorkedOut,
        "worked out here of two: how much by Taylor's inlet Mach index, its course over lift by what this valve's window and throat pass at best, Heywood (1988), equations 6.7 to 6.9",
        "The index knows the mean over the event alone: the engine run is what says at which lift more pays.");

    private const double Sharpness = 8;

    /// <summary>At a lift, m2.</summary>
    /// <param name="lift">m, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lift is below zero.</exception>
    public static double At(ValveSeat seat, double lift)
    {
        var window = ValveWindow.AtValve(seat, lift);
        return window > 0
            ? NamedLimits.BestOfWindow.Limits.High * window * Math.Pow(1 + Math.Pow(window / seat.ThroatArea, Sharpness), -1 / Sharpness)
            : 0;
    }

    /// <summary>Mean over a valve's event, m2: the best area of Taylor's inlet Mach index.</summary>
    /// <param name="opens">Crank angle, rad.</param>
    /// <param name="closes">Above <paramref name="opens"/>, rad.</param>
    /// <param name="lift">Lift (m) at a crank angle (rad).</param>
    /// <exception cref="ArgumentOutOfRangeException">The valve closes before it opens.</exception>
    public static double Mean(ValveSeat seat, double opens, double closes, Func<double, double> lift) =>
        TimeArea.MeanArea(TimeArea.AngleArea(opens, closes, lift, l => At(seat, l)), closes - opens);
}
