using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Targets;
using Portwright.Shop.Units;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Cutting;

/// <summary>Everything was looked at and nothing is left that is worth metal.</summary>
/// <remarks>The last word on a port: it rests on every finding, on the targets and on what a cut could still bring, so no survey alone can say it.</remarks>
public sealed record NothingWorthCutting() : FindingRule("nothing-worth-cutting", "Nothing worth cutting is left: stop")
{
    /// <summary>A gain of mean flow under this share is not worth metal; common practice, no source.</summary>
    public const double Worth = 0.015;

    /// <summary>Lifts a sweep must have before it speaks for the whole range; common practice, no source.</summary>
    public const int FewestLifts = 4;

    /// <summary>A cut that a finding this likely suggests is still an open question: then nothing is said.</summary>
    public const double Open = 0.5;

    /// <summary>Standard uncertainty of the best a window passes, as a share: seats differ; common practice, no source.</summary>
    public const double BestWindowDoubt = 0.01;

    public override Sentence Evidence => $"A sweep of at least four lifts, a ball on the floor of the bend and one on its roof, and a ring; valve and seat, or two cuts that changed nothing. Silent where one of them is missing.";

    public override Sentence Test => $"No finding of this catalogue stands, no target is missed, and less than 1.5 percent is left between this port and the best a valve window passes, or each of the last two cuts gained less than 1.5 percent of the mean flow. The chance is that of the reason times that of no cut being left to find.";

    public override Sentence ElseExplains => $"A loss that sits where nobody has looked; a cut too small to show; a bench too coarse to show it.";

    public override Sentence LookFirst => $"The stations without ball or ring. The other ports of the set: they may want the time more.";

    public override Sentence Cut => $"Nothing. Make the other ports equal to this one.";

    public override Sentence Risk => $"Further cutting makes the port larger and slower for nothing.";

    public override string Source => "common practice, no source; best window: see the expected gain";

    public override double Minutes => BenchMinutes.OneReading;

    /// <summary>Never by a survey alone: see <see cref="Conclude"/>.</summary>
    public override IEnumerable<Finding> Look(PortSurvey port) => [];

    /// <summary>The conclusion; null where anything speaks against it.</summary>
    /// <param name="spoken">All the catalogue says of the port, however unsure.</param>
    /// <param name="targets">What the engine asks of it.</param>
    public Finding? Conclude(PortSurvey port, IReadOnlyList<Finding> spoken, IReadOnlyList<EngineTarget> targets)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(spoken);
        ArgumentNullException.ThrowIfNull(targets);
        if (port.Sheet.Flow is not { } flow || flow.Curve.Points.Count(p => p.Lift > 0) < FewestLifts || !Looked(port) || port.Sheet.Mean is not { } mean
            || targets.Any(t => t.Answer is TargetAnswer.Short or TargetAnswer.Over)
            || spoken.Any(f => f.Kind != FindingKind.Stop && f.Confidence >= (f.Suggestion is null ? Confidence.Stated : Open)))
        {
            return null;
        }

        var reasons = new List<(Sentence Sentence, double Chance)>();
        if (DullCuts(port, mean) is { } dull)
        {
            reasons.Add(dull);
        }

        if (LeftOfWindow(port) is { } left)
        {
            reasons.Add((
                $"The port uses all but {Quantity.Share(Math.Max(0, left.Value))} of what the valve window can pass over the lifts tested.",
                Confidence.Below(left, Worth)));
        }

        if (reasons.Count == 0)
        {
            return null;
        }

        var (sentence, chance) = reasons.MaxBy(r => r.Chance);
        // What the readings speak against is no open cut: it had its prior before anything was read.
        var noCutLeft = spoken.Where(f => f.Suggestion is not null && f.Confidence > (f.Rule.Prior ?? 0)).Aggregate(1.0, (none, f) => none * (1 - f.Confidence));
        return new Finding(
            this,
            FindingKind.Stop,
            $"{sentence} Balls and rings show no fault of the port{(targets.Any(t => t.Answer != TargetAnswer.None) ? ", and no target is missed" : "")}.",
            chance * noCutLeft,
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id), .. port.Balls.SelectMany(b => b.Readings).Select(r => r.Id), .. port.Stations.SelectMany(s => s.Rings).Select(r => r.Ring.Id)],
            port.Stations.FirstOrDefault(s => s.Ring is null && s.Balls.Count == 0) is { } blind
                ? (Sentence)$"A ball at {blind.Letter}, where nothing was looked at yet."
                : $"A second set-up and sweep of this port: it makes the last cut's gain surer than more repeats do.");
    }

    /// <summary>One dull cut says little: it may have been the wrong one. Two in a row say more.</summary>
    private static (Sentence Sentence, double Chance)? DullCuts(PortSurvey port, MeanFlow mean)
    {
        if (port.Sheet.AgainstLast is not { } last || port.Sheet.Earlier is not [.., var before, var one] || CutComparison.Between(one, before) is not { } earlier)
        {
            return null;
        }

        var (now, then) = (last.Curves.WholeCurve.Of, earlier.Curves.WholeCurve.Of);
        return (
            $"Cuts {earlier.This.Cut.Fact.Number} and {last.This.Cut.Fact.Number} changed the mean flow by {Quantity.Difference(then, Dimension.VolumeFlow)} and {Quantity.Difference(now, Dimension.VolumeFlow)}.",
            Confidence.Below(now, Worth * mean.Flow.Value) * Confidence.Below(then, Worth * mean.Flow.Value));
    }

    private static bool Looked(PortSurvey port)
    {
        var balls = port.InTheBend.SelectMany(s => s.Balls).Where(b => b.Response is not null && b.Bearing is not null).ToList();
        return balls.Exists(b => WallState.Apart(b.Bearing!.Value, 6) <= 2) && balls.Exists(b => WallState.Apart(b.Bearing!.Value, 12) <= 2)
            && port.Stations.Any(s => s.Ring is not null);
    }

    /// <summary>Gain of mean flow, as a share, if the whole loss of the port went and only the best window were left; null without valve data.</summary>
    private static Estimate? LeftOfWindow(PortSurvey port)
    {
        var windows = port.Sheet.Windows.Where(w => port.LiftThatCounts is not { } top || w.Lift <= top * 1.02).ToList();
        return windows.Count < FewestLifts ? null : Estimate.Mean([.. windows.Select(w => Estimate.Linear(
            ExpectedGain.BestWindow / w.OfWindow.Value - 1, (-ExpectedGain.BestWindow / (w.OfWindow.Value * w.OfWindow.Value), w.OfWindow)))])
            .With(new Contribution("best a window passes", BestWindowDoubt, double.PositiveInfinity, ContributionKind.Other));
    }
}
