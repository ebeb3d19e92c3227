using System.Collections.Immutable;

namespace Portwright.Physics.Uncertainty;

/// <summary>One lift tested before and after.</summary>
/// <param name="Lift">In the unit of the lifts.</param>
public readonly record struct LiftPair(double Lift, Estimate Before, Estimate After);

/// <summary>The difference at one lift.</summary>
/// <param name="Lift">In the unit of the lifts.</param>
/// <param name="NoiseHalfWidth">Half width of the noise for this lift by itself, in the unit of the result.</param>
/// <param name="SimultaneousHalfWidth">
/// Half width that holds for all lifts at once (Bonferroni): a difference outside it is real. Draw this one. In the unit of the result.
/// </param>
public sealed record LiftDifference(double Lift, Difference Difference, double NoiseHalfWidth, double SimultaneousHalfWidth);

/// <summary>The mean difference over a band of lift.</summary>
/// <param name="TestedFrom">Where the band begins, cut to the tested lifts, in the unit of the lifts.</param>
/// <param name="TestedTo">Where it ends, cut to the tested lifts, in the unit of the lifts.</param>
public sealed record BandDifference(LiftBand Band, double TestedFrom, double TestedTo, Difference Difference);

/// <summary>The difference of two sweeps.</summary>
/// <param name="Lifts">At each lift, held together as one family of comparisons.</param>
/// <param name="WholeCurve">Mean difference over the tested lifts: one comparison.</param>
/// <param name="Bands">Mean differences over bands of lift, held together as one family.</param>
public sealed record CurveDifference(ImmutableArray<LiftDifference> Lifts, Difference WholeCurve, ImmutableArray<BandDifference> Bands);
