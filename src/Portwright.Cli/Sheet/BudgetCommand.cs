using System.CommandLine;
using Portwright.Cli.Layout;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Shop.Budgets;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Store.Runs;

namespace Portwright.Cli.Sheet;

/// <summary><c>portwright budget</c>: where the doubt of one number of a port sheet comes from, down to what was typed.</summary>
internal static class BudgetCommand
{
    public static Command Make()
    {
        var (port, job, head, cut) = (CommandWords.Port(), CommandWords.Job(), CommandWords.Head(), CommandWords.Cut());
        var which = new BudgetChoice();
        var every = new Option<bool>("--every") { Description = "every cause by itself; without it small ones stand together" };
        var (data, json, si) = (CommandWords.Data(), CommandWords.Json(), CommandWords.Si());
        var command = new Command("budget", "where the doubt of a number comes from, cause by cause, down to what was typed") { port, job, head, cut };
        foreach (var option in which.Options) command.Options.Add(option);
        command.Options.Add(every);
        command.Options.Add(data);
        command.Options.Add(json);
        command.Options.Add(si);
        command.Does(parsed =>
        {
            using var record = OpenRecord.At(parsed.GetValue(data));
            var units = parsed.GetValue(si) ? UnitSystem.Si : UnitSystem.UsCustomary;
            var of = record.PortNamed(record.JobNamed(parsed.GetValue(job)), parsed.GetValue(port), parsed.GetValue(head));
            if (record.Ledger.CutsOf(of.Id).Count == 0) throw new Refusal($"{of.Fact.Name} has no cut yet. Cut 0 is the port as received: record its first sweep in the workbench.");
            var reductions = new Reductions(record.Ledger);
            var known = PortAtCut.Of(reductions, of.Id, record.CutNumbered(of, parsed.GetValue(cut)), new KeptRuns(DataFolder.Resolve(parsed.GetValue(data))));
            var number = which.Of(parsed, known, units, Sister);
            (CutFlow?, string) Sister(string name)
            {
                var sister = record.PortNamed(known.Sheet.Job, name, null);
                var swept = record.Ledger.CutsOf(sister.Id).Select(reductions.Of).LastOrDefault(f => f is not null);
                return (swept, $"{record.Ledger.Get<Head>(sister.Fact.Head).Fact.Name} {sister.Fact.Name}");
            }

            RecordVerb.Warn(parsed, record);
            var asJson = parsed.GetValue(json);
            var document = DoubtSaid.Alone(known, number, asJson ? BudgetDetail.Whole : parsed.GetValue(every) ? BudgetDetail.Each : BudgetDetail.Main);
            if (asJson) DocumentJson.Write(parsed.InvocationConfiguration.Output, document, record.LeftOut);
            else new DocumentPage(parsed.InvocationConfiguration.Output, units).Write(document);
            return ExitCode.Done;
        });
        return command.Example(
            "portwright budget",
            "portwright budget \"head B intake 2\" --lift .400",
            "portwright budget \"head B intake 2\" --against-last --lift .400",
            "portwright budget \"head B intake 2\" --ball C/6 --json");
    }
}
