using Portwright.Crash;

namespace Portwright.Store.Tests;

public sealed class RestoreTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly TemporaryFolder _elsewhere = new();

    private string Backup => _elsewhere.File("backup.db");

    public static TheoryData<string> Stages => [.. Enum.GetNames<RestoreStage>()];

    public void Dispose()
    {
        _folder.Dispose();
        _elsewhere.Dispose();
    }

    [Fact]
    public void What_was_there_before_a_restore_is_kept_beside_it()
    {
        FillAndBackUp();
        var restored = Journal.Restore(Backup, _folder.Path);
        Assert.Equal(_folder.File("record.before-restore-1.db"), restored.KeptOld);
        Assert.Equal(5, Journal.CheckFile(restored.KeptOld!).Entries);
        Assert.Equal(3, Count());
        Journal.Restore(restored.KeptOld!, _folder.Path);
        Assert.Equal(5, Count());
        Assert.Equal(["record.before-restore-1.db", "record.before-restore-2.db", "record.db"], _folder.Files());
    }

    [Theory]
    [MemberData(nameof(Stages))]
    public void Killed_at_any_stage_of_a_restore_the_folder_has_the_old_record_or_the_backup(string stage)
    {
        FillAndBackUp();
        using (var child = Child.Start("restore", Backup, _folder.Path, stage))
        {
            child.ReadToEnd();
            Assert.NotEqual(0, child.Finish());
        }

        Assert.Equal(stage == nameof(RestoreStage.Replaced) ? 3 : 5, Count());
        Assert.DoesNotContain(_folder.Files(), f => f.Contains("incoming", StringComparison.Ordinal));
        Journal.Restore(Backup, _folder.Path);
        Assert.Equal(3, Count());
    }

    [Fact]
    public void A_killed_programs_log_does_not_creep_into_the_restored_record()
    {
        FillAndBackUp();
        using (var child = Child.Start("append", _folder.Path, "5"))
        {
            child.ReadLine();
            child.Kill();
            child.ReadToEnd();
        }

        Assert.True(new FileInfo(_folder.Record + "-wal").Length > 0, "no log was left: nothing is tested");
        var kept = Journal.Restore(Backup, _folder.Path).KeptOld!;
        Assert.Equal(3, Count());
        Assert.True(Journal.CheckFile(kept).Entries > 5);
    }

    [Fact]
    public void A_ruined_record_is_kept_byte_for_byte_and_the_backup_takes_its_place()
    {
        FillAndBackUp();
        File.WriteAllText(_folder.Record, "ruined");
        var kept = Journal.Restore(Backup, _folder.Path).KeptOld!;
        Assert.Equal("ruined", File.ReadAllText(kept));
        Assert.Equal(3, Count());
    }

    [Fact]
    public void While_a_workbench_has_the_record_open_a_restore_is_refused()
    {
        FillAndBackUp();
        using (var child = Child.Start("open", _folder.Path))
        {
            child.ReadLine();
            var problem = Assert.Throws<RecordProblem>(() => Journal.Restore(Backup, _folder.Path));
            Assert.Equal(RecordProblemKind.InUse, problem.Kind);
            child.Finish();
        }

        Assert.Equal(5, Count());
    }

    [Theory]
    [InlineData("nothing")]
    [InlineData("empty")]
    [InlineData("text")]
    [InlineData("cut short")]
    [InlineData("newer")]
    public void A_file_that_is_no_usable_backup_is_refused_and_the_record_stays(string what)
    {
        FillAndBackUp();
        switch (what)
        {
            case "nothing": File.Delete(Backup); break;
            case "empty": File.WriteAllBytes(Backup, []); break;
            case "text": File.WriteAllText(Backup, new string('x', 5000)); break;
            case "cut short":
                using (var file = new FileStream(Backup, FileMode.Open))
                {
                    file.SetLength(file.Length / 2);
                }

                break;
            default:
                Journal.Restore(Backup, _elsewhere.File("newer"));
                Journal.Open(_elsewhere.File("newer"), LaterSchema.Schema).Dispose();
                File.Copy(_elsewhere.File("newer/record.db"), Backup, overwrite: true);
                break;
        }

        Assert.Throws<RecordProblem>(() => Journal.Restore(Backup, _folder.Path));
        Assert.Equal(["record.db"], _folder.Files());
        Assert.Equal(5, Count());
    }

    [Fact]
    public void A_record_in_use_is_not_taken_for_a_backup()
    {
        using var journal = Journal.Open(_elsewhere.Path);
        journal.Append(Invented.ShopNote());
        Assert.Equal(RecordProblemKind.Refused, Assert.Throws<RecordProblem>(() => Journal.Restore(journal.File, _folder.Path)).Kind);
    }

    private void FillAndBackUp()
    {
        using var journal = Journal.Open(_folder.Path);
        journal.Append([.. Enumerable.Range(0, 3).Select(Appending.EntryAt)]);
        journal.Backup(Backup);
        journal.Append([Appending.EntryAt(3), Appending.EntryAt(4)]);
    }

    private int Count()
    {
        using var journal = Journal.Open(_folder.Path);
        Assert.True(journal.Check().IsSound);
        return journal.ReadAll().Count;
    }
}
