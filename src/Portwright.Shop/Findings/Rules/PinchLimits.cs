using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The smallest section chokes the port: speed, balls and effective area agree.</summary>
public sealed record PinchLimits() : FindingRule("pinch-limits", "The pinch limits the port")
{
    /// <summary>Mean speed in the smallest section over the mean of the others from which it counts as a pinch; common practice, no source.</summary>
    public const double MuchFaster = 1.2;

    /// <summary>
    /// Effective area over the smallest section from which that section spends more than half of the test pressure: the speed head there is
    /// the square of it, 0.56 at 0.75. Limit: common practice, no source.
    /// </summary>
    public const double NearAllItPasses = 0.75;

    /// <summary>Standard uncertainty of both limits as a share; judgement.</summary>
    public const double LimitDoubt = 0.04;

    /// <summary>A ball takes at least this share of what moving air should cost where the section works; the band of the ball's own answer.</summary>
    public const double Works = 2.0 / 3;

    /// <summary>Share of the port's loss that goes with the speed head of its smallest section, and its doubt; judgement, no source.</summary>
    private const double WithItsSpeed = 0.4, WithItsSpeedDoubt = 0.2;

    public override Sentence Evidence => $"Sections at three stations or more, one of them the pinch; balls held in the pinch, with readings without it; a sweep to the lift that counts.";

    public override Sentence Test => $"Three must agree, and their probabilities multiply: the mean speed in the smallest section (the throat left out) is more than 1.2 times that of the other sections; the balls there together take more than two thirds of what moving air costs, so the section is used; the effective area is more than 0.75 of the section, so that over half of the test pressure is spent on the speed there.";

    public override Sentence ElseExplains => $"A section missed by the caliper (a pinch is easily measured a few thousandths beside its narrowest); a short side that sends all air through the roof half, so that the rest of the pinch is idle.";

    public override Sentence LookFirst => $"Measure the pinch again, and one station a finger's width before and after it; sound the metal on the pushrod side.";

    public override Sentence Cut => $"Open the pinch towards the size of its neighbours, the same on both sides, and blend it over its whole length; keep the roof line.";

    public override Sentence Risk => $"The pushrod hole is usually behind it: breaking in means a tube. A pinch opened past its neighbours only slows the air before the turn.";

    public override string Source => "Speed head as the square of effective area over section: continuity and Bernoulli. Limits: common practice, no source";

    public override double Minutes => BenchMinutes.OneSection;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var measured = port.Stations.Where(s => s.Section is not null && s.Role != StationRole.Throat).ToList();
        if (measured.Count < 3 || port.LiftThatCounts is not { } lift || port.Sheet.Flow?.Curve.AreaAt(lift) is not { Value: > 0 } effective)
        {
            yield break;
        }

        var pinch = measured.MinBy(s => s.Section!.Area.Value)!;
        var balls = pinch.Balls.Where(b => b.Response is not null).ToList();
        if (balls.Count == 0)
        {
            yield break;
        }

        var section = pinch.Section!;
        var faster = Estimate.Ratio(Estimate.Mean([.. measured.Where(s => s != pinch).Select(s => s.Section!.Area)]), section.Area);
        var taken = Estimate.Combine([.. balls.SelectMany(b => new[] { (1.0, b.Fall), (-Works, b.Response!.Expected.Fall) })]);
        var passes = Estimate.Ratio(effective, section.Area);
        var speed = Confidence.Above(faster.With(Vague(MuchFaster)), MuchFaster);
        var working = Confidence.Above(taken, 0);
        var choked = Confidence.Above(passes.With(Vague(NearAllItPasses)), NearAllItPasses);
        var (next, minutes) = Next(pinch, lift, speed, working, choked);
        yield return new Finding(
            this,
            FindingKind.Port,
            $"{(port.StreamAt(section) is { } stream ? $"{Quantity.Speed(stream.Speed)} mean" : (Sentence)$"More air than passes below the speed of sound")} in {pinch.Letter} ({Quantity.Area(section.Area.Value)}) at {Quantity.Lift(lift)}, {faster.Value:0.00} times the rest; the balls there find moving air; the port passes {Quantity.Share(passes.Value)} of what this section could.",
            speed * working * choked,
            pinch.Station,
            null,
            [section.Section.Id, .. balls.SelectMany(b => b.Readings).Select(r => r.Id), .. port.Sheet.Flow.Sweeps.Select(s => s.Sweep.Id)],
            next,
            Suggestion(port, pinch, faster))
        { Minutes = minutes };
    }

    /// <summary>A limit of common practice is itself known to some percent: no verdict turns on a hair.</summary>
    private static Contribution Vague(double limit) => new("limit of common practice", LimitDoubt * limit, double.PositiveInfinity, ContributionKind.Other);

    /// <summary>The weakest of the three is the one to measure again.</summary>
    private static (Sentence Next, double Minutes) Next(SurveyedStation pinch, double lift, double speed, double working, double choked) =>
        speed <= working && speed <= choked ? ((Sentence)$"Measure the section at {pinch.Letter} again, by widths at more heights.", BenchMinutes.OneSection)
        : working <= choked ? ((Sentence)$"Hold the ball once more all round {pinch.Letter}, roof, floor and both sides, with readings without it between.", BenchMinutes.OneRing)
        : ($"Read the flow at {Quantity.Lift(lift)} again in a second set-up.", BenchMinutes.OneSetUp);

    private static CutSuggestion? Suggestion(PortSurvey port, SurveyedStation pinch, Estimate faster)
    {
        // Opened until it is no more than the mark faster than its neighbours, the speed head falls with the square of the areas.
        var saved = 1 - Math.Pow(MuchFaster / Math.Max(MuchFaster, faster.Value), 2);
        return JudgedCut.Of(
            port,
            $"Open the pinch at {pinch.Letter} to {Quantity.Area(pinch.Section!.Area.Value * Math.Max(1, faster.Value / MuchFaster))}, both sides alike, blended.",
            WithItsSpeed * saved, WithItsSpeedDoubt * saved, "pinch opened", null);
    }
}
