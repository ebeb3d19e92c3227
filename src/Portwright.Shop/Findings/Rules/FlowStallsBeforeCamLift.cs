using Portwright.Physics.Uncertainty;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>The curve goes flat or falls before the lift the cam uses.</summary>
public sealed record FlowStallsBeforeCamLift() : FindingRule("stalls-before-cam-lift", "The flow stalls before the cam's lift")
{
    /// <summary>A step of lift that gains less than this share of the flow gives nothing any more; common practice, no source.</summary>
    public const double Flat = 0.01;

    public override Sentence Evidence => $"A sweep past half of the cam's net lift, the cam in the engine plan.";

    public override Sentence Test => $"Over the last step of lift under the cam's lift the flow gains less than 1 percent, with its probability, while the valve window still opens by more than that.";

    public override Sentence ElseExplains => $"The throat has taken over from the window, which is as it should be; a bench range at its end; air torn off (look for it).";

    public override Sentence LookFirst => $"Whether the throat takes over below this lift (the sheet says at which); a ball on the short side at this lift.";

    public override Sentence Cut => $"The place that chokes: pinch, short side or throat, by what balls and sections say. Not the seat.";

    public override Sentence Risk => $"Cutting for high lift an engine hardly uses; port volume grows and low-speed torque goes.";

    public override string Source => "common practice, no source";

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet is not { Flow: { } flow, Cam: { } cam })
        {
            yield break;
        }

        var points = flow.Curve.Points.Where(p => p.Lift > 0 && p.Lift <= cam.Lift * 1.02).ToList();
        if (points.Count < 3)
        {
            yield break;
        }

        var (before, last) = (points[^2], points[^1]);
        var step = Estimate.Combine((1, last.Flow), (-1, before.Flow));
        var opens = port.Sheet.Windows.FirstOrDefault(w => w.Lift == last.Lift)?.Window.Area / port.Sheet.Windows.FirstOrDefault(w => w.Lift == before.Lift)?.Window.Area - 1;
        if (opens is { } more && more < 2 * Flat)
        {
            // The window itself no longer opens: a port that does not stall could not gain either.
            yield break;
        }

        yield return new Finding(
            this,
            FindingKind.Port,
            $"From {Quantity.Lift(before.Lift)} to {Quantity.Lift(last.Lift)} of lift the flow changes by {Quantity.Flow(step)}; the cam lifts to {Quantity.Lift(cam.Lift)}.",
            Confidence.Below(step, Flat * before.Flow.Value),
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id)],
            $"A ball on the short side at {Quantity.Lift(last.Lift)} tells whether the air leaves there.");
    }
}
