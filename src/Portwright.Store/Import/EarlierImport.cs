using System.Globalization;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Store.Import;

/// <summary>
/// The sweep one port and cut of a file goes to. Its number follows from the file and the place, so that the same file finds what it
/// became before; where that was imported otherwise and is hidden now, the number follows from how it is imported too.
/// </summary>
internal sealed record EarlierImport(Guid Sweep, bool InRecord, IReadOnlyList<ImportProblem> Problems)
{
    /// <summary>Test pressures closer than this share are one pressure, typed in another unit or rounded by a page.</summary>
    private const double SamePressure = 0.005;

    /// <summary>Finds what the file became before.</summary>
    /// <param name="file">The file's bytes, sheet, port and cut, as words.</param>
    /// <param name="asked">The sweep as it would be imported now.</param>
    /// <param name="pressureAsked">False where every reading carries its own test pressure.</param>
    public static EarlierImport Find(string file, Sweep asked, bool pressureAsked, string fileName, Ledger record)
    {
        var earlier = Of(file, asked.Cut, record);
        var standing = earlier.Where(s => !record.IsHidden(s.Id)).ToList();
        if (standing.Find(s => Differences(s, asked, pressureAsked, record).Count == 0) is { } same)
        {
            return new EarlierImport(same.Id, true, []);
        }

        if (standing is [var other, ..])
        {
            return new EarlierImport(other.Id, true, [.. Differences(other, asked, pressureAsked, record).Select(d => new ImportProblem(
                "", $"{fileName} was imported before with {d.Field} {d.Then}; now {d.Now} is asked. Import it with {d.Then} again, or hide the earlier sweep first, then import."))]);
        }

        if (earlier.Find(s => Differences(s, asked, pressureAsked, record).Count == 0) is { } hidden)
        {
            return new EarlierImport(hidden.Id, true, []);
        }

        return new EarlierImport(earlier.Count == 0 ? First(file, asked.Cut) : Otherwise(file, asked), false, []);
    }

    /// <summary>Every sweep this part of the file became, the latest last, hidden ones too.</summary>
    public static List<Kept<Sweep>> Of(string file, Guid cut, Ledger record) =>
    [
        .. record.Entries
            .Where(e => e.Replaces is null && e.Fact is Sweep s && s.Cut == cut && (e.Subject == First(file, cut) || e.Subject == Otherwise(file, s)))
            .Select(e => e.Subject).Distinct()
            .Select(record.Get<Sweep>),
    ];

    private static Guid First(string file, Guid cut) => NamedNumber.Of($"{file}|{cut:N}");

    private static Guid Otherwise(string file, Sweep sweep) => NamedNumber.Of(string.Create(
        CultureInfo.InvariantCulture, $"{file}|{sweep.Cut:N}|{sweep.Bench:N}|{sweep.Direction}|{sweep.Range}|{sweep.TestPressure.Si(Dimension.Pressure):R}"));

    /// <summary>What is asked otherwise than it was imported, and than it stands now.</summary>
    private static List<(string Field, string Then, string Now)> Differences(Kept<Sweep> earlier, Sweep asked, bool pressureAsked, Ledger record)
    {
        var then = earlier.Fact;
        var imported = record.History(earlier.Id).Select(e => e.Fact).OfType<Sweep>().First();
        var list = new List<(string, string, string)>();
        if (asked.Direction != then.Direction && asked.Direction != imported.Direction)
        {
            list.Add(("direction", Word(then.Direction), Word(asked.Direction)));
        }

        if (!Same(asked.Range, then.Range) && !Same(asked.Range, imported.Range))
        {
            list.Add(("range", then.Range, asked.Range));
        }

        if (asked.Bench != then.Bench && asked.Bench != imported.Bench)
        {
            list.Add(("bench", BenchName(record, then.Bench), BenchName(record, asked.Bench)));
        }

        if (pressureAsked && !Same(asked.TestPressure, then.TestPressure) && !Same(asked.TestPressure, imported.TestPressure))
        {
            list.Add(("test pressure", Pressure(then.TestPressure), Pressure(asked.TestPressure)));
        }

        return list;
    }

    private static bool Same(string one, string other) => one.Equals(other, StringComparison.OrdinalIgnoreCase);

    private static bool Same(Typed one, Typed other)
    {
        var (a, b) = (one.Si(Dimension.Pressure), other.Si(Dimension.Pressure));
        return Math.Abs(a - b) <= SamePressure * Math.Max(Math.Abs(a), Math.Abs(b));
    }

    private static string Word(FlowDirection direction) => direction == FlowDirection.Draw ? "draw" : "blow";

    private static string Pressure(Typed typed) => string.Create(CultureInfo.InvariantCulture, $"{typed.Value:0.###} {typed.Unit}");

    private static string BenchName(Ledger record, Guid bench) => record.Find<BenchCard>(bench)?.Fact.Name ?? "another bench";
}
