using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Shop.Bench;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Cli.Bench;

/// <summary>A morning check as typed on the command line.</summary>
internal sealed record TypedCheck(
    OpenRecord Record, string? Bench, string? Plate, string? Range, string? Reading, string? LeakRange, string? Leak,
    string TestPressure, string? Barometer, string? Temperature, string? Humidity)
{
    /// <summary>Puts it on the chart, and into the record where asked.</summary>
    /// <exception cref="Refusal">Something is missing or cannot be read.</exception>
    public BenchMorning Judge(DateTimeOffset at, bool save)
    {
        var card = BenchNamed(Record.Ledger, Bench);
        var air = new RoomAir(
            Number(Barometer ?? throw Missing("--barometer"), Dimension.Barometer, "--barometer"),
            Number(Temperature ?? throw Missing("--temperature"), Dimension.Temperature, "--temperature"),
            Humidity is null ? null : Moist(Humidity));
        var check = new MorningCheck(
            card.Id, DateOnly.FromDateTime(at.DateTime), air,
            Leak is null ? null : Read(card, "closed off", LeakRange, Leak, "--leak"),
            Reading is null ? [] : [Read(card, PlateOn(card), Range, Reading, "--reading")]);
        var entry = Entry.About(Guid.CreateVersion7(at), null, check, at);
        if (save)
        {
            Record.Journal.Append(entry);
            Record.Read();
        }
        var ledger = save ? Record.Ledger : Record.Ledger.With([entry]);
        return BenchMorning.Of(ledger, card.Id, check.Date)!;
    }

    /// <summary>The bench of that name, or the only one.</summary>
    public static Kept<BenchCard> BenchNamed(Ledger ledger, string? name)
    {
        var cards = ledger.All<BenchCard>().Where(c => name is null || c.Fact.Name.Contains(name, StringComparison.OrdinalIgnoreCase)).ToList();
        return cards.Count == 1 ? cards[0]
            : throw new Refusal(cards.Count == 0
                ? name is null ? "The record has no bench card yet. Fill one in at the workbench: portwright serve" : $"No bench is named \"{name}\"."
                : $"Which bench? Say --bench with one of: {string.Join(", ", cards.Select(c => c.Fact.Name))}.");
    }

    private string PlateOn(Kept<BenchCard> card)
    {
        var name = Plate ?? throw Missing("--plate");
        return card.Fact.Plates.FirstOrDefault(p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase))?.Name
            ?? throw new Refusal($"--plate \"{name}\" is not on the bench card. There are: {string.Join(", ", card.Fact.Plates.Select(p => p.Name))}.");
    }

    private PlateReading Read(Kept<BenchCard> card, string plate, string? range, string reading, string field)
    {
        var on = card.Fact.RangeNamed(range ?? throw Missing(field == "--leak" ? "--leak-range" : "--range"))
            ?? throw new Refusal($"Range \"{range}\" is not on the bench card. There are: {string.Join(", ", card.Fact.Ranges.Select(r => r.Name))}.");
        return new PlateReading(plate, on.Name, Number(reading, MeterOf.ReadingDimension(on), field), Number(TestPressure, Dimension.Pressure, "--test-pressure"));
    }

    private static Refusal Missing(string option) => new($"{option} is missing. Example: portwright check --plate 103 --range large --reading 75.8% --barometer 29.3inHg --temperature 68F");

    private static Typed Moist(string text)
    {
        var humidity = Number(text, Dimension.Fraction, "--humidity");
        return EntryJudge.Objection(EnteredRoom.Humidity, "--humidity", text, UnitSystem.UsCustomary, Surroundings.None) is { } question ? throw new Refusal(question) : humidity;
    }

    private static Typed Number(string text, Dimension dimension, string field) =>
        TypedNumber.TryParse(text, dimension, UnitSystem.UsCustomary, field, out var typed, out var problem) ? typed : throw new Refusal(problem);
}
