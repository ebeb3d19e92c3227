using System.Globalization;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>A named value, as in a title block.</summary>
public sealed record SheetField(string Name, string Value);

/// <summary>A heading with sentences under it.</summary>
/// <param name="Caution">True for what can hurt someone or ruin the casting.</param>
public sealed record SheetSection(string Heading, IReadOnlyList<string> Sentences, bool Caution = false);

/// <summary>A port sheet in words: what paper and page both print, so that they cannot differ.</summary>
/// <param name="Where">Job and head.</param>
/// <param name="What">Port and cut.</param>
/// <param name="Headline">The results in one glance.</param>
/// <param name="Rows">One a lift, lifts rising.</param>
/// <param name="Sections">Comparison, window, bench, cautions, remarks.</param>
/// <param name="TitleBlock">Job, head, port, cut, date, standard air, bench, hand, program.</param>
public sealed record SheetContent(
    string Where,
    string What,
    IReadOnlyList<SheetField> Headline,
    IReadOnlyList<SheetRow> Rows,
    IReadOnlyList<SheetSection> Sections,
    IReadOnlyList<SheetField> TitleBlock,
    UnitSystem Units)
{
    /// <summary>The program and its version, as printed in the title block.</summary>
    public static string Program { get; } = $"Portwright {typeof(SheetContent).Assembly.GetName().Version?.ToString(3)}";

    /// <summary>Everything the sheet says.</summary>
    public static SheetContent Of(PortSheet sheet, UnitSystem units = UnitSystem.UsCustomary)
    {
        var sweep = sheet.Flow?.Sweeps[^1];
        var day = sweep is null ? sheet.Cut.Fact.Date : DateOnly.FromDateTime(sweep.Sweep.Entry.At.DateTime);
        var hand = sweep?.Sweep.Entry.Hand is { Length: > 0 } of ? of : sheet.Cut.Entry.Hand;
        var block = new List<SheetField>
        {
            new("job", sheet.Job.Fact.Name),
            new("head", sheet.Head.Fact.Name),
            new("port", sheet.Port.Fact.Name),
            new("cut", sheet.Cut.Fact.Number.ToString(CultureInfo.InvariantCulture)),
            new("date", day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            new("standard air", StandardAirWords(sheet, units)),
            new("bench", sheet.Bench?.Fact.Name ?? "no bench card"),
            new("hand", hand.Length > 0 ? hand : Print.Nothing),
            new("program", Program),
        };
        return new SheetContent(
            $"{sheet.Job.Fact.Name}, {sheet.Head.Fact.Name}",
            $"{sheet.Port.Fact.Name}, cut {sheet.Cut.Fact.Number}",
            Headlines(sheet, units),
            SheetRow.Of(sheet, units),
            [.. SheetSections.Of(sheet, units)],
            block,
            units);
    }

    private static List<SheetField> Headlines(PortSheet sheet, UnitSystem units)
    {
        var lines = new List<SheetField>();
        if (sheet.Flow is not { } flow) return lines;
        if (sheet.Cam is { Flow: { } atCam } cam)
            lines.Add(new($"at the cam's lift {Print.Number(cam.Lift, Dimension.Lift, units)}", Flow(atCam, units)));
        else
            lines.Add(new($"at {Print.Number(flow.Curve.HighestLift, Dimension.Lift, units)}, the highest tested", Flow(flow.Curve.Points[^1].Flow, units)));
        if (sheet.Mean is { } mean)
            lines.Add(new($"mean from {Print.Number(mean.From, Dimension.Lift, units)} to {Print.Number(mean.To, Dimension.Lift, units)}", Flow(mean.Flow, units)));
        if (sheet.AgainstLast is { } last)
        {
            var d = last.Curves.WholeCurve;
            lines.Add(new($"whole curve against cut {last.Last.Cut.Fact.Number}", $"{FlowReadout.Difference(d, units)} {Print.UnitName(Dimension.VolumeFlow, units)}, {VerdictMark.Words(d.Verdict, d.Of.Value)}"));
        }

        return lines;
    }

    internal static string Flow(Estimate flow, UnitSystem units) => Print.WithDoubt(flow.Value, flow.Expanded(), Dimension.VolumeFlow, units);

    private static string StandardAirWords(PortSheet sheet, UnitSystem units)
    {
        var air = sheet.Flow?.Curve.Air ?? sheet.Bench?.Fact.StandardAir.Air();
        if (air is null) return Print.Nothing;
        var restated = sheet.Flow?.Curve.RestatedAt ?? sheet.Bench?.Fact.RestatedAt;
        var words = $"{Print.Number(air.Pressure, Dimension.Barometer, units)}, {Print.Number(air.Temperature, Dimension.Temperature, units)}, "
            + (air.RelativeHumidity > 0 ? $"{Print.Number(air.RelativeHumidity, Dimension.Fraction, units, 0)} RH" : "dry");
        var way = sheet.Flow?.Curve.Direction == FlowDirection.Blow ? "blown" : "drawn";
        return restated is { } p ? $"{words}; {way} at {Print.Number(p, Dimension.Pressure, units)}" : words;
    }
}
