namespace Portwright.Physics.Rings;

/// <summary>How speed falls to nothing at the wall: a power law of the distance to it, up to the deepest place of the section.</summary>
/// <remarks>
/// speed = core (y/R)^m, y the distance to the nearest wall, R its largest value in the section; m = 1/7: turbulent pipe flow (H. Schlichting,
/// Boundary-Layer Theory, chapter XX: 1/6 at a Reynolds number of 4e3 to 1/10 at 3e6). In a pipe the core speed is one figure and the law is
/// the whole profile. Air that has just been speeded up has a thinner layer, air before a corner a thicker one: the doubt of the exponent
/// covers 1/12 to 1/5 as the limits of a rectangle.
/// </remarks>
/// <param name="Exponent">m, 0.02 to 0.5.</param>
/// <param name="ExponentUncertainty">Standard, no unit.</param>
/// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
public sealed record WallLayer(double Exponent, double ExponentUncertainty)
{
    public static WallLayer OneSeventh { get; } = new(1.0 / 7, (1.0 / 5 - 1.0 / 12) / Math.Sqrt(12));

    public double Exponent { get; } = Require.Between(Exponent, 0.02, 0.5, nameof(Exponent), "(no unit)");

    public double ExponentUncertainty { get; } = Require.NotNegative(ExponentUncertainty, nameof(ExponentUncertainty), "(no unit)");

    /// <summary>Speed over core speed at a distance from the wall, 0 to 1, no unit.</summary>
    /// <param name="distance">m.</param>
    /// <param name="deepest">Largest distance to the wall in the section, m.</param>
    public double Share(double distance, double deepest) => Share(distance, deepest, Exponent);

    internal static double Share(double distance, double deepest, double exponent) =>
        distance <= 0 ? 0 : distance >= deepest ? 1 : Math.Exp(exponent * Math.Log(distance / deepest));
}
