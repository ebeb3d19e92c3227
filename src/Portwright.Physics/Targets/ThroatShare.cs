namespace Portwright.Physics.Targets;

/// <summary>Throat under the seat against the valve's head, by diameter.</summary>
public static class ThroatShare
{
    public static readonly TargetRule Rule = NamedLimits.ThroatOverValve.Rule;

    /// <summary>Throat over valve diameter, no unit.</summary>
    /// <param name="throatDiameter">m, above zero.</param>
    /// <param name="valveDiameter">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Of(double throatDiameter, double valveDiameter) =>
        Require.Positive(throatDiameter, nameof(throatDiameter), "m") / Require.Positive(valveDiameter, nameof(valveDiameter), "m");
}
