using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>One side of the cylinder flows too little for the other.</summary>
public sealed record ExhaustIntakeBalance() : FindingRule("exhaust-intake-balance", "Exhaust and intake are out of balance")
{
    /// <summary>Exhaust flow over intake flow, each at its cam's lift; common practice, no source.</summary>
    public const double Least = 0.65, Most = 0.80;

    public override Sentence Evidence => $"Every port of the cylinder swept up to its cam's lift; both cams in the engine plan.";

    public override Sentence Test => $"Exhaust flow over intake flow, each at its own cam's lift and at one test pressure, is under 65 or over 80 percent; probability from the doubt of both sweeps, less what they share.";

    public override Sentence ElseExplains => $"An exhaust tested without a pipe stub, or an intake without its radius at the entry: each costs several percent. Supercharging, nitrous oxide and long exhaust timing want another balance.";

    public override Sentence LookFirst => $"Whether both were tested with what the engine will have on them, and the range of the meter for the exhaust.";

    public override Sentence Cut => $"The weaker side, where its own findings point. The stronger side is left alone.";

    public override Sentence Risk => $"Work on the side that is already strong gains nothing at the crank and costs wall.";

    public override string Source => "Exhaust 65 to 80 percent of intake: common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet is not { Flow: { } own, Cam: { } cam })
        {
            yield break;
        }

        var flows = port.Mates.Append(new CylinderMate(port.Sheet.Port, own, cam.Lift))
            .Select(m => (m.Port, m.Flow, At: m.CamLift is { } lift ? m.Flow?.Curve.RestatedLike(own.Curve).At(lift) : null))
            .ToList();
        if (flows.Exists(f => f.At is not { Value: > 0 })
            || !flows.Exists(f => f.Port.Fact.Kind == PortKind.Intake) || !flows.Exists(f => f.Port.Fact.Kind == PortKind.Exhaust))
        {
            yield break;
        }

        Estimate Side(PortKind kind) => Estimate.Combine([.. flows.Where(f => f.Port.Fact.Kind == kind).Select(f => (1.0, f.At!))]);
        var (intake, exhaust) = (Side(PortKind.Intake), Side(PortKind.Exhaust));
        var share = Estimate.Ratio(exhaust, intake);
        var (low, high) = (Confidence.Below(share, Least), Confidence.Above(share, Most));
        var weak = low >= high ? PortKind.Exhaust : PortKind.Intake;
        yield return new Finding(
            this,
            FindingKind.Port,
            $"The exhaust of cylinder {port.Sheet.Port.Fact.Cylinder} flows {Quantity.Flow(exhaust)}, the intake {Quantity.Flow(intake)}, each at its cam's lift: {Quantity.Share(share.Value)}; usual is {Least * 100:0} to {Most * 100:0}. The {(weak == PortKind.Exhaust ? "exhaust" : "intake")} is the weaker side{(weak == port.Sheet.Port.Fact.Kind ? ": work here" : ", not this port")}.",
            Math.Max(low, high),
            null,
            null,
            [.. flows.SelectMany(f => f.Flow!.Sweeps).Select(s => s.Sweep.Id)],
            $"Sweep the {(weak == PortKind.Exhaust ? "exhaust, with the pipe it will have," : "intake, with its entry radius,")} once more in a set-up of its own.");
    }
}
