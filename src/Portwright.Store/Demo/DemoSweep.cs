using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Store.Demo;

/// <summary>One sweep of <c>demo/sweeps.json</c>: what the porter noted beside the file of readings.</summary>
internal sealed record DemoSweep(
    string File,
    string Port,
    int? Cut,
    string Of,
    DateTimeOffset At,
    FlowDirection Direction,
    string Range,
    string TestPressure,
    string Fitted,
    string BoreAdapter,
    string Sealing,
    string SetUp,
    string Notes,
    string Barometer,
    string Temperature,
    string Humidity,
    string LeakRange,
    string Leak)
{
    /// <summary>Its entries: the sweep, the weather, the leak test, and the readings out of its file.</summary>
    public IEnumerable<Entry> Entries(Guid job, string hand)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"{Of} sweep of {At:yyyy-MM-dd HH:mm}");
        var sweep = DemoName.Subject(name);
        var preview = Preview();
        var own = preview.Sweeps.Single(s => s.Port.Equals(Port, StringComparison.OrdinalIgnoreCase) && s.Cut == Cut);
        var lifts = preview.Readings.Where(r => (r.Port, r.Cut) == own).Select(r => r.Lift).DistinctBy(l => l.Si(Dimension.Lift)).ToList();
        Entry Made(string what, Guid subject, Fact fact, int minutes) =>
            new(DemoName.Number($"{name}, {what}"), subject, job, At.AddMinutes(minutes), hand, "demo/sweeps.json", fact);

        yield return Made("sweep", sweep, new Sweep(
            DemoName.Subject(Of), DemoName.Subject("bench"), Direction, Range, Number(TestPressure, Dimension.Pressure), lifts,
            Fitted, Number(BoreAdapter, Dimension.Length).Si(Dimension.Length), PlugSealed: true, Sealing, SetUp, Notes), 0);
        yield return Made("weather", DemoName.Subject(name + ", weather"), new WeatherReading(
            sweep, Number(Barometer, Dimension.Barometer), PressureKind.Station, null, Number(Temperature, Dimension.Temperature), Number(Humidity, Dimension.Fraction)), 1);
        yield return Made("leak", DemoName.Subject(name + ", leak"), new LeakReading(
            sweep, LeakRange, Number(Leak, Dimension.Fraction), Number(TestPressure, Dimension.Pressure)), 2);
        var targets = preview.Sweeps.ToDictionary(s => s, s => s == own ? new ImportTarget(sweep, job) : null);
        foreach (var reading in ImportedEntries.Of(preview, targets, At.AddMinutes(3), hand)) yield return reading;
    }

    private ImportPreview Preview()
    {
        if (!TableFile.TryRead(DemoFiles.Read("sweeps/" + File), File, null, out var table, out var problem))
            throw new InvalidOperationException(problem);
        var preview = SweepTable.Guess(table, UnitSystem.UsCustomary);
        return preview.CanBeSaved ? preview : throw new InvalidOperationException($"{File}: {string.Join(' ', preview.Problems.Select(p => $"{p.Address}: {p.Text}"))}");
    }

    private Typed Number(string text, Dimension dimension) =>
        TypedNumber.TryParse(text, dimension, UnitSystem.UsCustomary, Of, out var typed, out var problem) ? typed : throw new InvalidOperationException(problem);
}

/// <summary>One line of <c>demo/bench.json</c> or <c>demo/job.json</c>.</summary>
/// <param name="Name">The entry's name; its subject's too, unless <paramref name="About"/> names another.</param>
/// <param name="Replaces">The name of the entry it corrects.</param>
internal sealed record DemoLine(string Name, DateTimeOffset At, JsonElement Fact, string? About = null, string? Replaces = null, string? Reason = null);

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true)]
[JsonSerializable(typeof(IReadOnlyList<DemoLine>))]
[JsonSerializable(typeof(IReadOnlyList<DemoSweep>))]
internal sealed partial class DemoJson : JsonSerializerContext;
