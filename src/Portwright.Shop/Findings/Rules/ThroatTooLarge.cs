using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>A throat so large that the seat has nothing left to turn the air on.</summary>
public sealed record ThroatTooLarge() : FindingRule("throat-too-large", "The throat is too large for the valve")
{
    public override Sentence Evidence => $"The valve head's diameter, and the throat: as a section where it was measured, else the diameter written down with the valve.";

    public override Sentence Test => $"Throat over valve diameter is above {ThroatShare.Usual.High} percent; probability from the caliper's doubt, the limit itself taken as anywhere within {100 * ThroatShare.Usual.Vague:0} percent point of it alike.";

    public override Sentence ElseExplains => $"A narrow seat cut on purpose for high lift only; a throat measured in the bowl under it; a valve written down before it was cut.";

    public override Sentence LookFirst => $"Put the caliper on the throat right under the bottom cut of the seat, across and along the port, and on the valve.";

    public override Sentence Cut => $"Nothing: metal that is gone does not come back. A larger valve, or a new seat insert with a smaller throat.";

    public override Sentence Risk => $"A seat with no throat under it loses low lift and lets air back at overlap; the seat's ring loses its backing.";

    public override string Source => $"Throat {ThroatShare.Usual.Said} of the valve: {ThroatShare.Usual.Source}";

    public override double Minutes => BenchMinutes.OneFigure;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        if (ThroatShare.Of(port) is { } throat)
        {
            yield return new Finding(
                this, FindingKind.Port, throat.Words, Confidence.Above(throat.Share, ThroatShare.Usual.HighEdge), throat.Station?.Station, null, throat.Behind, throat.Next);
        }
    }
}
