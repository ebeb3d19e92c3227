namespace Portwright.Physics.Uncertainty;

/// <summary>A cause that moved several results together, where their doubts were stated whole and not cause by cause.</summary>
/// <param name="Source">Identity of the cause, the same for all that share it.</param>
/// <param name="Share">Standard uncertainty as a share of each result, 0 or more, no unit.</param>
/// <param name="Kind">What sort of cause it is.</param>
public readonly record struct SharedCause(string Source, double Share, ContributionKind Kind)
{
    /// <summary>
    /// A result with what it shares told apart from what is its own (JCGM 100:2008, F.1.2.3). A doubt stated as one figure holds the shared
    /// causes: they are taken out of it and the whole stays. Repeats never show what moves them all alike: to their scatter they are added.
    /// </summary>
    /// <param name="result">As stated, or the mean of its repeats.</param>
    /// <exception cref="ArgumentOutOfRangeException">A share below 0, or more shared than the whole doubt stated.</exception>
    public static Estimate Apart(InputEstimate result, params ReadOnlySpan<SharedCause> shared)
    {
        ArgumentNullException.ThrowIfNull(result);
        var own = result.StandardUncertainty * result.StandardUncertainty;
        var told = new List<Contribution>(shared.Length + 1);
        foreach (var cause in shared)
        {
            Require.NotNegative(cause.Share, nameof(shared), "(a share of the result, no unit)");
            told.Add(new(cause.Source, result.Value * cause.Share, Kind: cause.Kind));
            if (result.Kind != ContributionKind.Repeat) own -= told[^1].Amount * told[^1].Amount;
        }

        // A doubt that is all shared leaves a hair either side of nothing.
        if (own < -1e-12 * result.StandardUncertainty * result.StandardUncertainty || own < 0 && result.StandardUncertainty == 0)
            throw new ArgumentOutOfRangeException(nameof(shared), $"What {result.Source} shares is more than its whole doubt. Give a smaller share, or type the doubt that holds it behind ±.");
        told.Add(result.ToContribution(Math.Sqrt(Math.Max(0, own))));
        return new(result.Value, [.. told]);
    }
}
