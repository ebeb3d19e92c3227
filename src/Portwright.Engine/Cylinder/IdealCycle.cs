namespace Portwright.Engine.Cylinder;

/// <summary>The cycle a cylinder tends to when all heat comes at once at top dead centre and none is lost.</summary>
public static class IdealCycle
{
    /// <summary>1 - r^(1-k): J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equation 5.31.</summary>
    /// <param name="compressionRatio">r, above 1.</param>
    /// <param name="heatCapacityRatio">k, above 1 and below 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Efficiency(double compressionRatio, double heatCapacityRatio)
    {
        if (!(compressionRatio > 1)) Require.Refuse(compressionRatio, nameof(compressionRatio), "above 1");
        if (!(heatCapacityRatio > 1 && heatCapacityRatio < 2)) Require.Refuse(heatCapacityRatio, nameof(heatCapacityRatio), "above 1 and below 2");
        return 1 - Math.Pow(compressionRatio, 1 - heatCapacityRatio);
    }
}
