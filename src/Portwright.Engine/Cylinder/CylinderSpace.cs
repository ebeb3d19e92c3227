using Portwright.Physics.Crank;

namespace Portwright.Engine.Cylinder;

/// <summary>The room over the piston and its walls.</summary>
public sealed record CylinderSpace
{
    /// <param name="bore">m, above zero.</param>
    /// <param name="compressionRatio">Largest over smallest volume, above 1, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public CylinderSpace(double bore, SliderCrank crank, double compressionRatio)
    {
        ArgumentNullException.ThrowIfNull(crank);
        Bore = Require.Positive(bore, nameof(bore), "m");
        if (!(compressionRatio > 1) || double.IsInfinity(compressionRatio)) Require.Refuse(compressionRatio, nameof(compressionRatio), "above 1");
        (Crank, CompressionRatio, PistonArea) = (crank, compressionRatio, Math.PI / 4 * bore * bore);
        Displacement = PistonArea * crank.Travel;
        Clearance = Displacement / (compressionRatio - 1);
        HeadArea = PistonCrownArea = PistonArea;
    }

    /// <summary>m.</summary>
    public double Bore { get; }

    public SliderCrank Crank { get; }

    /// <summary>Ratio of largest to smallest volume.</summary>
    public double CompressionRatio { get; }

    /// <summary>pi/4 bore^2, m2.</summary>
    public double PistonArea { get; }

    /// <summary>Swept by the piston's whole travel, m3.</summary>
    public double Displacement { get; }

    /// <summary>Volume at top dead centre, m3.</summary>
    public double Clearance { get; }

    /// <summary>Wetted area of the chamber in the head, m2; the bore's own area unless measured.</summary>
    public double HeadArea { get; init; }

    /// <summary>Wetted area of the piston's crown, m2; the bore's own area unless measured.</summary>
    public double PistonCrownArea { get; init; }

    /// <summary>m3.</summary>
    /// <param name="angle">rad after the piston's top dead centre.</param>
    public double Volume(double angle) => Clearance + PistonArea * Crank.FromTop(angle);

    /// <summary>Slope of <see cref="Volume"/>, m3/rad.</summary>
    /// <param name="angle">rad after the piston's top dead centre.</param>
    public double VolumeSlope(double angle) => PistonArea * Crank.Slope(angle);

    /// <summary>Wall of the bore laid bare at a volume, m2: the sleeve over the piston; what stands over it at top dead centre belongs to the head.</summary>
    /// <param name="volume">m3, above zero.</param>
    public double SleeveArea(double volume) => 4 / Bore * (volume - Clearance);
}
