using System.CommandLine;
using Portwright.Cli.Terminal;
using Portwright.Shop.Record;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Record;

/// <summary><c>portwright jobs</c>: the jobs of the record, their ports and what to do next.</summary>
internal static class JobsCommand
{
    public static Command Make()
    {
        var name = new Argument<string?>("JOB") { Description = "one job, by its name or part of it; without it all", Arity = ArgumentArity.ZeroOrOne };
        var (data, json, si) = (CommandWords.Data(), CommandWords.Json(), CommandWords.Si());
        return new Command("jobs", "the jobs of the record, each with its ports and what to do next") { name, data, json, si }.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var wanted = parsed.GetValue(name);
            IReadOnlyList<Kept<Job>> jobs = wanted is null ? record.Ledger.All<Job>() : [record.JobNamed(wanted)];
            RecordVerb.Warn(parsed, record);
            var output = parsed.InvocationConfiguration.Output;
            var boards = jobs.Select(j => JobBoard.Of(record.Ledger, j.Id)).ToList();
            if (parsed.GetValue(json)) Json(output, boards);
            else if (boards.Count == 0) new Page(output).Paragraph("No job yet. Start one in the workbench (portwright serve), or see the demo shop (portwright demo).");
            else foreach (var board in boards) Text(new Page(output), board, units);
            return ExitCode.Done;
        }).Example("portwright jobs", "portwright jobs tamarack --json");
    }

    private static void Text(Page page, JobBoard board, UnitSystem units)
    {
        page.Title(board.Job.Fact.Customer.Length > 0 ? $"{board.Job.Fact.Name}, {board.Job.Fact.Customer}" : board.Job.Fact.Name);
        foreach (var head in board.Heads)
        {
            page.Line();
            page.Line(head.Head.Fact.Name);
            foreach (var port in head.Ports)
            {
                var flow = port.Flow is { } f && port.Lift is { } lift
                    ? $"{Print.WithDoubt(f.Value, f.Expanded(), Dimension.VolumeFlow, units).PadRight(18)} at {Print.Number(lift, Dimension.Lift, units)}"
                    : "";
                var against = port.AgainstLast is { } a ? $"  {VerdictWords.Of(a.Curves.WholeCurve)}" : "";
                page.Line($"  {port.Port.Fact.Name,-12}{port.State,-14}{flow}{against}");
            }
        }
        page.Line();
        page.Paragraph($"Next: {board.Next} {board.NextReason}");
        page.Line();
    }

    private static void Json(TextWriter output, IReadOnlyList<JobBoard> boards) => JsonText.Write(output, json =>
    {
        json.WriteStartArray();
        foreach (var board in boards)
        {
            json.WriteStartObject();
            json.WriteString("job", board.Job.Fact.Name);
            json.WriteString("customer", board.Job.Fact.Customer);
            json.WriteString("next", board.Next);
            json.WriteStartArray("ports");
            foreach (var (head, port) in board.Heads.SelectMany(h => h.Ports.Select(p => (h, p))))
            {
                json.WriteStartObject();
                json.WriteString("head", head.Head.Fact.Name);
                json.WriteString("port", port.Port.Fact.Name);
                json.WriteString("state", port.State);
                if (port.Cut is { } cut) json.WriteNumber("cut", cut.Fact.Number);
                if (port is { Flow: { } flow, Lift: { } lift })
                {
                    json.Number("lift_m", lift);
                    json.Number("flow_m3_s", flow.Value);
                    json.Number("standard_uncertainty_flow_m3_s", flow.StandardUncertainty);
                }
                if (port.AgainstLast is { } against) json.WriteString("against_last", VerdictWords.Key(against.Curves.WholeCurve.Verdict));
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    });
}
