using Microsoft.Data.Sqlite;

namespace Portwright.Store;

/// <summary>Reading what is saved. Each reading sees the record as it was at one moment.</summary>
public sealed partial class Journal
{
    private string ReaderString => Database.ReaderString(_paths.Live);

    /// <summary>Every entry of a job, in the order they were saved.</summary>
    /// <exception cref="RecordProblem">The file is damaged or the disk failed.</exception>
    public EntryList ReadJob(Guid job) => Read(EntryReading.OfJob, job);

    /// <summary>Entries that belong to the shop and to no job: bench cards, calibrations, morning checks.</summary>
    /// <inheritdoc cref="ReadJob" path="/exception"/>
    public EntryList ReadShop() => Read(EntryReading.OfShop);

    /// <summary>A job with what belongs to the shop, in the one order they were saved: which calibration came before which reading can be told.</summary>
    /// <inheritdoc cref="ReadJob" path="/exception"/>
    public EntryList ReadJobAndShop(Guid job) => Read(EntryReading.OfJobAndShop, job);

    /// <summary>What the list of jobs needs: entries that state a job, and the hiding and showing of jobs.</summary>
    /// <inheritdoc cref="ReadJob" path="/exception"/>
    public EntryList ReadJobs() => Read(EntryReading.OfJobs);

    /// <summary>Everything ever said of one subject.</summary>
    /// <inheritdoc cref="ReadJob" path="/exception"/>
    public EntryList ReadSubject(Guid subject) => Read(EntryReading.OfSubject, subject);

    /// <summary>The whole record.</summary>
    /// <inheritdoc cref="ReadJob" path="/exception"/>
    public EntryList ReadAll() => Read("ORDER BY sequence");

    private EntryList Read(string which, Guid? id = null) => Reading(connection => EntryReading.All(connection, which, id));

    private T Reading<T>(Func<SqliteConnection, T> read)
    {
        try
        {
            using var connection = Database.OpenReader(_paths.Live);
            return read(connection);
        }
        catch (SqliteException error)
        {
            throw RecordProblem.From(error, _paths.Live);
        }
    }
}
