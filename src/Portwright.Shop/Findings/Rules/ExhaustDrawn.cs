using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>A port swept the other way round than its kind is, and than its sisters were.</summary>
public sealed record ExhaustDrawn() : FindingRule("exhaust-drawn", "It was swept the other way round than its sisters")
{
    /// <summary>Chance that one port alone among sisters swept the usual way was meant to be swept the other way; judgement.</summary>
    public const double Meant = 0.04;

    public override Sentence Evidence => $"The direction of this port's sweep and of its sisters'.";

    public override Sentence Test => $"An exhaust drawn, or an intake blown, while most of its sisters were swept the usual way. Where most were swept as it was, that is the shop's habit and only remarked.";

    public override Sentence ElseExplains => $"A sweep meant to show the port the other way round; a direction typed wrong.";

    public override Sentence LookFirst => $"The sweep's direction as typed.";

    public override Sentence Cut => $"Nothing on the word of this sweep: it is held against no sister.";

    public override Sentence Risk => $"The seat's edge passes air otherwise from the other side: several percent of flow that are no fault of the port.";

    public override string Source => "common practice, no source";

    public override double Minutes => BenchMinutes.OneFigure;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Sheet.Flow is not { } flow || flow.Fitting.Direction == Usual(port))
        {
            yield break;
        }

        FlowDirection[] sisters = [.. port.Sisters.Select(s => s.Sheet.Flow?.Fitting.Direction).OfType<FlowDirection>()];
        var usual = sisters.Count(d => d == Usual(port));
        if (2 * usual <= sisters.Length)
        {
            yield break;
        }

        var how = flow.Fitting.Direction == FlowDirection.Draw ? "drawn" : "blown";
        yield return new Finding(
            this,
            FindingKind.Measurement,
            $"This {(port.Sheet.Port.Fact.Kind == PortKind.Exhaust ? "exhaust" : "intake")} was {how}; {FormattableString.Invariant($"{usual} of its {sisters.Length}")} sisters were not.",
            1 - Meant,
            null,
            null,
            [.. flow.Sweeps.Select(s => s.Sweep.Id)],
            $"Correct the direction if it was typed wrong; else sweep it as its sisters were.");
    }

    private static FlowDirection Usual(PortSurvey port) => port.Sheet.Port.Fact.Kind == PortKind.Exhaust ? FlowDirection.Blow : FlowDirection.Draw;
}
