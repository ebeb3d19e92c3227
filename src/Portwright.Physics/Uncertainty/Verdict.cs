namespace Portwright.Physics.Uncertainty;

/// <summary>What a difference of two results is worth.</summary>
public enum Verdict
{
    /// <summary>Larger than the noise explains at the level asked.</summary>
    Real,

    /// <summary>The noise alone makes such a difference often enough.</summary>
    InsideTheNoise,

    /// <summary>
    /// The scatter is not known well enough to say (none known, or fewer than 3 effective degrees of freedom), or a few
    /// more repeats would decide it.
    /// </summary>
    NotEnoughReadings,
}
