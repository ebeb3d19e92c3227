using Portwright.Shop.Balls;
using Portwright.Shop.Judgement;

namespace Portwright.Shop.Families;

internal sealed partial class PlacesTogether
{
    /// <summary>Of balls that are not as written so many are so in every port they were held in: those the shop's own rod and drag may explain as well. Judgement.</summary>
    private const double InEveryPort = 0.2;

    /// <summary>
    /// Likelihood ratios of the ball of one round being another than the one written down, against all balls being what is written: in this port, alone or in all it was held in, and
    /// in a sister instead, where they are too few to outvote her.
    /// </summary>
    /// <param name="round">As <see cref="BallsTogether.RoundOf"/> names it.</param>
    /// <param name="mistyped">By how much the logarithm of what a ball takes is off.</param>
    public (double Here, IReadOnlyList<double> InASister) BallMistyped(string round, Step mistyped)
    {
        double[] In(Func<int, bool> port) => [.. _readings.Select(r => r.IsBall && r.Shares == round && port(r.Port) ? 1.0 : 0)];
        var asWritten = _together.ConvertAll(t => t.LogPrior + t.Held.DrawnIn(Family.DrawnIn).LogLikelihood);
        var most = asWritten.Max();
        double Ratio(double[] moved) => _together.Sum(t => Math.Exp(t.LogPrior - most + WhereMoved(t.Held, moved, mistyped))) / asWritten.Sum(l => Math.Exp(l - most));
        int[] sisters = [.. _readings.Where(r => r.IsBall && r.Shares == round && r.Port != 0).Select(r => r.Port).Distinct()];
        var alone = Ratio(In(p => p == 0));
        return (sisters.Length == 0 ? alone : (1 - InEveryPort) * alone + InEveryPort * Ratio(In(_ => true)), sisters.Length <= FewSisters ? [.. sisters.Select(s => Ratio(In(p => p == s)))] : []);
    }

    /// <summary>Logarithm of the likelihood where some readings are moved together by a step: a parabola about the size that fits best, places off by themselves being drawn in there.</summary>
    /// <param name="moved">1 at those readings.</param>
    /// <param name="step">In what a ball takes: three times the logarithm of the speed.</param>
    private static double WhereMoved(JointNormal held, double[] moved, Step step)
    {
        var best = held.Mean(moved) / held.Taken(moved, moved);
        var near = held.Moved([.. moved.Select(m => -best * m)]).DrawnIn(Family.DrawnIn);
        var (slope, bend, largest) = (near.Mean(moved), near.Taken(moved, moved), step.Sizes.Max() / 3);
        double At(double size)
        {
            // The largest class stands for all that is larger.
            var off = Math.Abs(size) == largest && size * best > 0 && Math.Abs(best) > largest ? 0 : size - best;
            return near.LogLikelihood + slope * off - bend * off * off / 2;
        }

        double[] each = [.. step.Sizes.Select(s => At(s / 3))];
        var most = each.Max();
        return most + Math.Log(each.Average(l => Math.Exp(l - most)));
    }
}
