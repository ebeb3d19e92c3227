using Portwright.Physics.Uncertainty;
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

    /// <summary>Under this the seat is poor; common practice, no source.</summary>
    public const double PoorSeat = 0.8;

    /// <summary>At the highest lift the port is fine where it passes this much of the throat; common practice, no source.</summary>
    public const double FinePort = 0.55;

    /// <summary>What of the gap to a good seat a valve job wins back, and its doubt; judgement, no source.</summary>
    private const double WonBack = 0.6, WonBackDoubt = 0.25;

    public override Sentence Evidence => $"Valve and seat measured; a sweep with lifts up to a tenth of the valve's diameter, and one past a fifth of it.";

    public override Sentence Test => $"The mean discharge coefficient on the valve window, over the lifts up to a tenth of the valve's diameter, is under 0.80 (a good seat passes about 0.9), while at the highest lift the port passes more than 0.55 of its throat; the two probabilities multiply.";

    public override Sentence ElseExplains => $"A dial set to zero with the valve not quite shut, or a bent valve; seat width or angle written down wrong; a leak not taken off; a chamber wall too near the valve.";

    public override Sentence LookFirst => $"Zero the lift again and repeat the two lowest lifts; blue the seat; measure the seat's width all round; look how near the chamber wall stands to the valve's edge.";

    public override Sentence Cut => $"Seat and valve: a top and a bottom cut, a narrower seat, a back cut on the valve; lay the chamber wall back where it shrouds. Leave the port alone for low lift.";

    public override Sentence Risk => $"A seat cut too narrow or sunk too deep runs hot and short; every sinking changes chamber volume and spring height.";

    public override string Source => "Coefficient on the minimum area at low lift about 0.9: Heywood, Internal Combustion Engine Fundamentals (1988), section 6.3.2. Limits: common practice, no source";

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
            $"Up to {Quantity.Lift(low[^1].Lift)} of lift the port passes {seat.Value:0.00} of the valve window; a good seat passes about {GoodSeat:0.0}. At {Quantity.Lift(high.Lift)} it passes {high.OfThroat.Value:0.00} of the throat: the port is not what holds it back.",
            Confidence.Below(seat, PoorSeat) * Confidence.Above(high.OfThroat, FinePort),
            null,
            null,
            [.. port.Sheet.Flow!.Sweeps.Select(s => s.Sweep.Id), port.Sheet.Port.Id],
            $"Zero the lift again and repeat {Quantity.Lift(low[0].Lift)}: there a false zero costs most.",
            Suggestion(port, seat, low[0].Lift, low[^1].Lift));
    }

    private static CutSuggestion? Suggestion(PortSurvey port, Estimate seat, double from, double to)
    {
        var gap = 1 - Math.Pow(Math.Min(1, seat.Value / GoodSeat), 2);
        return ExpectedGain.OfWindow(port, ExpectedGain.Judged(WonBack, WonBackDoubt, "seat recut").Scale(gap), from, to) is { } gain
            ? new CutSuggestion($"Recut the seat: top and bottom cut, seat to width, back cut on the valve. Port left alone.", gain, from, to, null)
            : null;
    }
}
