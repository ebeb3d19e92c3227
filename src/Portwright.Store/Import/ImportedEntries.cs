using System.Globalization;
using Portwright.Shop.Record;

namespace Portwright.Store.Import;

/// <summary>The sweep a file's readings of one port and cut go to.</summary>
/// <param name="Sweep">Its subject in the record.</param>
/// <param name="Job">The job it belongs to.</param>
/// <param name="Range">The meter's range, where the file names none; empty for the sweep's own.</param>
public sealed record ImportTarget(Guid Sweep, Guid Job, string Range = "");

/// <summary>Turns a confirmed preview into entries for the record, to be appended in one go.</summary>
public static class ImportedEntries
{
    /// <summary>
    /// One flow reading an entry, in the order of the file. Number and subject are worked out from the file's bytes, the
    /// cell and the sweep, so that the same file imported into the same sweep again finds its readings there and adds none; those hidden
    /// since are shown again.
    /// </summary>
    /// <param name="preview">Confirmed, without problems.</param>
    /// <param name="targets">For every port and cut of <see cref="ImportPreview.Sweeps"/>; null leaves its readings out.</param>
    /// <param name="at">When the import was confirmed.</param>
    /// <param name="hand">Whose hand; may be empty.</param>
    /// <param name="record">What the record holds of the targets' jobs: readings already in it, also corrected ones, are passed over. Null only for sweeps just made.</param>
    /// <exception cref="InvalidOperationException">The preview has problems or no readings (see <see cref="ImportPreview.CanBeSaved"/>).</exception>
    /// <exception cref="ArgumentException">A port and cut of the file without a target.</exception>
    public static IReadOnlyList<Entry> Of(ImportPreview preview, IReadOnlyDictionary<(string Port, int? Cut), ImportTarget?> targets, DateTimeOffset at, string hand = "", Ledger? record = null)
    {
        ArgumentNullException.ThrowIfNull(preview);
        ArgumentNullException.ThrowIfNull(targets);
        if (!preview.CanBeSaved) throw new InvalidOperationException("Only a preview without problems and with readings is saved.");
        if (preview.Sweeps.FirstOrDefault(s => !targets.ContainsKey(s)) is { Port: not null } missing)
            throw new ArgumentException($"No target for port '{missing.Port}', cut {missing.Cut?.ToString(CultureInfo.InvariantCulture) ?? "not said"}. Name its sweep, or null to leave it out.", nameof(targets));
        var saved = record?.Entries.Select(e => e.Number).ToHashSet() ?? [];
        return
        [
            .. from r in preview.Readings
               let target = targets[(r.Port, r.Cut)]
               where target is not null
               let cell = string.Create(CultureInfo.InvariantCulture, $"{preview.Table.FileHash}|{preview.Table.Sheet}|{r.Row}|{r.Column}|{target.Sweep:N}")
               let number = NamedNumber.Of("entry|" + cell)
               let subject = NamedNumber.Of("reading|" + cell)
               let entry = saved.Contains(number)
                   ? ImportedAgain.Show(record!, subject, at, hand, preview.Table.FileName)
                   : new Entry(
                       number, subject, target.Job, at, hand, Source(preview.Table, r),
                       new FlowReading(target.Sweep, r.Lift, r.Reading, r.Range is { Length: > 0 } range ? range : target.Range, r.TestPressure, r.MeterTemperature, r.PlenumTemperature))
               where entry is not null
               select entry,
        ];
    }

    private static string Source(RawTable table, ImportedReading reading) =>
        table.Sheet is null ? $"{table.FileName}, {reading.Address}" : $"{table.FileName}, {TableFile.ShownName(table.Sheet)}, {reading.Address}";
}
