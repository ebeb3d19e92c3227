using System.Text;
using Microsoft.Data.Sqlite;
using Portwright.Shop.Record;

namespace Portwright.Store.Tests;

/// <summary>Bad disks, bad files, and what the porter is told.</summary>
public sealed class DamagedRecordTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_single_changed_byte_inside_an_entry_is_noticed_and_the_entry_is_named_and_left_out()
    {
        var job = Guid.CreateVersion7();
        Entry[] cuts = [Invented.Cut(job, 0), Invented.Cut(job, 1, "short side at 0.512 inch"), Invented.Cut(job, 2)];
        using (var journal = Journal.Open(_folder.Path))
        {
            journal.Append(cuts);
        }

        ChangeOneByte(_folder.Record, "0.512", (byte)'7');
        using var again = Journal.Open(_folder.Path);
        Assert.Equal("ok", Database.Text(again.Writer, "PRAGMA integrity_check"));

        var read = again.ReadJob(job);
        Assert.Equal([cuts[0], cuts[2]], read);
        var damaged = Assert.Single(read.Unreadable);
        Assert.Equal((2, cuts[1].Number.ToString(), UnreadableCause.Damaged), (damaged.Sequence, damaged.Number, damaged.Cause));

        var health = again.Check();
        Assert.False(health.IsSound);
        Assert.Equal([damaged], health.Unreadable);
        Assert.Contains(cuts[1].Number.ToString(), health.Words[0], StringComparison.Ordinal);

        // A backup keeps what there is and says so.
        Assert.Equal([damaged], again.Backup(_folder.File("backup.db")).Health.Unreadable);
    }

    [Theory]
    [InlineData("number")]
    [InlineData("subject")]
    [InlineData("job")]
    [InlineData("at")]
    [InlineData("hand")]
    [InlineData("source")]
    [InlineData("kind")]
    [InlineData("replaces")]
    [InlineData("reason")]
    [InlineData("body")]
    public void No_field_of_an_entry_can_change_unnoticed(string field)
    {
        var cut = Invented.Cut(Guid.CreateVersion7(), 1);
        using var journal = Journal.Open(_folder.Path);
        journal.Append([cut, Invented.Correction(cut, "roof raised")]);
        Database.Execute(journal.Writer, $"""
            PRAGMA ignore_check_constraints = ON;
            PRAGMA foreign_keys = OFF;
            DROP TRIGGER entries_are_never_changed;
            UPDATE entries SET {field} = replace(substr({field}, 1, 1), substr({field}, 1, 1), '?') || substr({field}, 2) WHERE sequence = 2;
            """);
        Assert.Equal(2, Assert.Single(journal.ReadAll().Unreadable).Sequence);
    }

    [Fact]
    public void Text_moved_from_one_field_to_the_next_changes_the_hash()
    {
        var entry = StoredEntry.Of(Invented.ShopNote() with { Hand = "ab", Source = "c" });
        Assert.NotEqual(entry.ComputeHash(), (entry with { Hand = "a", Source = "bc" }).ComputeHash());
        Assert.NotEqual(entry.ComputeHash(), (entry with { Reason = "" }).ComputeHash());
    }

    [Fact]
    public void An_entry_of_an_unknown_kind_is_named_left_out_and_kept()
    {
        var note = Invented.ShopNote();
        using var journal = Journal.Open(_folder.Path);
        journal.Append(note);
        var newer = StoredEntry.Of(Invented.ShopNote()) with { Kind = "swirl-reading", Body = """{"type":"swirl-reading","turns":3}""" };
        AppendingTests.Insert(journal, newer with { Hash = newer.ComputeHash() });
        var read = journal.ReadShop();
        Assert.Equal([note], read);
        var left = Assert.Single(read.Unreadable);
        Assert.Equal(("swirl-reading", UnreadableCause.NotUnderstood), (left.Kind, left.Cause));
        Assert.Contains("Update Portwright", left.Words, StringComparison.Ordinal);
        Assert.Equal(2, journal.Backup(_folder.File("backup.db")).Health.Entries);
    }

    [Fact]
    public void A_removed_entry_leaves_a_gap_that_the_check_tells()
    {
        using var journal = Journal.Open(_folder.Path);
        journal.Append([Invented.ShopNote(), Invented.ShopNote(), Invented.ShopNote()]);
        Database.Execute(journal.Writer, "DROP TRIGGER entries_are_never_removed; DELETE FROM entries WHERE sequence = 2");
        var faults = journal.Check().Faults;
        Assert.Contains("1 of 3 entries are gone.", faults);
        Assert.Contains("The record lacks its part entries_are_never_removed.", faults);
    }

    [Fact]
    public void A_record_cut_short_is_refused_in_words_with_a_cure()
    {
        Fill(200);
        using (var file = new FileStream(_folder.Record, FileMode.Open))
        {
            file.SetLength(file.Length / 2);
        }

        Refused(RecordProblemKind.Damaged, "portwright restore FILE");
    }

    [Fact]
    public void A_record_cut_to_nothing_is_not_taken_for_a_new_one()
    {
        Fill(3);
        File.WriteAllBytes(_folder.Record, []);
        Refused(RecordProblemKind.Damaged, "cut short");
    }

    [Fact]
    public void A_record_with_a_ruined_header_is_refused_in_words()
    {
        Fill(3);
        using (var file = new FileStream(_folder.Record, FileMode.Open))
        {
            file.Write(Encoding.ASCII.GetBytes("not what it was"));
        }

        Refused(RecordProblemKind.NotARecord, "portwright restore FILE");
    }

    [Fact]
    public void A_damaged_page_ends_in_words_and_not_in_a_crash()
    {
        Fill(400);
        using (var file = new FileStream(_folder.Record, FileMode.Open))
        {
            // Every page but the first: tables and indexes alike.
            file.Position = 4096;
            var noise = new byte[file.Length - 4096];
            new Random(3).NextBytes(noise);
            file.Write(noise);
        }

        using var journal = Journal.Open(_folder.Path);
        Assert.Equal(RecordProblemKind.Damaged, Assert.Throws<RecordProblem>(() => journal.ReadAll()).Kind);
        Assert.Equal(RecordProblemKind.Damaged, Assert.Throws<RecordProblem>(() => journal.Append(Invented.ShopNote())).Kind);
        Assert.False(journal.Check().IsSound);
        Assert.Throws<RecordProblem>(() => journal.Backup(_folder.File("backup.db")));
        Assert.DoesNotContain(_folder.Files(), f => f.StartsWith("backup", StringComparison.Ordinal));
    }

    [Fact]
    public void A_text_file_in_the_records_place_is_refused_and_left_alone()
    {
        File.WriteAllText(_folder.Record, string.Concat(Enumerable.Repeat("lift;flow\n0.300;211\n", 100)));
        var before = File.ReadAllBytes(_folder.Record);
        Refused(RecordProblemKind.NotARecord, "is not a Portwright record");
        Assert.Equal(before, File.ReadAllBytes(_folder.Record));
    }

    [Fact]
    public void Another_programs_database_is_refused_and_left_alone()
    {
        using (var other = new SqliteConnection($"Data Source={_folder.Record};Pooling=False"))
        {
            other.Open();
            Database.Execute(other, "CREATE TABLE customers (name TEXT); PRAGMA user_version = 1");
        }

        var before = File.ReadAllBytes(_folder.Record);
        Refused(RecordProblemKind.NotARecord, "was not made by Portwright");
        Assert.Equal(before, File.ReadAllBytes(_folder.Record));
    }

    [Fact]
    public void A_log_without_its_record_is_not_written_over_with_a_new_record()
    {
        File.WriteAllBytes(_folder.Record + "-wal", new byte[100]);
        Refused(RecordProblemKind.Damaged, "Put record.db back");
        Assert.Equal(["record.db-wal"], _folder.Files());
    }

    [Fact]
    public void A_folder_where_the_record_should_be_is_refused_in_words()
    {
        Directory.CreateDirectory(_folder.Record);
        Refused(RecordProblemKind.CannotOpen, "--data DIR");
    }

    [Fact]
    public void A_data_folder_that_cannot_be_made_is_refused_in_words()
    {
        File.WriteAllText(_folder.File("a-file"), "");
        var problem = Assert.Throws<RecordProblem>(() => Journal.Open(Path.Combine(_folder.File("a-file"), "data")));
        Assert.Equal(RecordProblemKind.CannotOpen, problem.Kind);
        Assert.Contains("--data DIR", problem.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void On_a_full_disk_nothing_is_half_saved_and_with_space_again_it_goes_on()
    {
        using var journal = Journal.Open(_folder.Path);
        journal.Append(Invented.ShopNote());
        // SQLite answers a page it may not have exactly as it answers a disk that has none: error 13.
        Database.Execute(journal.Writer, $"PRAGMA max_page_count = {Database.Number(journal.Writer, "PRAGMA page_count") + 2}");
        var job = Guid.CreateVersion7();
        Entry[] many = [.. Enumerable.Range(0, 500).Select(i => Invented.Cut(job, i))];
        var problem = Assert.Throws<RecordProblem>(() => journal.Append(many));
        Assert.Equal(RecordProblemKind.DiskFull, problem.Kind);
        Assert.Contains("Free some space", problem.Cure, StringComparison.Ordinal);
        Assert.Empty(journal.ReadJob(job));

        Database.Execute(journal.Writer, "PRAGMA max_page_count = 1000000");
        Assert.Equal(500, journal.Append(many));
        Assert.True(journal.Check().IsSound);
    }

    [Fact]
    public void Another_program_that_keeps_writing_ends_in_words_and_later_it_works()
    {
        using var journal = Journal.Open(_folder.Path, Schema.Today, patience: 1);
        using (var other = Database.Open(journal.File))
        {
            using var held = other.BeginTransaction();
            var problem = Assert.Throws<RecordProblem>(() => journal.Append(Invented.ShopNote()));
            Assert.Equal(RecordProblemKind.InUse, problem.Kind);
            Assert.Contains("Wait", problem.Cure, StringComparison.Ordinal);
        }

        Assert.True(journal.Append(Invented.ShopNote()));
    }

    [Theory]
    [InlineData(3, RecordProblemKind.CannotOpen)]
    [InlineData(5, RecordProblemKind.InUse)]
    [InlineData(517, RecordProblemKind.InUse)]
    [InlineData(8, RecordProblemKind.CannotOpen)]
    [InlineData(10, RecordProblemKind.DiskFault)]
    [InlineData(1034, RecordProblemKind.DiskFault)]
    [InlineData(11, RecordProblemKind.Damaged)]
    [InlineData(13, RecordProblemKind.DiskFull)]
    [InlineData(14, RecordProblemKind.CannotOpen)]
    [InlineData(26, RecordProblemKind.NotARecord)]
    public void Every_fault_sqlite_reports_becomes_words_with_a_cure(int code, RecordProblemKind kind)
    {
        var problem = RecordProblem.From(new SqliteException("disk I/O error", code), "record.db");
        Assert.Equal(kind, problem.Kind);
        Assert.Contains("record.db", problem.What, StringComparison.Ordinal);
        Assert.EndsWith(".", problem.Cure, StringComparison.Ordinal);
        Assert.DoesNotContain("I/O", problem.Message, StringComparison.Ordinal);
    }

    private void Fill(int count)
    {
        using var journal = Journal.Open(_folder.Path);
        journal.Append([.. Enumerable.Range(0, count).Select(i => Invented.ShopNote($"head {i}"))]);
    }

    private void Refused(RecordProblemKind kind, string words)
    {
        var problem = Assert.Throws<RecordProblem>(() => Journal.Open(_folder.Path));
        Assert.Equal(kind, problem.Kind);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
    }

    internal static void ChangeOneByte(string file, string inText, byte to)
    {
        var bytes = File.ReadAllBytes(file);
        var at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(inText));
        Assert.True(at >= 0, "the text to damage is not in the file");
        bytes[at] = to;
        File.WriteAllBytes(file, bytes);
    }
}
