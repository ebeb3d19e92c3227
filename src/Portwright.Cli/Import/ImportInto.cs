using Portwright.Cli.Bench;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Cli.Import;

/// <summary>Where in the record a file's readings go, as the options of the command say it.</summary>
internal sealed record ImportInto(
    OpenRecord Record, string? Job, string? Head, string? Port, int? Cut, string? Done, string? Bench, string? Range,
    string TestPressure, FlowDirection? Direction, DateOnly? Date, UnitSystem Units)
{
    /// <summary>The entries of one file: sweeps and cuts that are new, and the readings. The same file again makes the same entries.</summary>
    /// <exception cref="Refusal">A port, cut, bench or range cannot be told.</exception>
    public IReadOnlyList<Entry> Entries(ImportPreview preview, DateTimeOffset now)
    {
        var job = Record.JobNamed(Job);
        var bench = TypedCheck.BenchNamed(Record.Ledger, Bench);
        var choices = preview.Sweeps.ToDictionary(s => s, s => Choice(job, s));
        var entries = SweepImport.Entries(preview, choices, bench, Record.Ledger, now, "", out var problems);
        return problems.Count == 0
            ? entries
            : throw new Refusal(string.Join(Environment.NewLine, problems.Select(p => p.Address.Length > 0 ? $"{p.Address}: {p.Text}" : p.Text)));
    }

    private ImportChoice? Choice(Kept<Job> job, (string Port, int? Cut) own)
    {
        if (Port is null && own.Port.Length == 0) throw new Refusal("The file names no port. Say --port-name \"intake 2\".");
        var port = Record.PortNamed(job, Port ?? PortWords.Plain(own.Port), Head);
        if (!TypedNumber.TryParse(TestPressure, Dimension.Pressure, Units, "--test-pressure", out var pressure, out var problem)) throw new Refusal(problem);
        var cuts = Record.Ledger.CutsOf(port.Id);
        var cut = own.Cut ?? Cut ?? (cuts.Count > 0 ? cuts[^1].Fact.Number : 0);
        if (Done is null && cut != 0 && cuts.All(c => c.Fact.Number != cut))
            throw new Refusal($"{port.Fact.Name} has no cut {cut} yet. Say what was done with --done \"bowl blended\", or record the cut in the workbench.");
        var way = Direction ?? (port.Fact.Kind == PortKind.Intake ? FlowDirection.Draw : FlowDirection.Blow);
        return new ImportChoice(port.Id, cut, Done ?? "", Range ?? "", pressure, way, Date);
    }
}
