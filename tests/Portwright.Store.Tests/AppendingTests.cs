using CsCheck;
using Microsoft.Data.Sqlite;
using Portwright.Shop.Record;

namespace Portwright.Store.Tests;

public sealed class AppendingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_is_saved_reads_back_the_same_after_the_next_start()
    {
        var job = Invented.Job();
        Entry[] entries = [job, Invented.Cut(job.Subject, 0), Invented.Cut(job.Subject, 1), Invented.ShopNote()];
        using (var journal = Journal.Open(_folder.Path))
        {
            journal.Append(entries);
        }

        using var again = Journal.Open(_folder.Path);
        Assert.Equal(entries, again.ReadAll());
        Assert.Equal(entries[..3], again.ReadJob(job.Subject));
        Assert.Equal(entries[3..], again.ReadShop());
        Assert.Equal([entries[1]], again.ReadSubject(entries[1].Subject));
        Assert.Empty(again.ReadAll().Unreadable);
    }

    [Fact]
    public void A_job_read_with_the_shop_keeps_the_order_in_which_both_were_saved()
    {
        var job = Invented.Job();
        var other = Invented.Job();
        Entry[] entries = [job, Invented.ShopNote(), Invented.Cut(job.Subject, 0), other, Invented.ShopNote(), Invented.Cut(job.Subject, 1)];
        using var journal = Journal.Open(_folder.Path);
        journal.Append(entries);
        Assert.Equal(entries.Where(e => e != other), journal.ReadJobAndShop(job.Subject));
    }

    [Fact]
    public void Any_text_time_and_offset_reads_back_letter_for_letter()
    {
        using var journal = Journal.Open(_folder.Path);
        var text = Gen.String[Gen.Char['\u0001', '\uD7FF'], 0, 40];
        var at = Gen.Select(Gen.Long[0, DateTime.MaxValue.Ticks / 2], Gen.Int[-14 * 60, 14 * 60])
            .Select((ticks, minutes) => new DateTimeOffset(ticks + TimeSpan.TicksPerDay, TimeSpan.FromMinutes(minutes)));
        Gen.Select(text, text, text, at).Sample(
            (hand, source, done, typed) =>
            {
                var entry = new Entry(
                    Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), typed, hand, source, new Cut(Guid.NewGuid(), 3, done, new DateOnly(2026, 1, 31)), null, done);
                journal.Append(entry);
                Assert.Equal(entry, Assert.Single(journal.ReadJob(entry.Job!.Value)));
                Assert.Equal(entry.At.Offset, journal.ReadJob(entry.Job!.Value)[0].At.Offset);
            },
            iter: 200,
            threads: 1);
    }

    [Fact]
    public void The_same_entry_twice_is_saved_once()
    {
        using var journal = Journal.Open(_folder.Path);
        var job = Invented.Job();
        var cut = Invented.Cut(job.Subject, 1);
        Assert.Equal(3, journal.Append([job, cut, Invented.Cut(job.Subject, 2), cut]));
        Assert.False(journal.Append(cut));
        Assert.Equal(0, journal.Append([job, cut]));
        Assert.Equal(3, journal.ReadAll().Count);
    }

    [Fact]
    public void The_same_number_saying_something_else_is_refused_and_the_first_stands()
    {
        using var journal = Journal.Open(_folder.Path);
        var cut = Invented.Cut(Guid.NewGuid(), 1, "bowl blended");
        journal.Append(cut);
        var problem = Assert.Throws<RecordProblem>(() => journal.Append([Invented.ShopNote(), cut with { Fact = ((Cut)cut.Fact) with { Done = "roof raised" } }]));
        Assert.Equal(RecordProblemKind.Refused, problem.Kind);
        Assert.Contains(cut.Number.ToString(), problem.What, StringComparison.Ordinal);
        Assert.Equal([cut], journal.ReadAll());
    }

    [Fact]
    public void An_entry_an_older_program_wrote_with_fewer_words_counts_as_the_same()
    {
        var head = Invented.ShopNote();
        var written = StoredEntry.Of(head);
        var shorter = written with { Body = written.Body.Replace(",\"material\":\"\"", "", StringComparison.Ordinal) };
        Assert.NotEqual(written.Body, shorter.Body);
        using var journal = Journal.Open(_folder.Path);
        Insert(journal, shorter with { Hash = shorter.ComputeHash() });
        Assert.False(journal.Append(head));
        Assert.Equal([head], journal.ReadAll());
    }

    [Fact]
    public void Of_entries_saved_together_all_are_saved_or_none()
    {
        using var journal = Journal.Open(_folder.Path);
        var cut = Invented.Cut(Guid.NewGuid(), 1);
        var ofNothing = Invented.Correction(Invented.Cut(Guid.NewGuid(), 9), "seat cut wider");
        var problem = Assert.Throws<RecordProblem>(() => journal.Append([cut, ofNothing]));
        Assert.Equal(RecordProblemKind.Refused, problem.Kind);
        Assert.Contains("corrects one that the record does not have", problem.Message, StringComparison.Ordinal);
        Assert.Empty(journal.ReadAll());
        Assert.True(journal.Append(cut));
    }

    [Fact]
    public void A_correction_may_stand_before_what_it_corrects_in_one_file()
    {
        using var journal = Journal.Open(_folder.Path);
        var cut = Invented.Cut(Guid.NewGuid(), 1);
        Assert.Equal(2, journal.Append([Invented.Correction(cut, "seat cut wider"), cut]));
    }

    [Theory]
    [InlineData("UPDATE entries SET hand = 'somebody else'", "never changed")]
    [InlineData("DELETE FROM entries", "never removed")]
    [InlineData("UPDATE attachments SET media_type = 'image/png'", "never changed")]
    [InlineData("DELETE FROM attachments", "never removed")]
    [InlineData("INSERT OR REPLACE INTO entries SELECT sequence, number, subject, job, at, 'x', source, kind, replaces, reason, body, hash FROM entries", "never removed")]
    public void The_database_itself_refuses_to_change_or_remove(string sql, string why)
    {
        using var journal = Journal.Open(_folder.Path);
        journal.Append(Invented.Job());
        journal.Attach(Invented.Jpeg());
        // Any program that opens the file meets the same guard.
        using var elsewhere = new SqliteConnection($"Data Source={journal.File};Pooling=False");
        elsewhere.Open();
        using var command = elsewhere.CreateCommand();
        command.CommandText = "PRAGMA recursive_triggers = ON; " + sql;
        Assert.Contains(why, Assert.Throws<SqliteException>(() => command.ExecuteNonQuery()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Eight_hands_save_at_once_while_others_read_and_nothing_is_lost()
    {
        using var journal = Journal.Open(_folder.Path);
        const int Hands = 8, Each = 50;
        var jobs = Enumerable.Range(0, Hands).Select(_ => Guid.CreateVersion7()).ToArray();
        using var done = new CancellationTokenSource();
        var readers = Enumerable.Range(0, 3).Select(r => Task.Run(() =>
        {
            var seen = 0;
            while (!done.IsCancellationRequested)
            {
                var numbers = journal.ReadJob(jobs[r]).Select(e => ((Cut)e.Fact).Number).ToList();
                Assert.Equal(Enumerable.Range(0, numbers.Count), numbers);
                Assert.True(numbers.Count >= seen, "entries that were there are gone");
                seen = numbers.Count;
            }
        })).ToArray();
        Parallel.For(0, Hands, new ParallelOptions { MaxDegreeOfParallelism = Hands }, hand =>
        {
            for (var i = 0; i < Each; i++)
            {
                journal.Append(Invented.Cut(jobs[hand], i));
            }
        });
        await done.CancelAsync();
        await Task.WhenAll(readers);
        Assert.Equal(Hands * Each, journal.ReadAll().Count);
        Assert.True(journal.Check().IsSound);
    }

    [Fact]
    public void Two_journals_on_one_record_save_side_by_side()
    {
        using var first = Journal.Open(_folder.Path);
        using var second = Journal.Open(_folder.Path);
        var job = Guid.CreateVersion7();
        Parallel.Invoke(
            () => Enumerable.Range(0, 40).ToList().ForEach(i => first.Append(Invented.Cut(job, i))),
            () => Enumerable.Range(0, 40).ToList().ForEach(i => second.Append(Invented.Cut(job, i))));
        Assert.Equal(80, first.ReadJob(job).Count);
    }

    [Fact]
    public void What_another_program_saves_is_told_once_when_asked()
    {
        using var workbench = Journal.Open(_folder.Path);
        using var import = Journal.Open(_folder.Path);
        workbench.Append(Invented.ShopNote());
        Assert.False(workbench.ChangedElsewhere());
        import.Append(Invented.ShopNote());
        Assert.True(workbench.ChangedElsewhere());
        Assert.False(workbench.ChangedElsewhere());
    }

    [Fact]
    public void Pages_are_told_after_saving_and_a_page_that_fails_does_not_undo_it()
    {
        using var journal = Journal.Open(_folder.Path);
        var told = new List<Guid?>();
        journal.Changed += _ => throw new InvalidOperationException("a page that is gone");
        journal.Changed += told.Add;
        var job = Invented.Job();
        journal.Append([job, Invented.Cut(job.Subject, 0), Invented.ShopNote()]);
        journal.Append(job);
        Assert.Equal([job.Subject, null], told);
    }

    [Fact]
    public void A_port_is_kept_as_a_port_whatever_its_own_kind_is()
    {
        using var journal = Journal.Open(_folder.Path);
        var port = Entry.About(Guid.NewGuid(), Guid.NewGuid(), new Port(Guid.NewGuid(), PortKind.Exhaust, 2, Mirrored: true), DateTimeOffset.UnixEpoch);
        journal.Append(port);
        Assert.Equal([port], journal.ReadJob(port.Job!.Value));
        Assert.Equal("port", Database.Text(journal.Writer, "SELECT kind FROM entries"));
    }

    [Fact]
    public void The_list_of_jobs_has_jobs_and_their_hiding_and_nothing_else()
    {
        using var journal = Journal.Open(_folder.Path);
        var first = Invented.Job("First");
        var second = Invented.Job("Second");
        var cut = Invented.Cut(first.Subject, 0);
        var hidden = Invented.Hide(second);
        journal.Append([first, second, cut, Invented.Hide(cut), hidden, Invented.ShopNote()]);
        Assert.Equal([first, second, hidden], journal.ReadJobs());
    }

    [Fact]
    public void A_text_with_an_invisible_nul_is_refused_in_words()
    {
        using var journal = Journal.Open(_folder.Path);
        var problem = Assert.Throws<RecordProblem>(() => journal.Append(Invented.ShopNote() with { Hand = "J\0" }));
        Assert.Contains("hand", problem.What, StringComparison.Ordinal);
    }

    internal static void Insert(Journal journal, StoredEntry entry)
    {
        using var insert = journal.Writer.CreateCommand();
        insert.CommandText = "INSERT INTO entries (number, subject, job, at, hand, source, kind, body, hash) VALUES ($n, $s, $j, $a, $h, $o, $k, $b, $x)";
        insert.Parameters.AddWithValue("$n", entry.Number);
        insert.Parameters.AddWithValue("$s", entry.Subject);
        insert.Parameters.AddWithValue("$j", (object?)entry.Job ?? DBNull.Value);
        insert.Parameters.AddWithValue("$a", entry.At);
        insert.Parameters.AddWithValue("$h", entry.Hand);
        insert.Parameters.AddWithValue("$o", entry.Source);
        insert.Parameters.AddWithValue("$k", entry.Kind);
        insert.Parameters.AddWithValue("$b", entry.Body);
        insert.Parameters.AddWithValue("$x", entry.Hash);
        insert.ExecuteNonQuery();
    }
}
