using Portwright.Shop.Record;

namespace Portwright.Store.Tests;

public sealed class PictureTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_picture_reads_back_byte_for_byte_and_is_kept_once()
    {
        using var journal = Journal.Open(_folder.Path);
        var bytes = Invented.Jpeg(3_000_000);
        var content = journal.Attach(bytes);
        Assert.Equal(content, journal.Attach(bytes));
        Assert.Equal(("image/jpeg", 1), (journal.Attachment(content)!.MediaType, journal.Check().Attachments));
        Assert.Equal(bytes, journal.Attachment(content)!.Bytes);
        Assert.Null(journal.Attachment(new string('0', 64)));
    }

    [Theory]
    [InlineData("89504E470D0A1A0A0000000D49484452", "image/png")]
    [InlineData("FFD8FFE000104A464946000101000001", "image/jpeg")]
    [InlineData("524946460000000057454250565038 20", "image/webp")]
    [InlineData("0000002066747970 69736F6D00000200", "video/mp4")]
    [InlineData("0000001466747970 7174202000000200", "video/quicktime")]
    [InlineData("1A45DFA39F4286810142F7810142F2810442F381084282847765626D", "video/webm")]
    [InlineData("1A45DFA39F4286810142F7810142F2810442F381084282886D6174726F736B61", null)]
    [InlineData("0000001866747970 6865696300000000", null)]
    [InlineData("3C7376673E3C7363726970743E616C65", null)]
    [InlineData("47494638396101000100800000000000", null)]
    [InlineData("89504E470D0A1A0A0000000D58585858", null)]
    [InlineData("52494646000000005741564520202020", null)]
    [InlineData("FFD8FF", null)]
    [InlineData("", null)]
    public void The_bytes_say_what_a_picture_or_a_clip_is(string hex, string? mediaType) =>
        Assert.Equal(mediaType, Attachment.MediaTypeOf(Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal))));

    [Fact]
    public void What_is_no_picture_or_too_large_is_refused_in_words()
    {
        using var journal = Journal.Open(_folder.Path);
        Assert.Contains("not a JPEG", Assert.Throws<RecordProblem>(() => journal.Attach("<svg onload=x></svg>"u8)).What, StringComparison.Ordinal);
        Assert.Contains("20 MB", Assert.Throws<RecordProblem>(() => journal.Attach(Invented.Jpeg(Attachment.LargestSize + 1))).What, StringComparison.Ordinal);
        Assert.NotEmpty(journal.Attach(Invented.Jpeg(Attachment.LargestSize)));
    }

    [Fact]
    public void A_damaged_or_missing_picture_is_named()
    {
        using var journal = Journal.Open(_folder.Path);
        var content = journal.Attach(Invented.Jpeg());
        var missing = new string('a', 64);
        journal.Append(Entry.About(Guid.NewGuid(), null, new Photo(Guid.NewGuid(), missing, "image/jpeg"), DateTimeOffset.UnixEpoch));
        Database.Execute(journal.Writer, "DROP TRIGGER attachments_are_never_changed; UPDATE attachments SET bytes = zeroblob(400)");
        Assert.Equal(RecordProblemKind.Damaged, Assert.Throws<RecordProblem>(() => journal.Attachment(content)).Kind);
        var health = journal.Check();
        Assert.Equal([content], health.DamagedAttachments);
        Assert.Equal([missing], health.MissingAttachments);
    }
}
