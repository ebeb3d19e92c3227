namespace Portwright.Physics.Uncertainty;

/// <summary>
/// The share of one physical cause in the doubt of a result: sensitivity coefficient times standard uncertainty,
/// with its sign (JCGM 100:2008, 5.1.3: c_i u(x_i)).
/// </summary>
/// <param name="Source">
/// Identity of the cause ("plate 3 certificate", "day barometer", "set-up 12"). Two results that name the same source
/// moved together; the source cancels where they are subtracted.
/// </param>
/// <param name="Amount">Sensitivity times standard uncertainty, signed, in the unit of the result. Finite.</param>
/// <param name="DegreesOfFreedom">How well the standard uncertainty is known: above 0, infinite where it is taken as exact. No unit.</param>
/// <param name="Kind">What sort of cause it is.</param>
/// <param name="Pool">
/// Identity of the estimate the standard uncertainty was taken from, where several causes share it (the set-up scatter
/// of the bench card serves every set-up). Such causes are independent, but if the estimate is too small it is too small
/// for all of them: their variances add before they enter the Welch-Satterthwaite formula. Null: an estimate of its own.
/// </param>
/// <param name="Readings">
/// For <see cref="ContributionKind.Repeat"/>: of how many repeats the mean is (one contribution for the repeats of a point).
/// </param>
/// <param name="Shape">Distribution assigned to the cause. It is told; the combined doubt does not rest on it (JCGM 100:2008, G.2.1).</param>
public readonly record struct Contribution(
    string Source,
    double Amount,
    double DegreesOfFreedom = double.PositiveInfinity,
    ContributionKind Kind = ContributionKind.Other,
    string? Pool = null,
    int Readings = 1,
    InputShape Shape = InputShape.Normal)
{
    /// <summary>The same cause seen through a further sensitivity.</summary>
    internal Contribution Times(double factor) => this with { Amount = Amount * factor };

    /// <summary>Two shares of one cause: the amounts add with their signs, the doubt about the estimate is the larger one.</summary>
    internal Contribution Plus(in Contribution other) => this with
    {
        Amount = Amount + other.Amount,
        DegreesOfFreedom = Math.Min(DegreesOfFreedom, other.DegreesOfFreedom),
        Readings = Math.Max(Readings, other.Readings),
    };

    /// <exception cref="ArgumentOutOfRangeException">The amount is not finite, the degrees of freedom or readings not above 0.</exception>
    internal void Validate()
    {
        ArgumentException.ThrowIfNullOrEmpty(Source);
        if (!double.IsFinite(Amount))
            throw new ArgumentOutOfRangeException(nameof(Amount), Amount, $"The amount of '{Source}' must be finite.");
        if (!(DegreesOfFreedom > 0))
            throw new ArgumentOutOfRangeException(nameof(DegreesOfFreedom), DegreesOfFreedom, $"The degrees of freedom of '{Source}' must be above 0.");
        if (Readings < 1)
            throw new ArgumentOutOfRangeException(nameof(Readings), Readings, $"'{Source}' must rest on at least 1 reading.");
    }
}
