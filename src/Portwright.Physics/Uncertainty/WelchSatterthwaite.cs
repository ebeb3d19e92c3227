namespace Portwright.Physics.Uncertainty;

/// <summary>Effective degrees of freedom of a combined standard uncertainty.</summary>
public static class WelchSatterthwaite
{
    /// <summary>
    /// u_c^4 divided by the sum of u_i^4 / nu_i (JCGM 100:2008, eq. G.2b); infinite where nothing is in doubt about
    /// the contributions. No unit.
    /// </summary>
    /// <remarks>
    /// The formula supposes that the u_i were estimated independently. Contributions that take theirs from one pooled
    /// estimate therefore enter as one: (sum of u_i^2)^2 / nu over the pool. With them apart, two set-ups judged with
    /// one set-up scatter of 4 degrees of freedom would count as 8.
    /// </remarks>
    public static double EffectiveDegreesOfFreedom(ReadOnlySpan<Contribution> contributions)
    {
        double variance = 0, sum = 0;
        for (var i = 0; i < contributions.Length; i++)
        {
            ref readonly var c = ref contributions[i];
            var square = c.Amount * c.Amount;
            variance += square;
            if (c.Pool is null) sum += square * square / c.DegreesOfFreedom;
            else if (IsFirstOfPool(contributions, i)) sum += OfPool(contributions[i..], c.Pool);
        }
        return sum > 0 ? variance * variance / sum : double.PositiveInfinity;
    }

    private static bool IsFirstOfPool(ReadOnlySpan<Contribution> contributions, int index)
    {
        for (var i = 0; i < index; i++)
        {
            if (contributions[i].Pool == contributions[index].Pool) return false;
        }
        return true;
    }

    private static double OfPool(ReadOnlySpan<Contribution> contributions, string pool)
    {
        double variance = 0, dof = double.PositiveInfinity;
        foreach (ref readonly var c in contributions)
        {
            if (c.Pool != pool || c.Amount == 0) continue;
            variance += c.Amount * c.Amount;
            dof = Math.Min(dof, c.DegreesOfFreedom);
        }
        return variance * variance / dof;
    }
}
