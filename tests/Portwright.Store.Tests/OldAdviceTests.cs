using System.Text;
using System.Text.Json;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Export;

namespace Portwright.Store.Tests;

/// <summary>Advice kept when its numbers were marks in a text: it opens, reads right and goes out without marks.</summary>
public sealed class OldAdviceTests
{
    private const string Old = "Open the pinch at C to ⟦9|0.001529|0.0000147⟧, both sides alike.";
    private static readonly Guid Job = Guid.NewGuid();

    [Fact]
    public void An_old_record_with_marked_advice_opens_and_reads_right()
    {
        using var folder = new TemporaryFolder();
        using (var journal = Journal.Open(folder.Path)) journal.Append(AsWrittenThen());
        using var again = Journal.Open(folder.Path);
        var advice = Assert.Single(Ledger.Of(again.ReadAll()).All<Advice>()).Fact;
        Assert.Equal("Open the pinch at C to 2.370 ± 0.023 in², both sides alike.", advice.What.In(UnitSystem.UsCustomary));
        Assert.Equal("Open the pinch at C to 1529 ± 15 mm², both sides alike.", advice.What.In(UnitSystem.Si));
    }

    [Fact]
    public void An_old_document_goes_out_without_marks()
    {
        var bytes = JobDocumentFile.Write(new JobDocument([AsWrittenThen()], []));
        var written = Encoding.UTF8.GetString(bytes);
        Assert.DoesNotContain('⟦', written);
        Assert.Contains("\"area\"", written, StringComparison.Ordinal);
        Assert.True(JobDocumentFile.TryRead(bytes, "job.json", out var back, out var problem), problem);
        Assert.Equal(bytes, JobDocumentFile.Write(back));
    }

    /// <summary>The entry as its text stood in records of that time.</summary>
    private static Entry AsWrittenThen()
    {
        var now = Entry.About(Guid.NewGuid(), Job, new Advice(Guid.NewGuid(), "pinch-limits", null, null, $"Open", Decision.Accepted, "", 0.001, 0.0005, 0.005, 0.0125), new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero));
        var text = JsonSerializer.Serialize(now, RecordJson.Default.Entry);
        var then = text.Replace("[\"Open\"]", JsonSerializer.Serialize(Old), StringComparison.Ordinal);
        Assert.NotEqual(text, then);
        return JsonSerializer.Deserialize(then, RecordJson.Default.Entry)!;
    }
}
