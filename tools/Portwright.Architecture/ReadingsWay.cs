namespace Portwright.Architecture;

/// <summary>A step on the way of one reading.</summary>
/// <param name="Step">In a porter's words.</param>
/// <param name="Carried">The type that holds it at this step.</param>
/// <param name="By">The type that makes it of what the step before held.</param>
public sealed record WayStep(string Step, string Carried, string By);

/// <summary>The way of one reading from the key pressed to the sheet. Where each type lives is looked up, so that the picture moves with the code.</summary>
public static class ReadingsWay
{
    public static IReadOnlyList<WayStep> Steps { get; } =
    [
        new("typed text", "Typed", "TypedNumber"),
        new("raw reading", "FlowReading", "Journal"),
        new("reduction", "ReducedSweep", "SweepReduction"),
        new("result with its doubt", "FlowCurve", "CutFlow"),
        new("finding", "Finding", "PortFindings"),
        new("port at its cut", "PortAtCut", "PortSurvey"),
        new("document", "Document", "PortDocument"),
    ];

    public static string Picture(SourceTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        const double wide = 158, high = 56, gap = 34, margin = 28;
        var drawing = new Drawing(Steps.Count * (wide + gap) - gap + 2 * margin, high + 2 * margin + 48, "The way of one reading: " + string.Join(", ", Steps.Select(s => s.Step)));
        var middle = margin + 24 + high / 2;
        for (var i = 0; i < Steps.Count; i++)
        {
            var x = margin + wide / 2 + i * (wide + gap);
            drawing.Words(x, margin + 8, Steps[i].Step, 15, Drawing.Blue, "middle", bold: true);
            drawing.Box(x, middle, wide, high, Steps[i].Carried, tree.PlaceOf(Steps[i].Carried));
            drawing.Words(x, middle + high / 2 + 20, "by " + Steps[i].By, 14, Drawing.Quiet, "middle");
            if (i > 0) drawing.Onward(new(x - wide / 2 - gap, middle), new(x - wide / 2, middle));
        }

        return drawing.ToString();
    }
}
