using Portwright.Physics.Targets;

namespace Portwright.Shop.Targets;

/// <summary>From and to in SI; endless where one side is open.</summary>
/// <param name="Vague">How far off either end may itself be, half of a range of which no value is likelier than another.</param>
public readonly record struct TargetRange(double Low, double High, double Vague = 0)
{
    /// <summary>At least some value of a range: any of it alike.</summary>
    public static TargetRange AtLeast(UsualRange edge) => new(edge.Middle, double.PositiveInfinity, edge.HalfWidth);

    public static TargetRange AtLeast(double low) => new(low, double.PositiveInfinity);

    public static TargetRange AtMost(double high) => new(double.NegativeInfinity, high);

    public static TargetRange Exactly(double value) => new(value, value);

    /// <summary>Between the limits of a rule, each as vague as the register says.</summary>
    public static TargetRange Of(NamedLimit rule) => new(rule.Limits.Low, rule.Limits.High, rule.Vague);

    public bool IsOpen => double.IsInfinity(Low) || double.IsInfinity(High);

    /// <summary>Where the low end may lie.</summary>
    public UsualRange LowEdge => new(Low - Vague, Low + Vague);

    /// <summary>Where the high end may lie.</summary>
    public UsualRange HighEdge => new(High - Vague, High + Vague);
}
