using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The bench was not checked, or its check says look or stop.</summary>
public sealed record BenchNotFit() : FindingRule("bench-not-fit", "The bench is not fit today")
{
    public override Sentence Evidence => $"A sweep, and the morning check of its bench: leak test and check plate.";

    public override Sentence Test => $"No check on the day of the sweep, or one that lacks its leak test or plate: that is certain. A plate off its certificate or out of its control chart, or a leak over half a percent of the smallest plate: with its probability. A chart too young for limits says nothing.";

    public override Sentence ElseExplains => $"The wrong plate, or the right one on the wrong range; a plug left out; fluid off zero.";

    public override Sentence LookFirst => $"Zero, leak and plate again, five minutes, before the next sweep.";

    public override Sentence Cut => $"Nothing on the word of this day's readings.";

    public override Sentence Risk => $"A gain or a loss that is the bench's is taken for the port's.";

    public override string Source => "Control charts: Western Electric, Statistical Quality Control Handbook (1956); the leak's limit: common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow)
        {
            yield break;
        }

        var day = flow.Sweeps[^1].Day;
        if (port.Sheet.Morning is not { } morning || morning.Mornings[^1].Check.Fact.Date != day)
        {
            yield return Found(
                $"The bench was not checked on the day of this sweep.", 1, [flow.Sweeps[^1].Sweep.Id], $"A leak test and one check plate, before the next sweep.");
            yield break;
        }

        var confidence = Unfit(port, morning);
        if (confidence > 0)
        {
            yield return Found(
                Sentence.Plain(string.Join(" ", morning.Words)), confidence, [morning.Mornings[^1].Check.Id, flow.Sweeps[^1].Sweep.Id],
                morning.Mornings[^1].PlateRatio.Count == 0 ? (Sentence)$"One check plate near this port's flow." : $"The same plate again, taken off and put on anew.");
        }
    }

    private Finding Found(Sentence sentence, double confidence, IReadOnlyList<Guid> behind, Sentence next) =>
        new(this, FindingKind.Measurement, sentence, confidence, null, null, behind, next);

    /// <summary>The surest of all that speaks against the bench; 0 where nothing does.</summary>
    private static double Unfit(PortSurvey port, BenchMorning morning)
    {
        var last = morning.Mornings[^1];
        if (last.LeakArea is null || last.PlateRatio.Count == 0 || last.Remarks.Count > 0)
        {
            return 1;
        }

        var smallest = port.Sheet.Bench?.Fact.Plates.Select(p => p.EffectiveArea).DefaultIfEmpty(double.PositiveInfinity).Min() ?? double.PositiveInfinity;
        var leak = last.LeakArea.Value > BenchMorning.LeakWorthALook * smallest ? Confidence.Above(last.LeakArea, BenchMorning.LeakWorthALook * smallest) : 0;
        // With several plates read at once the worst is off by chance that much more often (Bonferroni).
        var plate = 1 - Math.Min(1, last.PlateRatio.Min(p => Chance(p.Ratio)) * last.PlateRatio.Count);
        var today = morning.Charts.Where(c => last.PlateRatio.Any(p => p.Plate == c.Plate && p.Range == c.Range)).ToList();
        var chart = today.SelectMany(c => c.Chart.Rules).Select(r => 1 - RuleByChance(r)).DefaultIfEmpty(0).Max();
        return morning.Answer == ChartAnswer.Go ? 0 : Math.Max(leak, Math.Max(plate, chart));
    }

    private static double Chance(Estimate ratio) =>
        ratio.StandardUncertainty > 0 ? Student.TwoSidedP((ratio.Value - 1) / ratio.StandardUncertainty, ratio.EffectiveDegreesOfFreedom) : ratio.Value == 1 ? 1 : 0;

    /// <summary>How often a sound bench completes a rule of the chart: m of the last n points beyond so many standard deviations on one side.</summary>
    private static double RuleByChance(int rule)
    {
        var (m, n, sigma) = rule switch { 1 => (1, 1, 3), 2 => (2, 3, 2), 3 => (4, 5, 1), _ => (8, 8, 0) };
        var beyond = Student.Cdf(-sigma, double.PositiveInfinity);
        // Chances of 0, 1, 2... points beyond the line, point by point.
        double[] count = [1, .. new double[n]];
        for (var point = 1; point <= n; point++)
        {
            for (var k = point; k >= 0; k--)
            {
                count[k] = count[k] * (1 - beyond) + (k > 0 ? count[k - 1] * beyond : 0);
            }
        }

        return 2 * count[m..].Sum();
    }
}
