using Microsoft.Data.Sqlite;
using Portwright.Crash;

namespace Portwright.Store.Tests;

public sealed class SchemaChangeTests : IDisposable
{
    private static readonly int Later = LaterSchema.Schema.Version;
    private readonly TemporaryFolder _folder = new();

    public static TheoryData<SchemaStage> Stages => [.. Enum.GetValues<SchemaStage>()];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Stages))]
    public void Killed_at_any_stage_of_a_schema_change_the_next_start_recovers_by_itself(SchemaStage stage)
    {
        var entries = FillRecord();
        Kill("change", _folder.Path, stage.ToString());

        using (var journal = Journal.Open(_folder.Path, LaterSchema.Schema))
        {
            Assert.Equal(entries, journal.ReadAll().Select(Appending.IndexOf));
            Assert.Equal(Later, Database.Number(journal.Writer, "PRAGMA user_version"));
            Assert.Equal(entries.Count, Database.Number(journal.Writer, "SELECT entries FROM years"));
            Assert.True(journal.Append(Appending.EntryAt(entries.Count)));
            Assert.True(journal.Check().IsSound);
        }

        Assert.Equal([$"record.before-{Later}.db", "record.db"], _folder.Files());
    }

    [Theory]
    [MemberData(nameof(Stages))]
    public void Killed_at_any_stage_an_older_program_still_has_its_record_or_is_told_of_the_newer(SchemaStage stage)
    {
        var entries = FillRecord();
        Kill("change", _folder.Path, stage.ToString());

        if (stage == SchemaStage.Replaced)
        {
            Assert.Equal(RecordProblemKind.Newer, Assert.Throws<RecordProblem>(() => Journal.Open(_folder.Path)).Kind);
            return;
        }

        using var journal = Journal.Open(_folder.Path);
        Assert.Equal(entries, journal.ReadAll().Select(Appending.IndexOf));
    }

    [Theory]
    [MemberData(nameof(Stages))]
    public void Killed_at_any_stage_of_making_a_new_record_the_next_start_makes_it(SchemaStage stage)
    {
        Kill("change", _folder.Path, stage.ToString());
        using var journal = Journal.Open(_folder.Path, LaterSchema.Schema);
        Assert.True(journal.Append(Appending.EntryAt(0)));
        Assert.True(journal.Check().IsSound);
        Assert.DoesNotContain(_folder.Files(), f => f.Contains("next", StringComparison.Ordinal) || f.Contains("before", StringComparison.Ordinal));
    }

    [Fact]
    public void Killed_at_twelve_random_moments_of_a_schema_change_nothing_is_lost()
    {
        var entries = FillRecord(3000);
        var random = new Random(7);
        for (var kill = 0; kill < 12; kill++)
        {
            using var child = Child.Start("change", _folder.Path);
            child.ReadLine();
            Thread.Sleep(random.Next(0, 200));
            child.Kill();
            child.ReadToEnd();
            using var look = new SqliteConnection($"Data Source={_folder.Record};Pooling=False");
            look.Open();
            Assert.Equal(entries.Count, Database.Number(look, "SELECT count(*) FROM entries"));
        }

        using var journal = Journal.Open(_folder.Path, LaterSchema.Schema);
        Assert.Equal(entries, journal.ReadAll().Select(Appending.IndexOf));
        Assert.True(journal.Check().IsSound);
    }

    [Fact]
    public void A_killed_program_with_entries_only_in_its_log_loses_none_in_the_change()
    {
        using (var child = Child.Start("append", _folder.Path, "0"))
        {
            while (int.Parse(child.ReadLine()!, System.Globalization.CultureInfo.InvariantCulture) < 40)
            {
            }

            child.Kill();
            child.ReadToEnd();
        }

        Assert.True(new FileInfo(_folder.Record + "-wal").Length > 0, "no log was left: nothing is tested");
        using var journal = Journal.Open(_folder.Path, LaterSchema.Schema);
        Assert.True(journal.ReadAll().Count >= 40);
    }

    [Fact]
    public void The_old_record_is_kept_and_can_be_restored()
    {
        var entries = FillRecord();
        Journal.Open(_folder.Path, LaterSchema.Schema).Dispose();
        Journal.Restore(_folder.File($"record.before-{Later}.db"), _folder.Path);
        using (var journal = Journal.Open(_folder.Path))
        {
            Assert.Equal(entries, journal.ReadAll().Select(Appending.IndexOf));
            journal.Append(Appending.EntryAt(entries.Count));
        }

        // Changed a second time with more in it: the first one kept is not written over.
        Journal.Open(_folder.Path, LaterSchema.Schema).Dispose();
        Assert.Contains($"record.before-{Later}.db", _folder.Files());
        Assert.Contains($"record.before-{Later}-1.db", _folder.Files());
        Assert.Equal(entries.Count, Journal.CheckFile(_folder.File($"record.before-{Later}.db")).Entries);
        Assert.Equal(entries.Count + 1, Journal.CheckFile(_folder.File($"record.before-{Later}-1.db")).Entries);
    }

    [Fact]
    public void A_newer_record_is_refused_in_words_and_not_touched()
    {
        FillRecord();
        Journal.Open(_folder.Path, LaterSchema.Schema).Dispose();
        var before = DurableFile.Fingerprint(_folder.Record);
        var problem = Assert.Throws<RecordProblem>(() => Journal.Open(_folder.Path));
        Assert.Equal(RecordProblemKind.Newer, problem.Kind);
        Assert.Contains("made by a newer Portwright", problem.What, StringComparison.Ordinal);
        Assert.Contains("Nothing was changed", problem.What, StringComparison.Ordinal);
        Assert.Equal(before, DurableFile.Fingerprint(_folder.Record));
    }

    [Fact]
    public void A_step_that_loses_an_entry_is_noticed_and_the_record_stays_as_it_was()
    {
        var entries = FillRecord();
        var careless = new Schema([.. Schema.Today.Steps, new SchemaStep(Later, "DROP TRIGGER entries_are_never_removed; DELETE FROM entries WHERE sequence = 3;")]);
        var problem = Assert.Throws<RecordProblem>(() => Journal.Open(_folder.Path, careless));
        Assert.Contains("left as it was", problem.What, StringComparison.Ordinal);
        using var journal = Journal.Open(_folder.Path);
        Assert.Equal(entries, journal.ReadAll().Select(Appending.IndexOf));
    }

    [Fact]
    public void While_another_has_the_record_open_its_form_is_not_changed()
    {
        FillRecord();
        using var other = Child.Start("open", _folder.Path);
        other.ReadLine();
        var problem = Assert.Throws<RecordProblem>(() => Journal.Open(_folder.Path, LaterSchema.Schema));
        Assert.Equal(RecordProblemKind.InUse, problem.Kind);
        Assert.Equal(0, other.Finish());
        Journal.Open(_folder.Path, LaterSchema.Schema).Dispose();
    }

    [Fact]
    public void Several_programs_starting_at_once_on_an_empty_folder_share_one_new_record()
    {
        var children = Enumerable.Range(0, 4).Select(_ => Child.Start("open", _folder.Path)).ToList();
        try
        {
            Assert.All(children, c => Assert.Equal("open", c.ReadLine()));
            Assert.All(children, c => Assert.Equal(0, c.Finish()));
        }
        finally
        {
            children.ForEach(c => c.Dispose());
        }
    }

    private List<int> FillRecord(int count = 30)
    {
        using var journal = Journal.Open(_folder.Path);
        journal.Append([.. Enumerable.Range(0, count).Select(Appending.EntryAt)]);
        return [.. Enumerable.Range(0, count)];
    }

    private static void Kill(params string[] arguments)
    {
        using var child = Child.Start(arguments);
        child.ReadToEnd();
        Assert.NotEqual(0, child.Finish());
    }
}
