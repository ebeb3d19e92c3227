namespace Portwright.Shop.Judgement;

/// <summary>What the places beside one say of a step there, which reaches them in part: normal readings, so that its logarithm is a parabola in the step.</summary>
/// <param name="Slope">Logarithm of the likelihood ratio per step, at none.</param>
/// <param name="Bend">What it loses per half square of the step, at least 0.</param>
/// <param name="Follows">Share of the step by which they move what is expected at the place itself.</param>
public readonly record struct Beside(double Slope, double Bend, double Follows)
{
    /// <summary>A fault of the air at the wall fades with the hours from its middle as a bell of this half width; judgement, no source.</summary>
    public const double Fades = 1;

    /// <summary>
    /// The flow through a section is what it is: what one place takes faster the others lack. The bell covers sqrt(2 pi)/12 of the way round by its half width, and fades to nothing in the
    /// middle, where a third of the area lies.
    /// </summary>
    public static double Displaces { get; } = Math.Sqrt(2 * Math.PI) * Fades / 12 * 2 / 3;

    /// <summary>Share of a step that reaches a place of the section so many hours off; null: its middle.</summary>
    public static double Reaches(double? hours) => (hours is { } h ? Math.Exp(-h * h / (2 * Fades * Fades)) : 0) - Displaces;

    /// <summary>Likelihood of what they read with the step over that without.</summary>
    public double Ratio(double step) => Math.Exp(step * Slope - step * step * Bend / 2);
}
