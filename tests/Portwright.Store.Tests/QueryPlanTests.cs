namespace Portwright.Store.Tests;

/// <summary>A page must not slow down with the years: no question a page asks may read the whole record.</summary>
public sealed class QueryPlanTests
{
    [Theory]
    [InlineData(EntryReading.OfJob)]
    [InlineData(EntryReading.OfShop)]
    [InlineData(EntryReading.OfJobAndShop)]
    [InlineData(EntryReading.OfSubject)]
    [InlineData(EntryReading.OfJobs)]
    public void No_pages_question_reads_the_whole_record(string which)
    {
        using var folder = new TemporaryFolder();
        using var journal = Journal.Open(folder.Path);
        using var explain = journal.Writer.CreateCommand();
        explain.CommandText = "EXPLAIN QUERY PLAN " + EntryReading.Query(which);
        explain.Parameters.AddWithValue("$id", "");
        using var rows = explain.ExecuteReader();
        var plan = new List<string>();
        while (rows.Read())
        {
            plan.Add(rows.GetString(3));
        }

        Assert.NotEmpty(plan);
        Assert.DoesNotContain(plan, step => step.StartsWith("SCAN", StringComparison.Ordinal));
        Assert.DoesNotContain(plan, step => step.Contains("TEMP B-TREE", StringComparison.Ordinal));
    }

    [Fact]
    public void The_settings_the_promises_rest_on_are_on()
    {
        using var folder = new TemporaryFolder();
        using var journal = Journal.Open(folder.Path);
        Assert.Equal("wal", Database.Text(journal.Writer, "PRAGMA journal_mode"));
        Assert.Equal(2, Database.Number(journal.Writer, "PRAGMA synchronous"));
        Assert.Equal(1, Database.Number(journal.Writer, "PRAGMA foreign_keys"));
        Assert.Equal(0, Database.Number(journal.Writer, "PRAGMA trusted_schema"));
        Assert.Equal(1, Database.Number(journal.Writer, "PRAGMA cell_size_check"));
        Assert.Equal(Schema.ApplicationId, Database.Number(journal.Writer, "PRAGMA application_id"));
    }
}
