using Portwright.Physics.Uncertainty;
using Portwright.Shop.Survey;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>Everything was looked at and nothing is left that is worth metal.</summary>
/// <param name="Others">Every other rule of the catalogue.</param>
public sealed record NothingWorthCutting(IReadOnlyList<FindingRule> Others) : FindingRule("nothing-worth-cutting", "Nothing worth cutting is left: stop")
{
    /// <summary>A gain of mean flow under this share is not worth metal; common practice, no source.</summary>
    public const double Worth = 0.015;

    /// <summary>Lifts a sweep must have before it speaks for the whole range; common practice, no source.</summary>
    public const int FewestLifts = 4;

    /// <summary>A cut that a finding this likely suggests is still an open question: then nothing is said.</summary>
    public const double Open = 0.5;

    public override Sentence Evidence => $"A sweep of at least four lifts, a ball on the floor of the bend and one on its roof, and a ring. Silent where one of them is missing.";

    public override Sentence Test => $"No finding of this catalogue stands, none that suggests a cut is as likely as not, and either the last cut gained less than 1.5 percent of the mean flow, or less than 1.5 percent is left between this port and the best a valve window passes, with its probability.";

    public override Sentence ElseExplains => $"A loss that sits where nobody has looked; a cut too small to show; a bench too coarse to show it.";

    public override Sentence LookFirst => $"The stations without ball or ring. The other ports of the set: they may want the time more.";

    public override Sentence Cut => $"Nothing. Make the other ports equal to this one.";

    public override Sentence Risk => $"Further cutting makes the port larger and slower for nothing.";

    public override string Source => "common practice, no source; best window: see the expected gain";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow || flow.Curve.Points.Count(p => p.Lift > 0) < FewestLifts || !Looked(port) || port.Sheet.Mean is not { } mean)
        {
            yield break;
        }

        var reasons = new List<(Sentence Sentence, double Confidence)>();
        if (port.Sheet.AgainstLast is { } cut && cut.Curves.WholeCurve is { } gain && gain.Verdict != Verdict.Real)
        {
            reasons.Add((
                $"Cut {cut.This.Cut.Fact.Number} changed the mean flow by {Quantity.Flow(gain.Of)}, inside the noise.",
                Confidence.Below(gain.Of, Worth * mean.Flow.Value)));
        }

        if (LeftOfWindow(port) is { } left)
        {
            reasons.Add((
                $"The port uses all but {Quantity.Share(Math.Max(0, left.Value))} of what the valve window can pass over the lifts tested.",
                Confidence.Below(left, Worth)));
        }

        // Only with a reason are the other rules asked: they are the long part.
        if (reasons.Count == 0 || reasons.Max(r => r.Confidence) < Open || AnyOther(port))
        {
            yield break;
        }

        var (sentence, confidence) = reasons.MaxBy(r => r.Confidence);
        yield return new Finding(
            this,
            FindingKind.Stop,
            $"{sentence} Balls and rings show no fault of the port.",
            confidence,
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id), .. port.Balls.SelectMany(b => b.Readings).Select(r => r.Id), .. port.Stations.SelectMany(s => s.Rings).Select(r => r.Ring.Id)],
            port.Stations.FirstOrDefault(s => s.Ring is null && s.Balls.Count == 0) is { } blind
                ? (Sentence)$"A ball at {blind.Letter}, where nothing was looked at yet."
                : $"A second set-up and sweep of this port: it makes the last cut's gain surer than more repeats do.");
    }

    private static bool Looked(PortSurvey port)
    {
        var balls = port.InTheBend.SelectMany(s => s.Balls).Where(b => b.Response is not null && b.Bearing is not null).ToList();
        return balls.Exists(b => WallState.Apart(b.Bearing!.Value, 6) <= 2) && balls.Exists(b => WallState.Apart(b.Bearing!.Value, 12) <= 2)
            && port.Stations.Any(s => s.Ring is not null);
    }

    private bool AnyOther(PortSurvey port) => Others.SelectMany(r => r.Look(port))
        .Any(f => f.Kind != FindingKind.Stop && f.Confidence >= (f.Suggestion is null ? Confidence.Stated : Open));

    /// <summary>Gain of mean flow, as a share, if the whole loss of the port went and only the best window were left; null without valve data.</summary>
    private static Estimate? LeftOfWindow(PortSurvey port)
    {
        var windows = port.Sheet.Windows.Where(w => port.LiftThatCounts is not { } top || w.Lift <= top * 1.02).ToList();
        return windows.Count < FewestLifts ? null : Estimate.Mean([.. windows.Select(w => Estimate.Linear(
            ExpectedGain.BestWindow / w.OfWindow.Value - 1, (-ExpectedGain.BestWindow / (w.OfWindow.Value * w.OfWindow.Value), w.OfWindow)))]);
    }
}
