namespace Portwright.Engine.Gas.Ends;

/// <summary>The length by which an open end sounds longer than it is, m: add it to the pipe.</summary>
/// <remarks>Both hold for waves long against the radius, without flow. A bell or a filter housing is neither; measure, or take the nearer of the two.</remarks>
public static class EndCorrection
{
    /// <summary>A plain pipe in free air: 0.6133 r (H. Levine, J. Schwinger, Phys. Rev. 73 (1948) 383-406, long-wave limit as printed).</summary>
    /// <param name="radius">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not above zero.</exception>
    public static double Plain(double radius) => 0.6133 * Require.Positive(radius, nameof(radius), "m");

    /// <summary>A pipe that ends in a wide wall: 0.82 r (Y. Nomura, I. Yamamura, S. Inawashiro, J. Phys. Soc. Japan 15 (1960) 510-517, from memory; 0.82159 r by F. Silva and others, arXiv:0811.3625 (2008), as coded in the library WWIDesigner).</summary>
    /// <param name="radius">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not above zero.</exception>
    public static double InWall(double radius) => 0.82 * Require.Positive(radius, nameof(radius), "m");
}
