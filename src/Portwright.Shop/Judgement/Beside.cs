namespace Portwright.Shop.Judgement;

/// <summary>What the places beside one say of a step there, which reaches them in part: normal readings, so that its logarithm is a parabola in the step.</summary>
/// <param name="Slope">Logarithm of the likelihood ratio per step, at none.</param>
/// <param name="Bend">What it loses per half square of the step, at least 0.</param>
/// <param name="Follows">Share of the step by which they move what is expected at the place itself.</param>
public readonly record struct Beside(double Slope, double Bend, double Follows)
{
    /// <summary>
    /// A fault of the air at the wall fades with the hours from its middle as a bell; how wide is not known beforehand: half widths (hours) of equal chance, from a corner to all of a
    /// wall. Judgement, no source.
    /// </summary>
    public static IReadOnlyList<double> HalfWidths { get; } = [1, 1.5, 2.5];

    /// <summary>The first so many of them are those of a place: a corner, a floor; a side may take in its whole wall.</summary>
    public const int OfAPlace = 2;

    /// <summary>Share of a step that reaches a place of the section so many hours off.</summary>
    /// <remarks>
    /// The flow through a section is what it is: what one place takes faster the others lack. The bell covers sqrt(2 pi)/12 of the way round by its half width, and fades to nothing in the
    /// middle, where a third of the area lies. The step is what is left at the place itself.
    /// </remarks>
    /// <param name="hours">0 to 6; null: its middle.</param>
    /// <param name="halfWidth">Of the bell, hours.</param>
    public static double Reaches(double? hours, double halfWidth)
    {
        var displaced = Math.Sqrt(2 * Math.PI) * halfWidth / 12 * 2 / 3;
        return (Bell(hours, halfWidth) - displaced) / (1 - displaced);
    }

    /// <summary>The same of a section that leans: one side takes what the one across from it loses, and the rest keeps its flow.</summary>
    /// <param name="hours">From the side that gains, 0 to 6; null: the middle.</param>
    /// <param name="fromOther">From the one that loses.</param>
    /// <param name="apart">From the one to the other.</param>
    public static double Leans(double? hours, double? fromOther, double apart, double halfWidth) =>
        (Bell(hours, halfWidth) - Bell(fromOther, halfWidth)) / (1 - Bell(apart, halfWidth));

    private static double Bell(double? hours, double halfWidth) => hours is { } h ? Math.Exp(-h * h / (2 * halfWidth * halfWidth)) : 0;

    /// <summary>Likelihood of what they read with the step over that without.</summary>
    public double Ratio(double step) => Math.Exp(step * Slope - step * step * Bend / 2);
}
