using Portwright.Shop.Record;

namespace Portwright.Store.Export;

/// <summary>
/// A whole job in one file: every entry of it in the order it was saved, the entries of the bench cards it was measured
/// with, and its pictures. Documented in <c>docs/formats/portwright-job.md</c>, with a JSON Schema beside it.
/// </summary>
/// <param name="Entries">In the order of the record.</param>
/// <param name="Pictures">Each once.</param>
public sealed record JobDocument(IReadOnlyList<Entry> Entries, IReadOnlyList<Attachment> Pictures)
{
    /// <summary>What the file says it is.</summary>
    public const string FormatName = "portwright-job";

    /// <summary>The version written, and the newest read.</summary>
    public const int FormatVersion = 1;

    /// <summary>Picks from all entries of the record what belongs to a job.</summary>
    /// <param name="entries">All entries of the job and of the shop, in the order of the record.</param>
    /// <param name="picture">A picture by its content name; null where it is missing, which leaves it out.</param>
    /// <exception cref="ArgumentException">No entry belongs to the job.</exception>
    public static JobDocument Of(IReadOnlyList<Entry> entries, Guid job, Func<string, Attachment?> picture)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(picture);
        var own = entries.Where(e => e.Job == job).ToList();
        if (own.Count == 0) throw new ArgumentException($"No entry belongs to job {job}.", nameof(job));
        var benches = own.Select(e => e.Fact).OfType<Sweep>().Select(s => s.Bench).ToHashSet();
        // A bench card brings its calibrations, morning checks and set-up studies: without them the doubt would change.
        var ofShop = entries.Where(e => e.Job is null).ToList();
        var subjects = ofShop.Where(e => benches.Contains(e.Subject) || BenchOf(e.Fact) is { } bench && benches.Contains(bench)).Select(e => e.Subject).ToHashSet();
        // Weather and leak readings of a morning check are kept with the shop too.
        subjects.UnionWith(ofShop.Where(e => OfWhat(e.Fact) is { } of && subjects.Contains(of)).Select(e => e.Subject));
        var kept = entries.Where(e => e.Job == job || (e.Job is null && subjects.Contains(e.Subject))).ToList();
        var pictures = kept.Select(e => e.Fact).OfType<Photo>().DistinctBy(p => p.Content)
            .Select(p => picture(p.Content)).OfType<Attachment>().ToList();
        return new JobDocument(kept, pictures);
    }

    /// <summary>The document of a job in the record.</summary>
    /// <exception cref="ArgumentException">No entry belongs to the job.</exception>
    /// <exception cref="RecordProblem">An entry or a picture of the record is damaged: a document without it would say something else.</exception>
    public static JobDocument From(Journal journal, Guid job)
    {
        ArgumentNullException.ThrowIfNull(journal);
        foreach (var unreadable in journal.ReadJob(job).Unreadable.Concat(journal.ReadShop().Unreadable))
            throw new RecordProblem(RecordProblemKind.Damaged, "The job was not exported: " + unreadable.Words, "Then export the job again.");
        return Of(journal.ReadAll(), job, journal.Attachment);
    }

    /// <summary>Saves the pictures and then all entries, or none of the entries. Those saved before are passed over.</summary>
    /// <returns>How many entries were new.</returns>
    /// <exception cref="RecordProblem">It could not be saved, or an entry differs from the one of its number in the record.</exception>
    public int SaveTo(Journal journal)
    {
        ArgumentNullException.ThrowIfNull(journal);
        foreach (var picture in Pictures) journal.Attach(picture.Bytes);
        return journal.Append(Entries);
    }

    private static Guid? BenchOf(Fact fact) => fact switch { Calibration c => c.Bench, MorningCheck m => m.Bench, SetUpStudy s => s.Bench, BallCalibration b => b.Bench, _ => null };

    private static Guid? OfWhat(Fact fact) => fact switch { WeatherReading w => w.Of, LeakReading l => l.Of, Photo p => p.Of, _ => null };
}
