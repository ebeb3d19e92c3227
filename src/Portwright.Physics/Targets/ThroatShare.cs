namespace Portwright.Physics.Targets;

/// <summary>Throat under the seat against the valve's head, by diameter.</summary>
public static class ThroatShare
{
    public static readonly TargetRule Rule = new(
        "Throat over valve", TargetBasis.CommonPractice, "common practice, no source: throat 85 to 92 percent of the valve's diameter",
        "What is left for the seat and its angles depends on the seat's width and the spring; a wide throat cannot be made narrow again.");

    /// <summary>Throat over valve diameter.</summary>
    public static readonly UsualRange Usual = new(0.85, 0.92);

    /// <summary>Lift over valve diameter at which the curtain pi Dv L is as large as the head pi/4 Dv^2: a quarter, by geometry. No unit.</summary>
    public const double CurtainEqualsHead = 0.25;

    /// <summary>Throat over valve diameter, no unit.</summary>
    /// <param name="throatDiameter">m, above zero.</param>
    /// <param name="valveDiameter">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Of(double throatDiameter, double valveDiameter) =>
        Require.Positive(throatDiameter, nameof(throatDiameter), "m") / Require.Positive(valveDiameter, nameof(valveDiameter), "m");
}
