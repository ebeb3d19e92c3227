using MathNet.Numerics.RootFinding;

namespace Portwright.Physics;

/// <summary>The one search for the place where a function crosses zero; what is not found here says beside its own loop why.</summary>
/// <remarks>
/// Brent's method as MathNet has it: kept inside its bracket, about ten evaluations where halving takes sixty. Kernels asked thousands of times in a run, whose
/// slope comes nearly free or which work on several lanes at once, keep loops of their own.
/// </remarks>
public static class Root
{
    /// <summary>
    /// Search ends where the place is known to this and twice the rounding of a double, or the function is nearer to zero than this: write the function so that it is
    /// of the size of 1. No unit.
    /// </summary>
    public const double Tolerance = 1e-15;

    private const int MostRounds = 300;

    /// <summary>The place of the root, in the unit of the ends.</summary>
    /// <param name="function">Of one sign at one end and not at the other, from the unit of the ends to a number of no unit, of the size of 1.</param>
    /// <param name="low">Lower end, any unit.</param>
    /// <param name="high">Upper end, in the unit of the lower.</param>
    /// <exception cref="ArgumentException">The function has one sign at both ends.</exception>
    public static double Between(Func<double, double> function, double low, double high) =>
        Brent.TryFindRoot(function, low, high, Tolerance, MostRounds, out var root)
            ? root
            : throw new ArgumentException($"No root between {low} and {high}.", nameof(function));
}
