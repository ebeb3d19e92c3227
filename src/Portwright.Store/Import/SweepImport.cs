using System.Globalization;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>Where one port and cut of a file goes.</summary>
/// <param name="Port">The port in the record.</param>
/// <param name="Cut">The number of the cut; it is made where the port has none of that number.</param>
/// <param name="Done">What was done at a cut that is made; cut 0 is the port as received.</param>
/// <param name="Range">The range read, where the file names none.</param>
/// <param name="TestPressure">Where the file names none.</param>
/// <param name="Date">The day of the test, which says which calibration holds; null: the day of the import.</param>
public sealed record ImportChoice(Guid Port, int Cut, string Done, string Range, Typed TestPressure, FlowDirection Direction, DateOnly? Date = null);

/// <summary>
/// A confirmed preview as the entries it makes: cuts and sweeps that are new, and every reading. Whatever door a file comes through, this
/// is where it becomes the record. Numbers are worked out from file and place: the same file again finds what it became, and what of that is
/// hidden is shown again.
/// </summary>
public static class SweepImport
{
    /// <param name="choices">For every port and cut of <see cref="ImportPreview.Sweeps"/>; null leaves its readings out.</param>
    /// <param name="problems">What keeps the file from being saved; none where entries are returned.</param>
    /// <exception cref="InvalidOperationException">The preview has problems of its own.</exception>
    public static IReadOnlyList<Entry> Entries(
        ImportPreview preview,
        IReadOnlyDictionary<(string Port, int? Cut), ImportChoice?> choices,
        Kept<BenchCard> bench,
        Ledger record,
        DateTimeOffset now,
        string hand,
        out IReadOnlyList<ImportProblem> problems)
    {
        ArgumentNullException.ThrowIfNull(preview);
        ArgumentNullException.ThrowIfNull(choices);
        ArgumentNullException.ThrowIfNull(bench);
        ArgumentNullException.ThrowIfNull(record);
        if (!preview.CanBeSaved)
        {
            throw new InvalidOperationException("Only a preview without problems and with readings is saved.");
        }

        var wrong = new List<ImportProblem>();
        var entries = new List<Entry>();
        foreach (var own in preview.Sweeps)
        {
            if (choices[own] is not { } choice)
            {
                continue;
            }

            var readings = preview.Readings.Where(r => (r.Port, r.Cut) == own).ToList();
            wrong.AddRange(readings.Select(r => Unfit(r, choice, bench)).OfType<ImportProblem>());
            if (wrong.Count > 0)
            {
                continue;
            }

            var port = record.Get<Port>(choice.Port);
            var job = port.Entry.Job ?? throw new KeyNotFoundException("The port belongs to no job.");
            var file = $"import|{preview.Table.FileHash}|{preview.Table.Sheet}|{own.Port}|{own.Cut}";
            var cut = CutOf(record, port, job, choice, file, preview.Table.FileName, now, hand, entries);
            var asked = SweepOf(cut, bench, choice, readings);
            var earlier = EarlierImport.Find(file, asked, readings.Exists(r => r.TestPressure is null), preview.Table.FileName, record);
            wrong.AddRange(earlier.Problems);
            var sweep = earlier.Sweep;
            if (!earlier.InRecord)
            {
                entries.Add(new Entry(NamedNumber.Of($"entry|{sweep:N}"), sweep, job, now, hand, preview.Table.FileName, asked));
            }
            else if (ImportedAgain.Show(record, sweep, now, hand, preview.Table.FileName) is { } shown)
            {
                entries.Add(shown);
            }

            var target = new ImportTarget(sweep, job, choice.Range);
            entries.AddRange(ImportedEntries.Of(preview, preview.Sweeps.ToDictionary(s => s, s => s == own ? target : null), now, hand, record));
        }

        problems = wrong;
        return wrong.Count > 0 ? [] : entries;
    }

    private static Sweep SweepOf(Guid cut, Kept<BenchCard> bench, ImportChoice choice, List<ImportedReading> readings)
    {
        var range = choice.Range.Length > 0 ? choice.Range : readings.Select(r => r.Range).FirstOrDefault(r => r is { Length: > 0 }) ?? bench.Fact.Ranges[0].Name;
        return new Sweep(
            cut, bench.Id, choice.Direction, range, choice.TestPressure, [.. readings.Select(r => r.Lift).DistinctBy(l => l.Si(Dimension.Lift))],
            Date: choice.Date);
    }

    /// <summary>A reading in percent does not fit a range read in inches of water: said before anything is saved.</summary>
    private static ImportProblem? Unfit(ImportedReading reading, ImportChoice choice, Kept<BenchCard> bench)
    {
        var names = string.Join(", ", bench.Fact.Ranges.Select(r => r.Name));
        if (bench.Fact.Ranges.Count == 0)
        {
            return new ImportProblem("", $"{bench.Fact.Name} has no range yet. Fill in the bench card first.");
        }

        var name = reading.Range is { Length: > 0 } said ? said : choice.Range.Length > 0 ? choice.Range : bench.Fact.Ranges.Count == 1 ? bench.Fact.Ranges[0].Name : "";
        if (name.Length == 0)
        {
            return new ImportProblem(reading.Address, $"The file names no range. Choose one of: {names}.");
        }

        if (bench.Fact.RangeNamed(name) is not { } range)
        {
            return new ImportProblem(reading.Address, $"{bench.Fact.Name} has no range \"{name}\". There are: {names}.");
        }

        if (ChokedPressure.Words(reading.TestPressure ?? choice.TestPressure, choice.Direction, bench.Fact.StandardAir.Air().State) is { } choked)
        {
            return new ImportProblem(reading.Address, choked);
        }

        return MeterOf.ReadingDimension(range) == reading.Dimension
            ? null
            : new ImportProblem(
                reading.Address,
                $"The file has readings in {(reading.Reading.Unit.Length > 0 ? reading.Reading.Unit : "plain numbers")}, but range {range.Name} is read in {range.Unit}. Choose another range, or name the unit in the column's heading.");
    }

    /// <summary>The port's cut of that number: as it stands, or shown again where it was made by an import or held this file, or new.</summary>
    private static Guid CutOf(
        Ledger record, Kept<Port> port, Guid job, ImportChoice choice, string file, string fileName, DateTimeOffset now, string hand, List<Entry> entries)
    {
        if (record.CutsOf(port.Id).FirstOrDefault(c => c.Fact.Number == choice.Cut) is { } known)
        {
            return known.Id;
        }

        var made = NamedNumber.Of(string.Create(CultureInfo.InvariantCulture, $"cut|{port.Id:N}|{choice.Cut}"));
        var hidden = record.Entries.Where(e => e.Fact is Cut).Select(e => e.Subject).Distinct().Select(record.Get<Cut>)
            .Where(c => c.Fact.Port == port.Id && c.Fact.Number == choice.Cut)
            .LastOrDefault(c => c.Id == made || EarlierImport.Of(file, c.Id, record).Count > 0);
        var cut = hidden?.Id ?? made;
        if (!entries.TrueForAll(e => e.Subject != cut))
        {
            return cut;
        }

        if (hidden is not null)
        {
            entries.Add(ImportedAgain.Show(record, cut, now, hand, fileName)!);
            return cut;
        }

        var done = choice.Done.Length > 0 ? choice.Done : choice.Cut == 0 ? "As received." : "";
        entries.Add(new Entry(NamedNumber.Of($"entry|{cut:N}"), cut, job, now, hand, "import", new Cut(port.Id, choice.Cut, done, choice.Date ?? DateOnly.FromDateTime(now.DateTime))));
        return cut;
    }
}
