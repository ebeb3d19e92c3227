namespace Portwright.Physics.Valves;

/// <summary>Lift at the valve from lift at the cam lobe.</summary>
public static class NetLift
{
    /// <summary>lobe lift x rocker ratio - lash, m, never below zero. Common practice, no source; the flex of the valve train is left out.</summary>
    /// <param name="lobeLift">m, zero or above.</param>
    /// <param name="rockerRatio">Valve movement over lobe movement, above zero; 1 for a bucket follower, no unit.</param>
    /// <param name="lash">Clearance at the valve, m; 0 for hydraulic followers.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double From(double lobeLift, double rockerRatio, double lash = 0)
    {
        Require.NotNegative(lobeLift, nameof(lobeLift), "m");
        Require.Positive(rockerRatio, nameof(rockerRatio), "(no unit)");
        Require.NotNegative(lash, nameof(lash), "m");
        return Math.Max(0, lobeLift * rockerRatio - lash);
    }
}
