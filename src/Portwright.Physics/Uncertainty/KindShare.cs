namespace Portwright.Physics.Uncertainty;

/// <summary>One line of an uncertainty budget read by kind.</summary>
/// <param name="StandardUncertainty">Root sum of squares of the contributions of this kind, in the unit of the result.</param>
/// <param name="ShareOfVariance">Part of the squared combined standard uncertainty, 0 to 1, no unit.</param>
public readonly record struct KindShare(ContributionKind Kind, double StandardUncertainty, double ShareOfVariance);
