using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>What was typed, behind a result.</summary>
public sealed partial class SourceWords
{
    /// <summary>Every number of the record a result rests on, with what its own last digit or scatter does to the result, in the record's order; the air of each sweep with its readings.</summary>
    public IReadOnlyList<(RawReading Reading, double? Amount)> Raw(Estimate of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var raw = new List<(RawReading Reading, double? Amount)>();
        var sweeps = new HashSet<Guid>();
        foreach (var cause in of.Contributions)
        {
            var name = SourceName.Read(cause.Source);
            if (name.Of is not { } subject) continue;
            if (name.Head is "resolution of reading" or "reading" or "resolution of calibration" or "section" or "burette" && Raw(name, subject) is { } one) raw.Add((one, cause.Amount));
            if (ledger.Find<FlowReading>(subject) is { Fact.Sweep: var sweep } && sweeps.Add(sweep)) raw.AddRange(Air(sweep).Select(a => (a, (double?)null)));
        }

        return [.. raw.OrderBy(r => r.Reading.Sequence)];
    }

    private RawReading? Raw(SourceName name, Guid of)
    {
        if (ledger.Find<FlowReading>(of) is { } flow && ledger.Find<Sweep>(flow.Fact.Sweep) is { } sweep)
            return new(flow.Sequence, Words(sweep), flow.Fact.Lift.Text.Trim(), AsTyped.Of(flow.Fact.Reading, flow.Fact.Range.Length > 0 ? flow.Fact.Range : sweep.Fact.Range), (flow.Fact.TestPressure ?? sweep.Fact.TestPressure).Text.Trim());
        if (ledger.Find<LeakReading>(of) is { } leak && ledger.Find<Sweep>(leak.Fact.Of) is { } leaking)
            return new(leak.Sequence, $"leak, {Words(leaking)}", "", AsTyped.Of(leak.Fact.Reading, leak.Fact.Range), leak.Fact.TestPressure.Text.Trim());
        if (ledger.Find<BallReading>(of) is { } ball && ledger.Find<BallCheck>(ball.Fact.Check) is { Fact.Setting: var held })
            return new(ball.Sequence, BallPlace(ball.Fact), held.Lift.Text.Trim(), AsTyped.Of(ball.Fact.Reading, held.Range), held.TestPressure.Text.Trim());
        if (ledger.Find<ProbeReading>(of) is { } probe && ledger.Find<Ring>(probe.Fact.Ring) is { Fact: var ring })
            return new(probe.Sequence, ProbePlace(probe.Fact, ring), ring.Setting.Lift.Text.Trim(), probe.Fact.Reading.Text.Trim(), ring.Setting.TestPressure.Text.Trim());
        if (ledger.Find<Calibration>(of) is { } calibration && PlateRead(name, calibration.Fact) is { } read)
            return new(calibration.Sequence, name.Rest == "leak" ? (Sentence)$"leak, {Words(calibration.Fact)}" : $"plate {read.Plate}, {Words(calibration.Fact)}", "", AsTyped.Of(read.Reading, read.Range), read.TestPressure.Text.Trim());
        if (ledger.Find<Section>(of) is { } section && SectionTyped(name, section.Fact) is { } typed)
            return new(section.Sequence, $"{name.Rest}, section {Letter(section.Fact.Station)}", "", typed, "");
        return ledger.Find<VolumeReading>(of) is { } volume ? new(volume.Sequence, $"burette", "", volume.Fact.Volume.Text.Trim(), "") : null;
    }

    private IEnumerable<RawReading> Air(Guid sweep) => ledger.WeatherOf(sweep).Select(w => new RawReading(
        w.Sequence, $"air of {Words(ledger.Get<Sweep>(sweep))}", "",
        string.Join(", ", new[] { w.Fact.Barometer, w.Fact.Elevation, w.Fact.Temperature, w.Fact.Humidity }.OfType<Typed>().Select(t => t.Text.Trim())), ""));

    private Sentence BallPlace(BallReading ball) => ball.Station is not { } station ? (Sentence)$"without the ball"
        : $"ball at {Letter(station)}, {(ball.Bearing is { } hours ? Bearings.Words(hours) : "middle")}";

    private Sentence ProbePlace(ProbeReading probe, Ring ring)
    {
        Sentence depth = probe.Depth is { } d ? (Sentence)$", {Quantity.Length(d.Si(Dimension.Length))} from the wall" : Sentence.Empty;
        return $"ring {Letter(ring.Station)}, {(probe.Bearing is { } hours ? Bearings.Words(hours) : "middle")}{depth}";
    }

    private static Sentence Words(Calibration fact) => $"calibration of range {fact.Range}, {fact.Date}";

    private static PlateReading? PlateRead(SourceName name, Calibration fact) => name.Rest == "leak" ? fact.Leak
        : name.Rest.Split(' ') is ["reading", var n] && int.TryParse(n, out var i) && i < fact.Readings.Count ? fact.Readings[i] : null;

    /// <summary>The text whose number the section's shape was made with.</summary>
    private static string? SectionTyped(SourceName name, Section section) =>
        Sections.SectionShape.Of(section, out _)?.Readings.FirstOrDefault(r => r.Name == name.Rest) is { } reading
            ? section.Readings.Concat(section.CornerRadii ?? []).FirstOrDefault(t => Math.Abs(t.Si(Dimension.Length) - reading.Value) < 1e-9)?.Text.Trim() : null;
}
