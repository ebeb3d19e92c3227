using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>How it was tested: set-up, direction, leak, calibration, the bench's morning.</summary>
internal static class BenchSaid
{
    public static Part? Of(PortAtCut port)
    {
        var sheet = port.Sheet;
        if (sheet.Bench is not { } bench)
            return new Part("bench", $"How it was tested", [new Paragraph("no-bench-card", $"No bench card yet.")]);
        List<NamedValue> rows = [new("bench", $"bench", Sentence.Plain(bench.Fact.Name))];
        foreach (var (sweep, i) in (sheet.Flow?.Sweeps ?? []).Select((s, i) => (s, i + 1)))
        {
            var of = sheet.Flow!.Sweeps.Count > 1 ? FormattableString.Invariant($"sweep {i}, ") : "";
            var fact = sweep.Sweep.Fact;
            var fitting = fact.Fitting;
            rows.Add(new($"set-up-{i}", $"{of}{sweep.Day}", $"{SetUp(fitting)}; test pressure {Quantity.Pressure(fact.TestPressure.Si(Dimension.Pressure))}"));
            rows.Add(new($"leak-{i}", $"{of}leak", sweep.LeakArea is { } leak ? (Sentence)$"{Quantity.Of(leak, Dimension.Area)} effective, taken off each reading" : $"no leak test was made; nothing was taken off"));
            foreach (var (range, factor) in sweep.Factors)
            {
                rows.Add(new($"range-{i}-{range.ToLowerInvariant()}", $"{of}range {range}", $"{Factor(range, factor)}{Assumed(sweep.Bench.Fact.RangeNamed(range))}"));
            }
        }

        rows.Add(new("morning", $"morning check", sheet.Morning is { } morning
            ? (Sentence)$"{morning.Mornings[^1].When.Day}{morning.Mornings[^1].When.Clock}: {Answer(morning.Answer)}. {Why(morning, sheet)}"
            : $"none made"));
        return new Part("bench", $"How it was tested", [new Values("bench", rows)]);
    }

    /// <summary>Standard air and what "at 28" means, for the title block.</summary>
    public static Sentence Air(PortSheet sheet)
    {
        var air = sheet.Flow?.Curve.Air ?? sheet.Bench?.Fact.StandardAir.Air();
        if (air is null) return Sentence.Empty;
        var restated = sheet.Flow?.Curve.RestatedAt ?? sheet.Bench!.Fact.RestatedAt;
        return sheet.Flow?.Curve.Direction switch
        {
            null => $"{FlowSaid.AirWords(air)}",
            Physics.TestPiece.FlowDirection.Blow => $"{FlowSaid.AirWords(air)}; blown at {Quantity.Pressure(restated)} over it",
            _ => $"{FlowSaid.AirWords(air)}; drawn at {Quantity.Pressure(restated)} under it",
        };
    }

    /// <summary>Which factor of which time: a calibration later on the same day changes nothing that was read before it.</summary>
    private static Sentence Factor(string range, MeterFactor factor)
    {
        if (factor.From is not { Fact.Date: var on }) return $"never calibrated on a check plate; the bench card's accuracy stands in";
        var since = factor.Since is { } later ? $"; calibrated again{later.Clock}, after these readings, which keep the factor they were read with" : "";
        var other = factor.From.Fact.Range.Equals(range, StringComparison.OrdinalIgnoreCase) ? "" : $" on range {factor.From.Fact.Range}, which reads the same instrument";
        return $"calibrated {on}{factor.When?.Clock ?? ""}{other}, factor {Quantity.Of(factor.OfTheScale, Dimension.Ratio)}{since}";
    }

    /// <summary>What of the range's scale nobody stated.</summary>
    private static string Assumed(Record.RangeCard? range) =>
        range is not null && AssumedScale.Words(range) is { Count: > 0 } words ? $"; assumed: {string.Join(", ", words)}" : "";

    private static Sentence SetUp(Record.Fitting fitting)
    {
        Sentence bore = fitting.BoreAdapter is { } d ? (Sentence)$"bore adapter {Quantity.Length(d)}" : $"no bore adapter noted";
        return $"{(fitting.Direction == Physics.TestPiece.FlowDirection.Draw ? "drawn" : "blown")}; {(fitting.Fitted.Length > 0 ? fitting.Fitted : "no entry radius nor pipe noted")}; {bore}; {(fitting.PlugSealed ? "plug sealed" : "plug open")}";
    }

    /// <summary>What the morning says; where it is told among the remarks, it is not told twice.</summary>
    private static Sentence Why(BenchMorning morning, PortSheet sheet) =>
        morning.Words.All(w => sheet.Remarks.Contains(Sentence.Plain(w))) ? (Sentence)$"Why stands among what to know about these figures." : $"{string.Join(" ", morning.Words)}";

    private static string Answer(ChartAnswer answer) => answer.ToString().ToLowerInvariant();
}
