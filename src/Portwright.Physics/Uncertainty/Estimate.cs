using System.Collections.Immutable;
using Portwright.Physics.Statistics;

namespace Portwright.Physics.Uncertainty;

/// <summary>
/// A value with everything that is in doubt about it, kept cause by cause, so that causes two results share are
/// recognised when they are compared, averaged or divided.
/// </summary>
/// <param name="Value">The value, in the unit of the result.</param>
/// <remarks>
/// Linear propagation (JCGM 100:2008, 5.1.2): every further result is a linear combination of the signed contributions.
/// Correlation needs no matrix: it is the sources held in common (JCGM 100:2008, 5.2.4 and F.1.2.3).
/// Contributions are kept sorted by source, one a source; equality is by value.
/// </remarks>
/// <exception cref="ArgumentOutOfRangeException">The value or an amount is not finite, or degrees of freedom or readings are not above 0.</exception>
/// <exception cref="ArgumentException">A contribution has no source.</exception>
public sealed partial record Estimate(double Value, ImmutableArray<Contribution> Contributions)
{
    /// <summary>The value, in the unit of the result.</summary>
    public double Value { get; } = double.IsFinite(Value)
        ? Value
        : throw new ArgumentOutOfRangeException(nameof(Value), Value, "The value of an estimate must be finite.");

    /// <summary>One contribution a source, in ordinal order of the sources. A cancelled cause stays with amount 0.</summary>
    public ImmutableArray<Contribution> Contributions { get; } = Merged(Contributions);

    /// <summary>A value without doubt, such as a definition.</summary>
    /// <param name="value">In the unit of the result.</param>
    public static Estimate Exact(double value) => new(value, []);

    /// <summary>Combined standard uncertainty (JCGM 100:2008, eq. 10), in the unit of the value.</summary>
    public double StandardUncertainty => Math.Sqrt(Variance);

    /// <summary>Square of the combined standard uncertainty, in the unit of the value squared.</summary>
    public double Variance
    {
        get
        {
            var sum = 0.0;
            foreach (ref readonly var c in Contributions.AsSpan()) sum += c.Amount * c.Amount;
            return sum;
        }
    }

    /// <summary>
    /// Effective degrees of freedom by Welch-Satterthwaite (JCGM 100:2008, eq. G.2b); infinite where every contribution
    /// is taken as exactly known. Contributions from one <see cref="Contribution.Pool"/> enter as one variance.
    /// </summary>
    public double EffectiveDegreesOfFreedom => WelchSatterthwaite.EffectiveDegreesOfFreedom(Contributions.AsSpan());

    /// <summary>Student's factor at the unrounded effective degrees of freedom (JCGM 100:2008, G.4.1), no unit.</summary>
    /// <param name="level">Coverage probability, above 0 and below 1.</param>
    public double CoverageFactor(double level = 0.95) => Student.TwoSidedFactor(level, EffectiveDegreesOfFreedom);

    /// <summary>Expanded uncertainty: half width of the interval that covers with the probability given. In the unit of the value.</summary>
    /// <param name="level">Coverage probability, above 0 and below 1.</param>
    public double Expanded(double level = 0.95)
    {
        var u = StandardUncertainty;
        return u == 0 ? 0 : u * CoverageFactor(level);
    }

    /// <summary>Value plus and minus the expanded uncertainty.</summary>
    /// <param name="level">Coverage probability, above 0 and below 1.</param>
    public CoverageInterval Interval(double level = 0.95)
    {
        var half = Expanded(level);
        return new(Value - half, Value + half);
    }

    /// <summary>The budget by kind, largest share first.</summary>
    public ImmutableArray<KindShare> ByKind()
    {
        var total = Variance;
        return
        [
            .. Contributions
                .GroupBy(c => c.Kind, c => c.Amount * c.Amount)
                .Select(g => new KindShare(g.Key, Math.Sqrt(g.Sum()), total > 0 ? g.Sum() / total : 0))
                .OrderByDescending(s => s.StandardUncertainty).ThenBy(s => s.Kind),
        ];
    }

    public bool Equals(Estimate? other) =>
        other is not null && Value.Equals(other.Value) && Contributions.AsSpan().SequenceEqual(other.Contributions.AsSpan());

    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(Value);
        foreach (var c in Contributions) hash.Add(c);
        return hash.ToHashCode();
    }

    /// <summary>Sorts by source and adds the amounts of a source that stands there more than once.</summary>
    private static ImmutableArray<Contribution> Merged(ImmutableArray<Contribution> contributions)
    {
        if (contributions.IsDefaultOrEmpty) return [];
        var sorted = true;
        for (var i = 0; i < contributions.Length; i++)
        {
            contributions[i].Validate();
            sorted &= i == 0 || string.CompareOrdinal(contributions[i - 1].Source, contributions[i].Source) < 0;
        }
        if (sorted) return contributions;

        // A stable sort: which of two contributions of one source comes first decides whose kind is kept.
        var ordered = contributions.OrderBy(c => c.Source, StringComparer.Ordinal).ToArray();
        var merged = ImmutableArray.CreateBuilder<Contribution>(ordered.Length);
        foreach (var c in ordered)
        {
            if (merged.Count > 0 && merged[^1].Source == c.Source) merged[^1] = merged[^1].Plus(c);
            else merged.Add(c);
        }
        return merged.DrainToImmutable();
    }
}
