namespace Portwright.Physics.Uncertainty;

/// <summary>What a Monte Carlo propagation found (JCGM 101:2008, 7.6 and 7.7).</summary>
/// <param name="Mean">Average of the model values, in the unit of the result.</param>
/// <param name="StandardUncertainty">Their standard deviation, in the unit of the result.</param>
/// <param name="Symmetric">Probabilistically symmetric coverage interval.</param>
/// <param name="Shortest">Shortest coverage interval.</param>
/// <param name="Trials">Model evaluations.</param>
/// <param name="Level">Coverage probability of the intervals.</param>
public sealed record MonteCarloResult(
    double Mean,
    double StandardUncertainty,
    CoverageInterval Symmetric,
    CoverageInterval Shortest,
    int Trials,
    double Level);
