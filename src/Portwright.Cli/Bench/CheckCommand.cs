using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store;

namespace Portwright.Cli.Bench;

/// <summary><c>portwright check</c>: is the record sound, and with readings, is the bench fit to work this morning.</summary>
internal static class CheckCommand
{
    public static Command Make()
    {
        Option<string?> Number(string name, string words) => new(name) { Description = words, HelpName = "VALUE" };
        var bench = new Option<string?>("--bench") { Description = "the bench, by its name or part of it", HelpName = "NAME" };
        var plate = new Option<string?>("--plate") { Description = "the check plate read", HelpName = "NAME" };
        var range = new Option<string?>("--range") { Description = "the range it was read on", HelpName = "NAME" };
        var reading = Number("--reading", "what the plate reads");
        var leakRange = new Option<string?>("--leak-range") { Description = "the range the leak was read on (usual: as the plate)", HelpName = "NAME" };
        var leak = Number("--leak", "what the closed-off opening reads");
        var pressure = Number("--test-pressure", "test pressure of both (usual: 28 inH2O)");
        var (barometer, temperature, humidity) = (Number("--barometer", "air pressure at the bench"), Number("--temperature", "air temperature"), Number("--humidity", "relative humidity"));
        var yes = new Option<bool>("--yes") { Description = "save the morning check; without it only shown" };
        var (data, json) = (CommandWords.Data(), CommandWords.Json());
        var command = new Command("check", "is the record sound; with readings, is the bench fit to work this morning")
        {
            bench, plate, range, reading, leakRange, leak, pressure, barometer, temperature, humidity, yes, data, json,
        };
        return command.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            var health = record.Journal.Check();
            BenchMorning? morning = null;
            if (parsed.GetValue(reading) is not null || parsed.GetValue(leak) is not null)
            {
                var typed = new TypedCheck(
                    record, parsed.GetValue(bench), parsed.GetValue(plate), parsed.GetValue(range), parsed.GetValue(reading), parsed.GetValue(leakRange) ?? parsed.GetValue(range),
                    parsed.GetValue(leak), parsed.GetValue(pressure) ?? "28 inH2O", parsed.GetValue(barometer), parsed.GetValue(temperature), parsed.GetValue(humidity));
                morning = typed.Judge(DateTimeOffset.Now, parsed.GetValue(yes));
            }
            else if (record.Ledger.All<BenchCard>() is { Count: > 0 } cards)
            {
                morning = BenchMorning.Of(record.Ledger, cards[^1].Id, DateOnly.MaxValue);
            }

            var output = parsed.InvocationConfiguration.Output;
            if (parsed.GetValue(json)) Json(output, health, morning);
            else Text(new Page(output), health, morning, parsed.GetValue(reading) is not null, parsed.GetValue(yes));
            return !health.IsSound ? ExitCode.File : morning is { Answer: not ChartAnswer.Go } ? ExitCode.LookOrStop : ExitCode.Done;
        }).Example(
            "portwright check",
            "portwright check --plate 103 --range large --reading 75.8% --leak-range small --leak 0.2% --barometer 29.3inHg --temperature 68F --humidity 45%");
    }

    private static void Text(Page page, RecordHealth health, BenchMorning? morning, bool today, bool saved)
    {
        foreach (var sentence in health.Words) page.Paragraph(sentence);
        if (morning is null) return;
        var last = morning.Mornings[^1];
        page.Line();
        page.Line($"{(today ? "this morning" : "last morning check, " + last.Check.Fact.Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture))}: {morning.Answer.ToString().ToUpperInvariant()}");
        foreach (var (plate, range, ratio) in last.PlateRatio)
            page.Pair($"plate {plate}, range {range}", $"{Print.WithDoubt(ratio.Value, ratio.Expanded(), Dimension.Ratio, UnitSystem.Si)} of its certificate");
        if (last.LeakArea is { } leak) page.Pair("leak", Print.WithDoubt(leak.Value, leak.Expanded(), Dimension.Area, UnitSystem.UsCustomary));
        foreach (var sentence in morning.Words) page.Paragraph(sentence, 2, 2);
        if (today) page.Paragraph(saved ? "Saved." : "Not saved: say --yes to save it.");
    }

    private static void Json(TextWriter output, RecordHealth health, BenchMorning? morning) => JsonText.Write(output, json =>
    {
        json.WriteStartObject();
        json.WriteBoolean("sound", health.IsSound);
        json.WriteNumber("entries", health.Entries);
        json.WriteStartArray("record");
        foreach (var words in health.Words) json.WriteStringValue(words);
        json.WriteEndArray();
        if (morning is not null)
        {
            json.WriteString("answer", morning.Answer.ToString().ToLowerInvariant());
            json.WriteString("date", morning.Mornings[^1].Check.Fact.Date.ToString("O", CultureInfo.InvariantCulture));
            json.WriteStartArray("plates");
            foreach (var (plate, range, ratio) in morning.Mornings[^1].PlateRatio)
            {
                json.WriteStartObject();
                json.WriteString("plate", plate);
                json.WriteString("range", range);
                json.Number("ratio", ratio.Value);
                json.Number("standard_uncertainty_ratio", ratio.StandardUncertainty);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteStartArray("words");
            foreach (var words in morning.Words) json.WriteStringValue(words);
            json.WriteEndArray();
        }
        json.WriteEndObject();
    });
}
