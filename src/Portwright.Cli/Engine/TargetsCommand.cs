using System.CommandLine;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Shop.Plan;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Targets;
using Portwright.Shop.Units;

namespace Portwright.Cli.Engine;

/// <summary><c>portwright engine targets</c>: what the engine asks of one port beside what the port shows.</summary>
internal static class TargetsCommand
{
    public static Command Make()
    {
        var options = new EngineOptions();
        var command = options.On(new Command("targets", "what the engine asks of one port, beside what was measured, each with its source"));
        return command.Does(parsed =>
        {
            using var record = options.Open(parsed);
            var units = options.Units(parsed);
            var port = options.Port(parsed, record);
            if (record.Ledger.CutsOf(port.Id).Count == 0) throw new Refusal($"{port.Fact.Name} has no cut yet. Cut 0 is the port as received: record its first sweep in the workbench.");
            var reductions = new Reductions(record.Ledger);
            var survey = PortSurvey.Of(reductions, port.Id, options.Cut(parsed, record, port));
            var (plan, problems) = PlanReading.Of(reductions, survey.Sheet.Job.Id);
            if (plan is null) throw new Refusal(string.Join('\n', [$"The plan of {survey.Sheet.Job.Fact.Name} is no engine yet.", .. problems.Select(p => p.Words.In(units))]));
            var rows = EngineTargets.Of(plan, survey);
            var output = parsed.InvocationConfiguration.Output;
            if (options.Json(parsed)) Json(output, survey, rows);
            else Text(new Page(output), survey, rows, units);
            return ExitCode.Done;
        }).Example("portwright engine targets", "portwright engine targets \"head B intake 2\" --cut 3");
    }

    private static void Text(Page page, PortSurvey survey, IReadOnlyList<EngineTarget> rows, UnitSystem units)
    {
        page.Title($"What the engine asks of {survey.Sheet.Head.Fact.Name} {survey.Sheet.Port.Fact.Name}, cut {survey.Sheet.Cut.Fact.Number}");
        foreach (var rule in rows.GroupBy(r => r.Rule))
        {
            page.Line();
            page.Paragraph($"{rule.Key.Name} ({rule.Key.BasisWords})");
            foreach (var row in rule)
            {
                string[] words = [row.WantedSaid.IsEmpty ? "" : "wanted " + row.WantedSaid.In(units), row.MeasuredSaid.IsEmpty ? "" : "measured " + row.MeasuredSaid.In(units)];
                var answer = row.AnswerWords;
                page.Pair(row.What.In(units), string.Join("; ", words.Where(w => w.Length > 0)) + (answer.Length > 0 ? ": " + answer : ""));
                if (!row.Words.IsEmpty) page.Paragraph(row.Words.In(units), 4);
            }

            if (rule.Key.Caution.Length > 0) page.Paragraph(rule.Key.Caution, 2);
        }
    }

    private static void Json(TextWriter output, PortSurvey survey, IReadOnlyList<EngineTarget> rows) => JsonText.Write(output, json =>
    {
        json.WriteStartObject();
        json.WriteString("job", survey.Sheet.Job.Fact.Name);
        json.WriteString("head", survey.Sheet.Head.Fact.Name);
        json.WriteString("port", survey.Sheet.Port.Fact.Name);
        json.WriteNumber("cut", survey.Sheet.Cut.Fact.Number);
        json.WriteStartArray("targets");
        foreach (var row in rows)
        {
            var unit = SiKey(row.Dimension);
            var suffix = unit.Length == 0 ? "" : "_" + unit;
            json.WriteStartObject();
            json.WriteString("rule", row.Rule.Name);
            json.WriteString("basis", row.Rule.BasisWords);
            json.WriteString("source", row.Rule.Source);
            json.WriteString("what", row.What.In(UnitSystem.Si));
            if (row.Wanted is { } wanted)
            {
                json.Number("wanted_from" + suffix, wanted.Low);
                json.Number("wanted_to" + suffix, wanted.High);
            }

            if (row.Measured is { } measured) json.Estimate("measured", unit, measured);
            if (row.AnswerWords.Length > 0) json.WriteString("answer", row.AnswerWords);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    });

    private static string SiKey(Dimension dimension) => dimension switch
    {
        Dimension.VolumeFlow => "m3_s",
        Dimension.Area => "m2",
        Dimension.Length => "m",
        Dimension.Volume => "m3",
        Dimension.RotationalSpeed => "rad_s",
        Dimension.Power => "w",
        Dimension.Speed => "m_s",
        Dimension.Angle => "rad",
        _ => "",
    };
}
