using Portwright.Judging.Shops;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Judgement;

namespace Portwright.Judging.Faults;

/// <summary>Whether the readings that were made suffice for a fault of the air in one place.</summary>
/// <remarks>
/// They do where the best judge there can be would say the fault with <see cref="Said"/> or more, by the rule's own prior, in <see cref="Sure"/> of all shops that look as this one did: one who
/// knows what <see cref="KnownAir"/> says. Asked before the readings are drawn, so that nothing hangs on how they fell out. With d deviations between the two what
/// is read lies about d, with a deviation of one, where the fault is there, and a fault of s times the size is likelier than none by exp(s d x - s^2 d^2 / 2) (any text on detection; from memory).
/// </remarks>
public static class Suffices
{
    /// <summary>As surely as a fault must be said to count as found.</summary>
    public const double Said = 0.9;

    /// <summary>Share of shops in which the best judge must find it.</summary>
    public const double Sure = 0.95;

    /// <summary>Nobody knows beforehand how large a fault is: within a factor of 1.6 of what it is, classes of equal chance.</summary>
    private static readonly IReadOnlyList<double> Sizes = new Step(1, 1.6, StepWay.Up).Sizes;

    /// <summary>Of the normal distribution, at <see cref="Sure"/>.</summary>
    public const double Deviate = 1.6449;

    /// <summary>The same at <see cref="Said"/>.</summary>
    public const double DeviateSaid = 1.2816;

    /// <param name="places">Places that were read where it may as well lie, 1 or more: nobody knows which beforehand.</param>
    /// <param name="anyAir">Where a fault of the air itself must be told from it as well.</param>
    public static bool ForTheAir(MadeJob job, Fault fault, int places, PlaceOff? anyAir = null)
    {
        var prior = Catalogue.All.Where(r => fault.Found.Contains(r.Key)).Max(r => r.Prior ?? 0);
        return Found(job.KnownAir.Apart(anyAir), job.KnownAir.Flags, prior / places);
    }

    /// <param name="apart">Deviations between sound and faulty.</param>
    /// <param name="beside">Logarithm of what else speaks for it.</param>
    public static bool Found(double apart, double beside, double prior)
    {
        if (double.IsPositiveInfinity(beside)) return true;
        // At the least it shows in all but one shop in twenty; a fault so many times as large or small would show otherwise.
        var shows = apart - Deviate;
        var ratio = Sizes.Average(s => Math.Exp(s * apart * shows - s * s * apart * apart / 2 + beside));
        return prior * ratio / (1 - prior + prior * ratio) >= Said;
    }
}
