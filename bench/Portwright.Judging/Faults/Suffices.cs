using Portwright.Judging.Shops;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Judgement;

namespace Portwright.Judging.Faults;

/// <summary>Whether the readings that were made suffice for a fault of the air in one place.</summary>
/// <remarks>
/// They do where one who knows all of <see cref="KnownAir"/> would say the fault with <see cref="Said"/> or more by the rule's own prior. No rule can know these things, so that the column is
/// generous to nobody: where the readings suffice for him they need not for a rule.
/// </remarks>
internal static class Suffices
{
    /// <summary>As surely as a fault must be said to count as found.</summary>
    public const double Said = 0.9;

    public static bool ForTheAir(MadeJob job, Fault fault)
    {
        var prior = Catalogue.All.Where(r => fault.Found.Contains(r.Key)).Max(r => r.Prior ?? 0);
        return Court.Chance(new Explanation(prior, Math.Exp(job.KnownAir.LogRatio))) >= Said;
    }
}
