using Microsoft.Data.Sqlite;
using Portwright.Shop.Record;

namespace Portwright.Store.Tests;

public sealed class BackupTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _elsewhere = new();

    public void Dispose()
    {
        _folder.Dispose();
        _elsewhere.Dispose();
    }

    [Fact]
    public void A_backup_restored_elsewhere_has_every_entry_and_picture()
    {
        var job = Invented.Job();
        Entry[] entries = [job, Invented.Cut(job.Subject, 0), Invented.ShopNote()];
        string picture;
        using (var journal = Journal.Open(_folder.Path))
        {
            journal.Append(entries);
            picture = journal.Attach(Invented.Jpeg());
            var backup = journal.Backup(_elsewhere.File("backup.db"));
            Assert.True(backup.Health.IsSound);
            Assert.Equal((3, 1), (backup.Health.Entries, backup.Health.Attachments));
            Assert.Equal(new FileInfo(backup.File).Length, backup.Size);
        }

        var folder = _elsewhere.File("new machine");
        var restored = Journal.Restore(_elsewhere.File("backup.db"), folder);
        Assert.Null(restored.KeptOld);
        using var again = Journal.Open(folder);
        Assert.Equal(entries, again.ReadAll());
        Assert.Equal(Invented.Jpeg(), again.Attachment(picture)!.Bytes);
    }

    [Fact]
    public void A_backup_never_writes_over_a_file_and_leaves_no_part_behind()
    {
        using var journal = Journal.Open(_folder.Path);
        File.WriteAllText(_elsewhere.File("backup.db"), "mine");
        File.WriteAllText(_elsewhere.File("fresh.db.part"), "left by a killed backup");
        Assert.Equal(RecordProblemKind.Refused, Assert.Throws<RecordProblem>(() => journal.Backup(_elsewhere.File("backup.db"))).Kind);
        Assert.Equal("mine", File.ReadAllText(_elsewhere.File("backup.db")));
        journal.Backup(_elsewhere.File("fresh.db"));
        Assert.Equal(["backup.db", "fresh.db"], _elsewhere.Files());
        Assert.Equal(RecordProblemKind.CannotOpen, Assert.Throws<RecordProblem>(() => journal.Backup(_elsewhere.File("no/such/folder.db"))).Kind);
    }

    [Theory]
    [InlineData("a value")]
    [InlineData("an entry gone")]
    [InlineData("a picture gone")]
    [InlineData("a page")]
    [InlineData("the end")]
    public void A_backup_that_did_not_come_out_as_the_record_is_is_thrown_away(string damage)
    {
        using var journal = Journal.Open(_folder.Path);
        var job = Guid.CreateVersion7();
        journal.Append([.. Enumerable.Range(0, 200).Select(i => Invented.Cut(job, i, $"pass {i:000}"))]);
        journal.Attach(Invented.Jpeg());
        Action<string> written = damage switch
        {
            "a value" => part => Sql(part, "DROP TRIGGER entries_are_never_changed; UPDATE entries SET hash = zeroblob(32) WHERE sequence = 7"),
            "an entry gone" => part => Sql(part, "DROP TRIGGER entries_are_never_removed; DELETE FROM entries WHERE sequence = 200"),
            "a picture gone" => part => Sql(part, "DROP TRIGGER attachments_are_never_removed; DELETE FROM attachments"),
            "a page" => part =>
            {
                using var file = new FileStream(part, FileMode.Open);
                file.Position = 5 * 4096;
                file.Write(new byte[4096]);
            }
            ,
            _ => part =>
            {
                using var file = new FileStream(part, FileMode.Open);
                file.SetLength(file.Length - 4096);
            }
            ,
        };
        Assert.Equal(RecordProblemKind.Damaged, Assert.Throws<RecordProblem>(() => journal.Backup(_elsewhere.File("backup.db"), written)).Kind);
        Assert.Empty(_elsewhere.Files());
    }

    [Fact]
    public void A_record_that_lacks_an_entry_can_still_be_backed_up_and_brought_back_knowingly()
    {
        using (var journal = Journal.Open(_folder.Path))
        {
            journal.Append([Invented.ShopNote(), Invented.ShopNote(), Invented.ShopNote()]);
            Database.Execute(journal.Writer, "DROP TRIGGER entries_are_never_removed; DELETE FROM entries WHERE sequence = 2");
            var backup = journal.Backup(_elsewhere.File("backup.db"));
            Assert.Contains("1 of 3 entries are gone.", backup.Health.Faults);
        }

        Assert.Throws<RecordProblem>(() => Journal.Restore(_elsewhere.File("backup.db"), _elsewhere.File("new")));
        Journal.Restore(_elsewhere.File("backup.db"), _elsewhere.File("new"), evenIfDamaged: true);
        using var restored = Journal.Open(_elsewhere.File("new"));
        Assert.Equal(2, restored.ReadAll().Count);
    }

    [Fact]
    public void A_changed_byte_in_a_backup_of_a_sound_record_is_noticed_when_it_is_made_and_when_it_is_restored()
    {
        using (var journal = Journal.Open(_folder.Path))
        {
            journal.Append(Invented.ShopNote("head 0512"));
            var made = journal.Backup(_elsewhere.File("noticed.db"), part => DamagedRecordTests.ChangeOneByte(part, "head 0512", (byte)'H'));
            Assert.Single(made.Health.Unreadable);
            journal.Backup(_elsewhere.File("backup.db"));
        }

        DamagedRecordTests.ChangeOneByte(_elsewhere.File("backup.db"), "head 0512", (byte)'H');
        Assert.Single(Journal.CheckFile(_elsewhere.File("backup.db")).Unreadable);
        var before = DurableFile.Fingerprint(_folder.Record);
        var problem = Assert.Throws<RecordProblem>(() => Journal.Restore(_elsewhere.File("backup.db"), _folder.Path));
        Assert.Equal(RecordProblemKind.Damaged, problem.Kind);
        Assert.Equal(before, DurableFile.Fingerprint(_folder.Record));
        Assert.Single(Journal.Restore(_elsewhere.File("backup.db"), _folder.Path, evenIfDamaged: true).Health.Unreadable);
    }

    private static void Sql(string file, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        Database.Execute(connection, sql);
    }
}
