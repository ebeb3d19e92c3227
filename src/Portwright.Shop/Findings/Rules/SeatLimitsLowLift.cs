using Portwright.Physics.Uncertainty;
using Portwright.Shop.Families;
using Portwright.Shop.Judgement;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>At low lift the window is all there is to pass, and the air makes poor use of it: the seat's angles, not the port.</summary>
public sealed record SeatLimitsLowLift() : FindingRule("seat-limits-low-lift", "The seat limits low lift")
{
    /// <summary>Lift over valve diameter up to which the jet fills the gap between valve and seat; Heywood (1988), section 6.3.2, from memory. Loss moves from behind the valve to before it at 0.1 (Gault and others, SAE Trans. 113 (2004) 1080, abstract).</summary>
    public const double LowLift = 0.1;

    /// <summary>What a good seat passes of its window at low lift; Heywood (1988), figure 6.14 on the minimum area, read from memory.</summary>
    public const double GoodSeat = 0.9;

    /// <summary>What sound seats pass of their window at low lift by different shapes and models of shops, middle and standard deviation of the logarithm; judgement.</summary>
    public const double UsualSeat = 0.86, SeatSpread = 0.13;

    /// <summary>A poor seat passes this much less, as a logarithm; judgement.</summary>
    public static readonly Step Poorer = new(0.30, 1.4, StepWay.Down);

    /// <summary>The same against the sister ports, which share the shape of the seat.</summary>
    public static readonly Step PoorerThanSisters = new(0.10, 1.8, StepWay.Down);

    /// <summary>Sound sisters differ so at low lift, level taken off; judgement.</summary>
    public const double BetweenSisters = 0.012;

    /// <inheritdoc/>
    public override double? Prior => 0.08;

    /// <summary>At the highest lift the port is fine where it passes this much of the throat; common practice, no source.</summary>
    public const double FinePort = 0.55;

    /// <summary>What of the gap to a good seat a valve job wins back, and its doubt; judgement, no source.</summary>
    private const double WonBack = 0.6, WonBackDoubt = 0.25;

    public override Sentence Evidence => $"Valve and seat measured; a sweep with lifts up to a tenth of the valve's diameter, and one past a fifth of it.";

    public override Sentence Test => $"Up to a tenth of the valve's diameter of lift the port passes less than its sister ports do, taken against their high lifts, or, without sisters, much less of the valve window than the {UsualSeat:0.00} that sound seats pass (they differ by {SeatSpread * 100:0} percent); then the port must also pass more than 0.55 of its throat at the highest lift.";

    public override Sentence ElseExplains => $"A dial set to zero with the valve not quite shut, or a bent valve; seat width or angle written down wrong; a leak not taken off; a chamber wall too near the valve.";

    public override Sentence LookFirst => $"Zero the lift again and repeat the two lowest lifts; blue the seat; measure the seat's width all round; look how near the chamber wall stands to the valve's edge.";

    public override Sentence Cut => $"Seat and valve: a top and a bottom cut, a narrower seat, a back cut on the valve; lay the chamber wall back where it shrouds. Leave the port alone for low lift.";

    public override Sentence Risk => $"A seat cut too narrow or sunk too deep runs hot and short; every sinking changes chamber volume and spring height.";

    public override string Source => "Coefficient on the minimum area at low lift about 0.9: Heywood, Internal Combustion Engine Fundamentals (1988), section 6.3.2. Limits: common practice, no source; how chances are worked out: docs/theory/judgement.md";

    public override double Minutes => BenchMinutes.OneLift;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Port.Fact.Valve is not { } valve)
        {
            yield break;
        }

        var low = port.Sheet.Windows.Where(w => w.Lift <= LowLift * valve.HeadDiameter + 1e-6).ToList();
        if (low.Count == 0 || port.Sheet.Windows.MaxBy(w => w.Lift) is not { } high || high.Lift < 2 * LowLift * valve.HeadDiameter)
        {
            yield break;
        }

        var seat = Estimate.Mean([.. low.Select(w => w.OfWindow)]);
        yield return new Finding(
            this,
            FindingKind.Port,
            $"Up to {Quantity.Lift(low[^1].Lift)} of lift the port passes {seat.Value:0.00} of the valve window; a good seat passes about {GoodSeat:0.0}. At {Quantity.Lift(high.Lift)} it passes {high.OfThroat.Value:0.00} of the throat; from {FinePort:0.00} on, or where its sisters do better at low lift alone, the loss is put down to the seat.",
            AgainstSisters(port, LowLift * valve.HeadDiameter) is { } against
                // Held against her sisters' high lifts the rest of the port is out of it.
                ? Court.Chance(new Explanation(Prior!.Value, against))
                : Confidence.Above(high.OfThroat, FinePort) * Court.Chance(new Explanation(Prior!.Value, AgainstSoundSeats(seat))),
            null,
            null,
            [.. port.Sheet.Flow!.Sweeps.Select(s => s.Sweep.Id), port.Sheet.Port.Id],
            $"Zero the lift again and repeat {Quantity.Lift(low[0].Lift)}: there a false zero costs most.",
            Suggestion(port, seat, low[0].Lift, low[^1].Lift));
    }

    private static double AgainstSoundSeats(Estimate seat) =>
        Poorer.Ratio(Math.Log(Math.Max(1e-6, seat.Value) / UsualSeat), Math.Sqrt(SeatSpread * SeatSpread + Math.Pow(seat.StandardUncertainty / seat.Value, 2)), 12);

    /// <summary>Null without two sisters swept at low lifts and at high ones.</summary>
    private static double? AgainstSisters(PortSurvey port, double lowLift)
    {
        if (FlowAgainstSisters.Of(port) is not { Sisters: > 1 } against || !against.Lifts.Any(l => l <= lowLift + 1e-6) || !against.Lifts.Any(l => l > 2 * lowLift))
        {
            return null;
        }

        // Low lifts over high ones: what the port's level is does not matter.
        double Low(IReadOnlyList<double> over) => over.Where((_, k) => against.Lifts[k] <= lowLift + 1e-6).Average() - over.Where((_, k) => against.Lifts[k] > 2 * lowLift).Average();
        var doubt = against.Lifts.Select((l, k) => (Lift: l, Family: against.ShapeFamily[k])).Where(l => l.Lift <= lowLift + 1e-6).Average(l => l.Family.Deviation);
        var family = Family.Of([.. against.SistersOver.Select(Low)], Math.Sqrt(BetweenSisters * BetweenSisters + doubt * doubt), FlowAgainstSisters.UsualShapeDegrees);
        return family.Ratio(Low(against.Over), PoorerThanSisters);
    }

    private static CutSuggestion? Suggestion(PortSurvey port, Estimate seat, double from, double to)
    {
        var gap = 1 - Math.Pow(Math.Min(1, seat.Value / GoodSeat), 2);
        return ExpectedGain.OfWindow(port, ExpectedGain.Judged(WonBack, WonBackDoubt, "seat recut").Scale(gap), from, to) is { } gain
            ? new CutSuggestion($"Recut the seat: top and bottom cut, seat to width, back cut on the valve. Port left alone.", gain, from, to, null)
            : null;
    }
}
