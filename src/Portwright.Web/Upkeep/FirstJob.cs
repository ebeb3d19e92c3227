using System.Globalization;
using Portwright.Shop.Bench;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Web.Upkeep;

/// <summary>What is asked about one reading of a page before it is kept.</summary>
/// <param name="Row">Of the preview's table, from 1.</param>
public sealed record ReadingInQuestion(int Row, Typed Reading, string Words, IReadOnlyList<string> Likely, bool MayKeep);

/// <summary>A page of a notebook as a job of its own: heads and ports as it names them, cut 0, a sweep each.</summary>
/// <param name="Entries">Nothing while something is in question or refused.</param>
public sealed record FirstJob(IReadOnlyList<Entry> Entries, Guid Port, ReadingInQuestion? Question, IReadOnlyList<string> Problems)
{
    /// <summary>What nobody says is one intake of a head with one cylinder.</summary>
    /// <param name="shop">What belongs to the shop: its bench; where it has none the stand-in is written with it.</param>
    /// <param name="standIn">The bench a shop without one gets.</param>
    /// <param name="kept">Rows whose reading was asked about and kept.</param>
    public static FirstJob Of(ImportPreview preview, string name, Ledger shop, BenchCard standIn, IReadOnlyCollection<int> kept, UnitSystem units, DateTimeOffset now, string hand)
    {
        var job = Guid.CreateVersion7(now);
        var entries = new List<Entry> { Entry.About(job, job, new Job(name, "", new EnginePlan()), now, hand) };
        if (shop.All<BenchCard>().LastOrDefault() is not { } bench)
        {
            entries.Insert(0, Entry.About(Guid.CreateVersion7(now), null, standIn, now, hand));
            bench = Ledger.Of(entries).Get<BenchCard>(entries[0].Subject);
        }

        var named = Named(preview);
        foreach (var (head, place) in named.Values.Select(n => n.Head).Distinct(StringComparer.OrdinalIgnoreCase).Select((h, i) => (h, i)))
        {
            entries.AddRange(NewHead.Entries(job, head, named.Values.Where(n => n.Head.Equals(head, StringComparison.OrdinalIgnoreCase)).Max(n => n.Cylinder), "", place, now, hand));
        }

        var drawn = shop.With(entries);
        var choices = preview.Sweeps.ToDictionary(s => s, s => (ImportChoice?)Choice(preview, s, named[s.Port], drawn, job, bench));
        var readings = SweepImport.Entries(preview, choices, bench, drawn, now, hand, out var problems);
        var port = choices[preview.Sweeps[0]]!.Port;
        if (problems.Count > 0) return new FirstJob([], port, null, [.. problems.Select(p => p.Text).Distinct()]);
        var (question, refused) = Judge(preview, drawn, readings, kept, units, out var confirmed, job, now, hand);
        return question is not null || refused is not null
            ? new FirstJob([], port, question, refused is null ? [] : [refused])
            : new FirstJob([.. entries, .. readings, .. confirmed], port, null, []);
    }

    /// <summary>Each reading against those before it, as at the bench.</summary>
    private static (ReadingInQuestion? Question, string? Refused) Judge(
        ImportPreview preview, Ledger drawn, IReadOnlyList<Entry> entries, IReadOnlyCollection<int> kept, UnitSystem units, out List<Entry> confirmed, Guid job, DateTimeOffset now, string hand)
    {
        confirmed = [];
        List<Entry> before = [.. entries.Where(e => e.Fact is not FlowReading)];
        foreach (var entry in entries.Where(e => e.Fact is FlowReading))
        {
            var (fact, row) = ((FlowReading)entry.Fact, RowOf(preview, entry));
            if (EntryJudge.Of(EnteredPort.Lift, fact.Lift.WithUnit, units, Surroundings.None) is not Take)
            {
                return (null, $"The lift {fact.Lift.WithUnit} is higher than valves are lifted. Type it as .500, or with its unit.");
            }

            switch (ReadingEntry.Of(new Reductions(drawn.With(before)), entry, units))
            {
                case Refuse refused:
                    return (null, refused.Problem);
                case Ask ask when ask.MayKeep && kept.Contains(row):
                    confirmed.Add(Entry.About(Guid.CreateVersion7(now), job, new Confirmed(entry.Subject, "Reading", fact.Reading.Text, ask.Question.In(units)), now, hand));
                    break;
                case Ask ask:
                    return (new ReadingInQuestion(row, fact.Reading, ask.Question.In(units), [.. ask.Likely.Select(l => l.Text)], ask.MayKeep), null);
            }

            before.Add(entry);
        }

        return (null, null);
    }

    // "notebook, row 3, column B" as the import writes it.
    private static int RowOf(ImportPreview preview, Entry entry) => preview.Readings.FirstOrDefault(r => entry.Source.EndsWith(r.Address, StringComparison.Ordinal))?.Row ?? 0;

    /// <summary>Head, kind and cylinder of every port the page names; one it names in no way we know is the next intake.</summary>
    private static Dictionary<string, (string Head, PortKind Kind, int Cylinder)> Named(ImportPreview preview)
    {
        var all = new Dictionary<string, (string, PortKind, int)>();
        var next = 1;
        foreach (var text in preview.Sweeps.Select(s => s.Port).Distinct())
        {
            var words = PortWords.Plain(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);
            all[text] = words is [.. var head, ("intake" or "exhaust") and var kind, var number] && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var cylinder) && cylinder is > 0 and <= 12
                ? (head.Length == 0 ? "head A" : string.Join(' ', head), kind == "exhaust" ? PortKind.Exhaust : PortKind.Intake, cylinder)
                : ("head A", text.StartsWith("ex", StringComparison.OrdinalIgnoreCase) ? PortKind.Exhaust : PortKind.Intake, text.Length == 0 || preview.Sweeps.Select(s => s.Port).Distinct().Count() == 1 ? 1 : next++);
        }

        return all;
    }

    private static ImportChoice Choice(ImportPreview preview, (string Port, int? Cut) own, (string Head, PortKind Kind, int Cylinder) named, Ledger drawn, Guid job, Kept<BenchCard> bench)
    {
        var port = drawn.HeadsOf(job).Where(h => h.Fact.Name.Equals(named.Head, StringComparison.OrdinalIgnoreCase)).SelectMany(h => drawn.PortsOf(h.Id))
            .First(p => p.Fact.Kind == named.Kind && p.Fact.Cylinder == named.Cylinder);
        var first = preview.Readings.First(r => (r.Port, r.Cut) == own);
        var range = bench.Fact.Ranges.FirstOrDefault(r => MeterOf.ReadingDimension(r) == first.Dimension)?.Name ?? "";
        return new ImportChoice(
            port.Id, own.Cut ?? 0, "", range, first.TestPressure ?? Typed.Of(28, "inH2O"),
            named.Kind == PortKind.Exhaust ? Physics.TestPiece.FlowDirection.Blow : Physics.TestPiece.FlowDirection.Draw);
    }
}
