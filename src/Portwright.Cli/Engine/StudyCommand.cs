using System.CommandLine;
using System.Globalization;
using System.Text;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Cli.Engine;

/// <summary><c>portwright engine study</c>: a few things varied together, every combination run.</summary>
internal static class StudyCommand
{
    /// <summary>Runs a study may be made of.</summary>
    private const int MostRuns = 20_000;

    /// <summary>Rows printed; the rest is in the JSON.</summary>
    private const int MostRows = 40;

    public static Command Make()
    {
        var options = new EngineOptions();
        var axes = StudyOption.All.Select(a => (Axis: a, Option: a.Make())).ToList();
        var command = options.On(new Command("study", "lengths, sections, cam timing, valves varied together: every combination run over the range"), [.. axes.Select(a => (Option)a.Option)]);
        return command.Does(parsed =>
        {
            var units = options.Units(parsed);
            var varied = axes.Where(a => parsed.GetValue(a.Option) is not null).Select(a => (a.Axis, Variation: a.Axis.Read(parsed.GetValue(a.Option)!, units))).ToList();
            if (varied.Count == 0) throw new Refusal($"Nothing is varied. Name one or more of {string.Join(", ", StudyOption.All.Select(a => "--" + a.Name))}. Example: portwright engine study --intake-length=\"-1in,0,1in\"");
            using var record = options.Open(parsed);
            var asked = options.Read(parsed, record);
            var study = new Study(asked.Question.Design, asked.Question.Range, [.. varied.Select(v => v.Variation)]);
            var runs = (long)study.Count * study.Range.TurnsASecond.Count;
            if (runs > MostRuns) throw new Refusal(string.Create(CultureInfo.InvariantCulture, $"{study.Count:N0} combinations make {runs:N0} runs, more than {MostRuns:N0}. Vary fewer things, or each by fewer values."));
            foreach (var (axis, variation) in varied) Shortens(axis, variation, study.Design, units);
            IReadOnlyList<EngineTask> asIs = [.. study.Range.Tasks(study.Design, Settling.Usual)], tasks = study.Tasks();
            var points = EngineRunning.Run([.. asIs, .. tasks], options.Kept(parsed), parsed.InvocationConfiguration.Error);
            var before = study.Range.Mean([.. points.Take(asIs.Count).Select(p => p.Torque)]);
            var found = study.From([.. points.Skip(asIs.Count)]);
            var output = parsed.InvocationConfiguration.Output;
            IReadOnlyList<StudyOption> columns = [.. varied.Select(v => v.Axis)];
            if (options.Json(parsed)) Json(output, asked, columns, before, found);
            else Text(new Page(output), asked, columns, before, found);
            return ExitCode.Done;
        }).Example(
            "portwright engine study --intake-length=\"-1in,0,1in\" --intake-later=\"-4,0,4\"",
            "portwright engine study --exhaust-valve=\"0,2,4\" --compression=\"0,0.5\" --json");
    }

    /// <summary>A pipe can lose no more than it has.</summary>
    private static void Shortens(StudyOption axis, Variation variation, EngineDesign design, UnitSystem units)
    {
        if (axis.Axis is not (StudyAxis.IntakeLength or StudyAxis.ExhaustLength)) return;
        var stations = (axis.Axis == StudyAxis.IntakeLength ? design.Intake : design.Exhaust).Tract.Stations;
        var pipe = stations[^1].Distance - stations[^2].Distance;
        if (variation.Values.Min() <= -pipe)
            throw new Refusal($"--{axis.Name} {axis.Show(variation.Values.Min(), units)}: the {axis.Column} is only {Print.Number(pipe, Dimension.Length, units, 2)} long. Take less off it.");
    }

    private static void Text(Page page, EngineAsked asked, IReadOnlyList<StudyOption> columns, double before, IReadOnlyList<StudyResult> found)
    {
        var units = asked.Units;
        var (torque, power, peak) = (found.MaxBy(r => r.Torque)!, found.MaxBy(r => r.Power)!, found.MaxBy(r => r.BestPower)!);
        page.Title($"Study of {asked.Job.Fact.Name}");
        page.Paragraph($"Most torque on average over the range with {Said(columns, torque, units)}: {Print.Number(torque.Torque, Dimension.Torque, units)}, {Less(torque.Torque - before, units)} {Print.UnitName(Dimension.Torque, units)} against the engine as it is. Calculated, all else left alike.");
        page.Line();
        var head = new StringBuilder("  ");
        foreach (var c in columns) head.Append(c.Column.PadRight(Width(columns)));
        page.Line(head.Append($"{"torque, " + Print.UnitName(Dimension.Torque, units),14}{"less as is",12}{"power, " + Print.UnitName(Dimension.Power, units),12}{"best power",12}").ToString());
        var shown = found.Count <= MostRows ? found : [.. found.OrderByDescending(r => r.Torque).Take(MostRows)];
        foreach (var r in shown)
        {
            var line = new StringBuilder("  ");
            for (var i = 0; i < columns.Count; i++) line.Append(columns[i].Show(r.Values[i], units).PadRight(Width(columns)));
            line.Append($"{Print.Bare(r.Torque, Dimension.Torque, units),14}{Less(r.Torque - before, units),12}{Print.Bare(r.Power, Dimension.Power, units),12}{Print.Bare(r.BestPower, Dimension.Power, units),12} ");
            line.Append(r == torque ? "T" : "").Append(r == power ? "P" : "").Append(r == peak ? "B" : "");
            page.Line(line.ToString());
        }

        if (shown.Count < found.Count) page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"The {shown.Count} with the most torque of {found.Count:N0}; --json prints all."), 2);
        page.Paragraph("(T most torque, P most power, both on average over the range with the plan's weights; B highest power at any speed of it.)", 2);
        page.Paragraph(EngineAnswer.NotKnown[0].In(units));
    }

    /// <summary>Columns of what is varied share what the results leave of 80.</summary>
    private static int Width(IReadOnlyList<StudyOption> columns) => columns.Count <= 2 ? 12 : Math.Max(8, 24 / columns.Count);

    private static string Said(IReadOnlyList<StudyOption> columns, StudyResult result, UnitSystem units) =>
        string.Join(", ", columns.Select((c, i) => $"{c.Name.Replace('-', ' ')} {c.Show(result.Values[i], units)}"));

    private static string Less(double torque, UnitSystem units)
    {
        var words = Print.Bare(torque, Dimension.Torque, units, 1);
        return words.StartsWith('-') ? words : "+" + words;
    }

    private static void Json(TextWriter output, EngineAsked asked, IReadOnlyList<StudyOption> columns, double before, IReadOnlyList<StudyResult> found) => JsonText.Write(output, json =>
    {
        json.WriteStartObject();
        EngineJson.Ports(json, asked.Job, asked.Question);
        json.Number("mean_torque_as_it_is_n_m", before);
        json.WriteStartArray("combinations");
        foreach (var r in found)
        {
            json.WriteStartObject();
            for (var i = 0; i < columns.Count; i++) json.Number(columns[i].Key, r.Values[i]);
            json.Number("mean_torque_n_m", r.Torque);
            json.Number("mean_power_w", r.Power);
            json.Number("best_power_w", r.BestPower);
            json.WriteBoolean("settled", r.Points.All(p => p.IsSettled));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        EngineJson.Strings(json, "not_known", EngineAnswer.NotKnown);
        json.WriteEndObject();
    });
}
