using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Portwright.Cli.Bench;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Cli.Import;

/// <summary>Where in the record a file's readings go.</summary>
internal sealed partial record ImportInto(
    OpenRecord Record, string? Job, string? Head, string? Port, int? Cut, string? Done, string? Bench, string? Range,
    string TestPressure, FlowDirection? Direction, UnitSystem Units)
{
    [GeneratedRegex(@"^(?<head>.*?)\b(?<kind>in(take|let|t)?|i|ex(haust|h)?|e)[ ._#]*(?<cylinder>\d{1,2})$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PortWords();

    /// <summary>The entries of one file: sweeps and cuts that are new, and the readings. The same file again makes the same entries.</summary>
    /// <exception cref="Refusal">A port, cut, bench or range cannot be told.</exception>
    public IReadOnlyList<Entry> Entries(ImportPreview preview, DateTimeOffset now)
    {
        var job = Record.JobNamed(Job);
        var bench = TypedCheck.BenchNamed(Record.Ledger, Bench);
        var entries = new List<Entry>();
        foreach (var own in preview.Sweeps)
        {
            var port = Record.PortNamed(job, Port ?? Named(own.Port), Head);
            var readings = preview.Readings.Where(r => (r.Port, r.Cut) == own).ToList();
            var cut = CutOf(job, port, own.Cut ?? Cut, now, entries);
            var sweep = Made($"{preview.Table.FileHash}|{preview.Table.Sheet}|{own.Port}|{own.Cut}|{cut:N}");
            // Imported before: the same sweep, with the time it had then.
            var before = Record.Ledger.Find<Sweep>(sweep);
            var at = before?.Entry.At ?? now;
            CheckRanges(bench, readings);
            if (before is null) entries.Add(new Entry(Made($"entry|{sweep:N}"), sweep, job.Id, at, "", preview.Table.FileName, SweepOf(cut, bench, port, readings)));
            entries.AddRange(ImportedEntries.Of(preview, preview.Sweeps.ToDictionary(s => s, s => s == own ? new ImportTarget(sweep, job.Id) : null), at, "", Record.Ledger));
        }
        return entries;
    }

    private Sweep SweepOf(Guid cut, Kept<BenchCard> bench, Kept<Port> port, IReadOnlyList<ImportedReading> readings)
    {
        if (!TypedNumber.TryParse(TestPressure, Dimension.Pressure, Units, "--test-pressure", out var pressure, out var problem)) throw new Refusal(problem);
        var way = Direction ?? (port.Fact.Kind == PortKind.Intake ? FlowDirection.Draw : FlowDirection.Blow);
        var range = Range ?? readings.Select(r => r.Range).FirstOrDefault(r => r is { Length: > 0 }) ?? bench.Fact.Ranges[0].Name;
        return new Sweep(cut, bench.Id, way, range, pressure, [.. readings.Select(r => r.Lift).DistinctBy(l => l.Si(Dimension.Lift))]);
    }

    /// <summary>A reading in percent does not fit a range read in inches of water: said before anything is saved.</summary>
    private void CheckRanges(Kept<BenchCard> bench, IReadOnlyList<ImportedReading> readings)
    {
        if (bench.Fact.Ranges.Count == 0) throw new Refusal($"{bench.Fact.Name} has no range yet. Fill in the bench card at the workbench: portwright serve");
        foreach (var reading in readings)
        {
            var name = reading.Range is { Length: > 0 } said ? said : Range
                ?? (bench.Fact.Ranges.Count == 1 ? bench.Fact.Ranges[0].Name : throw new Refusal($"The file names no range. Say --range with one of: {Names(bench)}."));
            var range = bench.Fact.RangeNamed(name) ?? throw new Refusal($"{reading.Address}: {bench.Fact.Name} has no range \"{name}\". There are: {Names(bench)}.");
            if (MeterOf.ReadingDimension(range) != reading.Dimension)
                throw new Refusal($"{reading.Address}: the file has readings in {(reading.Reading.Unit.Length > 0 ? reading.Reading.Unit : "plain numbers")}, but range {range.Name} is read in {range.Unit}. Choose another --range, or name the unit in the column's heading.");
        }
    }

    private Guid CutOf(Kept<Job> job, Kept<Port> port, int? number, DateTimeOffset now, List<Entry> entries)
    {
        var cuts = Record.Ledger.CutsOf(port.Id);
        var known = number is null ? cuts.LastOrDefault() : cuts.FirstOrDefault(c => c.Fact.Number == number);
        if (known is not null) return known.Id;
        var missing = number ?? 0;
        if (Done is null && missing != 0) throw new Refusal($"{port.Fact.Name} has no cut {missing} yet. Say what was done with --done \"bowl blended\", or record the cut in the workbench.");
        var cut = Made($"cut|{port.Id:N}|{missing.ToString(CultureInfo.InvariantCulture)}");
        if (entries.All(e => e.Subject != cut))
            entries.Add(new Entry(Made($"entry|{cut:N}"), cut, job.Id, now, "", "import", new Cut(port.Id, missing, Done ?? "As received.", DateOnly.FromDateTime(now.DateTime))));
        return cut;
    }

    /// <summary>The port a file's heading means: <c>I2</c>, <c>Int. 2</c>, <c>exhaust 3</c>.</summary>
    private static string Named(string text)
    {
        if (text.Length == 0) throw new Refusal("The file names no port. Say --port-name \"intake 2\".");
        var words = PortWords().Match(text.Trim());
        if (!words.Success) return text;
        var kind = words.Groups["kind"].Value.StartsWith('i') || words.Groups["kind"].Value.StartsWith('I') ? "intake" : "exhaust";
        return $"{words.Groups["head"].Value}{kind} {int.Parse(words.Groups["cylinder"].Value, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture)}".Trim();
    }

    private static string Names(Kept<BenchCard> bench) => string.Join(", ", bench.Fact.Ranges.Select(r => r.Name));

    // RFC 9562 version 8: 122 bits of a SHA-256, the version and variant set.
    private static Guid Made(string from)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes("portwright import|" + from)).AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
