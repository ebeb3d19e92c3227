using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings.Rules;

/// <summary>A throat that closes the window before the valve is open.</summary>
public sealed record ThroatTooSmall() : FindingRule("throat-too-small", "The throat is too small for the valve")
{
    /// <summary>Throat over valve that a cut aims at: the middle of the usual range.</summary>
    public static double Aim => ThroatShare.Usual.Limits.Middle;

    /// <summary>What of the loss that falls with the throat's area really comes back, and its doubt; judgement, no source.</summary>
    private const double ComesBack = 0.6, ComesBackDoubt = 0.25;

    public override Sentence Evidence => $"The valve head's diameter, and the throat: as a section where it was measured, else the diameter written down with the valve.";

    public override Sentence Test => $"Throat over valve diameter is under {ThroatShare.Usual.Low} percent; probability from the caliper's doubt, the limit itself taken as anywhere within {100 * ThroatShare.Usual.Vague:0} percent point of it alike.";

    public override Sentence ElseExplains => $"A throat left small on purpose for air speed at low lift and short cams; a section measured below the throat.";

    public override Sentence LookFirst => $"Whether the cam lifts past the lift where the throat takes over from the window: the sheet says at which. If it does not, the throat costs nothing.";

    public override Sentence Cut => $"Open the throat to about {Math.Floor(100 * Aim):0} percent of the valve and blend it into the bottom cut of the seat and the bowl.";

    public override Sentence Risk => $"Metal taken from the throat does not come back; past {ThroatShare.Usual.High} percent the seat loses its backing and low lift goes. Leave the seat itself alone.";

    public override string Source => $"Throat {ThroatShare.Usual.Said} of the valve: {ThroatShare.Usual.Source}. Where the throat takes over: Heywood, Internal Combustion Engine Fundamentals (1988), eq. 6.9";

    public override double Minutes => BenchMinutes.OneFigure;

    public override IEnumerable<Finding> Look(PortSurvey port)
    {
        if (ThroatShare.Of(port) is { } throat)
        {
            yield return new Finding(
                this, FindingKind.Port, throat.Words, Confidence.Below(throat.Share, ThroatShare.Usual.LowEdge), throat.Station?.Station, null, throat.Behind, throat.Next,
                Suggestion(port, throat));
        }
    }

    private static CutSuggestion? Suggestion(PortSurvey port, ThroatShare throat)
    {
        // The throat is the window only past the lift where it takes over: below that a larger one gains nothing.
        if (port.Sheet.ThroatTakesOver is not { } from || port.LiftThatCounts is not { } to || to < from)
        {
            return null;
        }

        var saved = 1 - Math.Pow(Math.Min(1, throat.Share.Value / Aim), 4);
        var share = ExpectedGain.Judged(ComesBack, ComesBackDoubt, "throat opened").Scale(saved);
        return ExpectedGain.OfWindow(port, share, from, to) is { } gain
            ? new CutSuggestion($"Open the throat to {Quantity.Length(Aim * throat.Valve)}, blended into seat and bowl.", gain, from, to, null)
            : null;
    }
}
