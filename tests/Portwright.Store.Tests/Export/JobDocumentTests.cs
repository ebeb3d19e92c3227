using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Export;

namespace Portwright.Store.Tests.Export;

public sealed class JobDocumentTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.FromHours(1));
    private static readonly Guid JobId = Guid.NewGuid(), HeadId = Guid.NewGuid(), PortId = Guid.NewGuid(), CutId = Guid.NewGuid(), SweepId = Guid.NewGuid(), BenchId = Guid.NewGuid();
    private static readonly byte[] Picture = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14];
    private static readonly string PictureName = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Picture));

    private static readonly Gen<string> Words = Gen.OneOf(Gen.String[Gen.Char["abc =+-@\"'\\/<>&;\t\n\r²°µ±½\u00A0\u2028é"], 0, 12], Gen.OneOf<string>("", "=1+1", "😀", "</script>"));
    private static readonly Gen<Typed> TypedNumbers = Gen.Select(Gen.Double[0, 3], Words, (v, t) => new Typed(v, "in", t));
    private static readonly Gen<Fact> Facts = Gen.OneOf<Fact>(
        Gen.Select(TypedNumbers, TypedNumbers, Words, (l, r, s) => (Fact)new FlowReading(SweepId, l, r, s, null, l, null, s, s.Length > 6 ? s.Length : null)),
        Gen.Select(Words, Words, (a, b) => (Fact)new Job(a, b, new EnginePlan(0.1, null, 0.15, 8, Fuel: b))),
        Gen.Select(Words, (n) => (Fact)new Head(n, "iron", n)),
        Gen.Select(Gen.Int[1, 12], Gen.Bool, (c, m) => (Fact)new Port(HeadId, PortKind.Exhaust, c, m, new ValveData(0.04, 0.785, 0.001, 0.035, 0.008))),
        Gen.Select(Gen.Int[0, 9], Words, (n, w) => (Fact)new Cut(PortId, n, w, new DateOnly(2026, 3, 2))),
        Gen.Select(TypedNumbers.List[0, 4], Words, (l, w) => (Fact)new Sweep(CutId, BenchId, FlowDirection.Blow, w, Typed.Of(28, "inH2O"), l, w)),
        Gen.Select(TypedNumbers.List[0, 4], Gen.Int[1, 9], Words, (l, p, w) => (Fact)new Sweep(CutId, BenchId, FlowDirection.Draw, w, Typed.Of(28, "inH2O"), l, Steps: [.. l.Select(t => new RunStep(t, p, p > 4 ? t : null))])),
        Gen.Select(TypedNumbers, (t) => (Fact)new WeatherReading(SweepId, t, PressureKind.SeaLevel, t, t, null, HumidityKind.WetBulb)),
        Gen.Select(TypedNumbers, (t) => (Fact)new LeakReading(SweepId, "1", t, t)),
        Gen.Const((Fact)new Hidden()), Gen.Const((Fact)new Shown()));

    private static readonly Gen<Entry> Entries = Gen.Select(Gen.Guid, Gen.Guid, Words, Words, Facts, Gen.Int[-600, 600], (n, s, hand, source, fact, minutes) =>
        new Entry(n, s, JobId, Noon.AddTicks(minutes).ToOffset(TimeSpan.FromMinutes(minutes)), hand, source, fact, minutes % 2 == 0 ? n : null, minutes % 3 == 0 ? hand : null));

    [Fact]
    public void A_job_comes_back_identically() => Entries.List[1, 12].Sample(entries =>
    {
        entries = [.. entries.DistinctBy(e => e.Number)];
        var bytes = JobDocumentFile.Write(new JobDocument(entries, [new Attachment(PictureName, "image/jpeg", Picture)]));
        Assert.True(JobDocumentFile.TryRead(bytes, "job.json", out var back, out var problem), problem);
        Assert.Equal(bytes, JobDocumentFile.Write(back));
        Assert.Equal(entries.Select(Written), back.Entries.Select(Written));
        Assert.Equal(entries.Select(e => e.At.Offset), back.Entries.Select(e => e.At.Offset));
        Assert.Equal(Picture, Assert.Single(back.Pictures).Bytes);
    }, iter: 300);

    [Fact]
    public void Every_document_satisfies_the_published_schema()
    {
        var schema = JsonSchema.FromText(File.ReadAllText(SchemaFile));
        Entries.List[1, 4].Sample(entries =>
        {
            var json = JsonDocument.Parse(JobDocumentFile.Write(new JobDocument(entries, [new Attachment(PictureName, "image/jpeg", Picture)])));
            var result = schema.Evaluate(json.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(result.IsValid, string.Join("\n", result.Details?.Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}") ?? []));
        }, iter: 60, threads: 1);
    }

    [Theory]
    [InlineData("format", "\"other\"")]
    [InlineData("version", "\"1\"")]
    [InlineData("entries", "[]")]
    [InlineData("entries", "[{\"number\":5}]")]
    [InlineData("pictures", "[{\"content\":\"x\"}]")]
    public void The_schema_refuses_what_is_no_job(string property, string value)
    {
        var document = Small();
        document[property] = JsonNode.Parse(value);
        Assert.False(JsonSchema.FromText(File.ReadAllText(SchemaFile)).Evaluate(JsonSerializer.SerializeToElement(document)).IsValid);
    }

    [Fact]
    public void The_published_schema_is_that_of_the_records()
    {
        var now = JobDocumentSchema.Text();
        if (now == File.ReadAllText(SchemaFile).ReplaceLineEndings("\n")) return;
        var received = Path.Combine(AppContext.BaseDirectory, "portwright-job.schema.json");
        File.WriteAllText(received, now);
        Assert.Fail($"The records have changed. Look at {received} and, where it is meant, copy it to docs/formats; a change that old files do not satisfy needs a new version.");
    }

    [Fact]
    public void A_document_holds_the_job_its_benches_and_nothing_else()
    {
        var (other, otherBench) = (Guid.NewGuid(), Guid.NewGuid());
        Entry About(Guid subject, Guid? job, Fact fact) => Entry.About(subject, job, fact, Noon);
        var bench = new BenchCard("Bench A", [], [], new AirCard(), 6974.5, BenchDoubt.Unknown);
        var check = new MorningCheck(BenchId, new DateOnly(2026, 3, 2), new RoomAir(Typed.Of(29.92, "inHg"), Typed.Of(68, "°F"), null), null, []);
        Entry[] mine =
        [
            About(BenchId, null, bench),
            About(Guid.NewGuid(), null, check),
            About(JobId, JobId, new Job("A", "B", new EnginePlan())),
            About(SweepId, JobId, new Sweep(CutId, BenchId, FlowDirection.Draw, "1", Typed.Of(28, "inH2O"), [])),
            About(Guid.NewGuid(), JobId, new Photo(SweepId, PictureName, "image/jpeg")),
            About(BenchId, null, bench with { Name = "Bench A, moved" }),
        ];
        Entry[] all = [About(otherBench, null, bench), .. mine, About(other, other, new Job("C", "D", new EnginePlan())), About(Guid.NewGuid(), null, check with { Bench = otherBench })];
        var document = JobDocument.Of(all, JobId, name => name == PictureName ? new Attachment(name, "image/jpeg", Picture) : null);
        Assert.Equal(mine, document.Entries);
        Assert.Equal(PictureName, Assert.Single(document.Pictures).Content);
        Assert.Throws<ArgumentException>(() => JobDocument.Of(all, Guid.NewGuid(), _ => null));
    }

    [Fact]
    public void A_job_moves_from_one_record_to_another_and_only_once()
    {
        using var folder = new TemporaryFolder();
        using var elsewhere = new TemporaryFolder();
        using var journal = Journal.Open(folder.Path);
        journal.Attach(Picture);
        journal.Append(
        [
            Entry.About(BenchId, null, new BenchCard("Bench A", [], [], new AirCard(), 6974.5, BenchDoubt.Unknown), Noon),
            Entry.About(JobId, JobId, new Job("A", "B", new EnginePlan()), Noon),
            Entry.About(SweepId, JobId, new Sweep(CutId, BenchId, FlowDirection.Draw, "1", Typed.Of(28, "inH2O"), []), Noon),
            Entry.About(Guid.NewGuid(), JobId, new Photo(SweepId, PictureName, "image/jpeg"), Noon),
        ]);
        Assert.True(JobDocumentFile.TryRead(JobDocumentFile.Write(JobDocument.From(journal, JobId)), "job.json", out var document, out var problem), problem);
        using var other = Journal.Open(elsewhere.Path);
        Assert.Equal(4, document.SaveTo(other));
        Assert.Equal(0, document.SaveTo(other));
        Assert.Equal(journal.ReadAll().Select(Written), other.ReadAll().Select(Written));
        Assert.Equal(Picture, other.Attachment(PictureName)!.Bytes);
    }

    [Fact]
    public void A_damaged_document_is_refused_in_a_sentence()
    {
        Assert.Contains("is empty", Refused([]), StringComparison.Ordinal);
        Assert.Contains("not a Portwright job", Refused("{}"u8.ToArray()), StringComparison.Ordinal);
        Assert.Contains("not a Portwright job", Refused("[1]"u8.ToArray()), StringComparison.Ordinal);
        Assert.Contains("newer Portwright", Refused(With("version", "2")), StringComparison.Ordinal);
        Assert.Contains("does not say its version", Refused(With("version", "0.5")), StringComparison.Ordinal);
        Assert.Contains("holds no entries", Refused(With("entries", "[]")), StringComparison.Ordinal);
        Assert.Contains("entry 1", Refused(With("entries", "[null]")), StringComparison.Ordinal);
        Assert.Contains("entry 1", Refused(With("entries", "[{\"fact\":{\"type\":\"spell\"}}]")), StringComparison.Ordinal);
        Assert.Contains("picture 1", Refused(With("pictures", $"[{{\"content\":\"{PictureName}\",\"mediaType\":\"image/jpeg\",\"bytes\":\"AAAA\"}}]")), StringComparison.Ordinal);
        Assert.Contains("cut short", Refused(Encoding.UTF8.GetBytes(new string('[', 100_000))), StringComparison.Ordinal);
        var bytes = JobDocumentFile.Write(new JobDocument([Entry.About(JobId, JobId, new Hidden(), Noon)], []));
        Assert.Contains("cut short", Refused(bytes[..^10]), StringComparison.Ordinal);
        var twice = Entry.About(JobId, JobId, new Hidden(), Noon);
        Assert.Contains("twice", Refused(JobDocumentFile.Write(new JobDocument([twice, twice], []))), StringComparison.Ordinal);
    }

    [Fact]
    public void Changed_bytes_never_throw()
    {
        var bytes = JobDocumentFile.Write(new JobDocument([Entry.About(SweepId, JobId, new FlowReading(SweepId, Typed.Of(.3, "in"), Typed.Of(183, "cfm")), Noon)], [new Attachment(PictureName, "image/jpeg", Picture)]));
        Gen.Select(Gen.Int[0, bytes.Length - 1], Gen.Byte).Array[1, 5].Sample(changes =>
        {
            var changed = (byte[])bytes.Clone();
            foreach (var (at, value) in changes) changed[at] = value;
            if (!JobDocumentFile.TryRead(changed, "job.json", out _, out var problem)) Assert.StartsWith("job.json", problem, StringComparison.Ordinal);
        }, iter: 3000);
    }

    private static string SchemaFile => Path.Combine(AppContext.BaseDirectory, "Formats", "portwright-job.schema.json");

    private static JsonObject Small() => JsonNode.Parse(JobDocumentFile.Write(new JobDocument([Entry.About(JobId, JobId, new Hidden(), Noon)], [])))!.AsObject();

    private static byte[] With(string property, string value)
    {
        var document = Small();
        document[property] = JsonNode.Parse(value);
        return Encoding.UTF8.GetBytes(document.ToJsonString());
    }

    private static string Refused(byte[] bytes)
    {
        Assert.False(JobDocumentFile.TryRead(bytes, "job.json", out _, out var problem));
        Assert.StartsWith("job.json", problem, StringComparison.Ordinal);
        return problem;
    }

    private static string Written(Entry entry) => JsonSerializer.Serialize(entry, RecordJson.Default.Entry);
}
