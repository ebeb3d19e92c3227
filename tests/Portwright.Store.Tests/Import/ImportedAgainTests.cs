using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store.Export;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

/// <summary>The same file brought a second time, after the porter changed their mind.</summary>
public sealed class ImportedAgainTests : IDisposable
{
    private const string File = "01-lift-and-cfm.csv";
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.FromHours(1));
    private static readonly Guid Job = Guid.NewGuid();
    private static readonly Guid Port = Guid.NewGuid();
    private readonly TemporaryFolder _folder = new();
    private readonly Journal _journal;
    private readonly Guid _bench;
    private int _hour;

    public ImportedAgainTests()
    {
        _journal = Journal.Open(_folder.Path);
        var readout = new DirectCard(ReadoutBasis.ActualAtMeter, new AirCard());
        var bench = Entry.About(
            Guid.NewGuid(), null, new BenchCard("Back bench", [new("high", readout, "cfm", 0.1, 0.01), new("low", readout, "cfm", 0.1, 0.01)], [], new AirCard(), 6974.5, BenchDoubt.Unknown), Noon);
        _bench = bench.Subject;
        _journal.Append([bench, Entry.About(Job, Job, new Job("Two heads", "", new EnginePlan()), Noon), Entry.About(Port, Job, new Port(Guid.NewGuid(), PortKind.Intake, 1, false), Noon)]);
    }

    public void Dispose()
    {
        _journal.Dispose();
        _folder.Dispose();
    }

    private Ledger Record => Ledger.Of(_journal.ReadJobAndShop(Job));

    [Fact]
    public void A_hidden_reading_comes_back_with_the_file_as_the_reason()
    {
        Import();
        var reading = Record.All<FlowReading>()[2];
        _journal.Append(Amend.Hide(reading, Noon, "", "typed twice"));
        Import();
        Assert.Equal(6, Record.All<FlowReading>().Count);
        Assert.Equal($"imported again from {File}", Assert.Single(Record.History(reading.Id), e => e.Fact is Shown).Reason);
    }

    [Fact]
    public void A_hidden_sweep_comes_back()
    {
        Import();
        _journal.Append(Amend.Hide(Record.All<Sweep>().Single(), Noon, "", "put away"));
        Import();
        Assert.Equal(6, Record.ReadingsOf(Record.All<Sweep>().Single().Id).Count);
    }

    [Fact]
    public void A_hidden_cut_comes_back_with_its_sweep_and_its_readings()
    {
        Import(cut: 3);
        foreach (var reading in Record.All<FlowReading>()) _journal.Append(Amend.Hide(reading, Noon, "", "wrong port"));
        _journal.Append(Amend.Hide(Record.All<Sweep>().Single(), Noon, "", "wrong port"));
        _journal.Append(Amend.Hide(Record.CutsOf(Port).Single(), Noon, "", "wrong port"));
        Import(cut: 3);
        var cut = Assert.Single(Record.CutsOf(Port));
        Assert.Equal(6, Record.ReadingsOf(Assert.Single(Record.SweepsOf(cut.Id)).Id).Count);
    }

    [Fact]
    public void Another_file_below_a_cut_that_an_import_made_and_that_is_hidden_is_taken()
    {
        Import(cut: 3);
        _journal.Append(Amend.Hide(Record.CutsOf(Port).Single(), Noon, "", "wrong port"));
        Import(cut: 3, name: "another.csv", changed: true);
        Assert.Equal(2, Record.SweepsOf(Assert.Single(Record.CutsOf(Port)).Id).Count);
    }

    [Fact]
    public void A_hidden_cut_made_by_hand_that_never_held_the_file_stays_hidden()
    {
        var byHand = Entry.About(Guid.NewGuid(), Job, new Cut(Port, 3, "bowl blended", new DateOnly(2026, 3, 2)), Noon);
        _journal.Append(byHand);
        _journal.Append(Amend.Hide(Record.CutsOf(Port).Single(), Noon, "", "never made"));
        Import(cut: 3);
        Assert.True(Record.IsHidden(byHand.Subject));
        Assert.Single(Record.CutsOf(Port));
    }

    [Fact]
    public void What_stands_as_it_was_imported_adds_nothing()
    {
        Import();
        var before = _journal.ReadAll().Count;
        Import();
        Import(pressure: Typed.Of(6.97, "kPa"));
        Assert.Equal(before, _journal.ReadAll().Count);
    }

    [Theory]
    [InlineData("low", FlowDirection.Draw, 28, "range", "high", "low")]
    [InlineData("high", FlowDirection.Blow, 28, "direction", "draw", "blow")]
    [InlineData("high", FlowDirection.Draw, 10, "test pressure", "28 inH2O", "10 inH2O")]
    public void The_same_file_asked_otherwise_is_answered_with_what_it_was_and_the_cure(string range, FlowDirection direction, double pressure, string field, string then, string now)
    {
        Import();
        var entries = Entries(out var problems, range: range, direction: direction, pressure: Typed.Of(pressure, "inH2O"));
        Assert.Empty(entries);
        Assert.Equal(
            $"{File} was imported before with {field} {then}; now {now} is asked. Import it with {then} again, or hide the earlier sweep first, then import.",
            Assert.Single(problems).Text);
    }

    [Fact]
    public void With_the_earlier_sweep_hidden_it_is_imported_as_asked_and_can_be_changed_back()
    {
        Import();
        _journal.Append(Amend.Hide(Record.All<Sweep>().Single(), Noon, "", "read on the other range"));
        Import(range: "low");
        var low = Record.All<Sweep>().Single();
        Assert.Equal("low", low.Fact.Range);
        Assert.Equal(6, Record.ReadingsOf(low.Id).Count);
        Import(range: "low");
        Assert.Equal(6, Record.All<FlowReading>().Count(r => r.Fact.Sweep == low.Id));
        Entries(out var problems, range: "high");
        Assert.Contains("range low; now high", Assert.Single(problems).Text, StringComparison.Ordinal);
        _journal.Append(Amend.Hide(low, Noon, "", "it was right at first"));
        Import(range: "high");
        Assert.Equal("high", Record.All<Sweep>().Single().Fact.Range);
    }

    [Fact]
    public void A_sweep_corrected_since_takes_the_file_as_it_was_and_as_it_stands()
    {
        Import();
        var sweep = Record.All<Sweep>().Single();
        _journal.Append(Amend.Correct(sweep, sweep.Fact with { Range = "low" }, Noon, ""));
        foreach (var range in new[] { "high", "low" })
        {
            Assert.Empty(Entries(out var problems, range: range));
            Assert.Empty(problems);
        }
    }

    [Fact]
    public void A_job_document_brings_back_what_was_hidden_since_but_not_what_it_hides_itself()
    {
        Import();
        var (first, second) = (Record.All<FlowReading>()[0], Record.All<FlowReading>()[1]);
        _journal.Append(Amend.Hide(first, Noon, "", "whistled"));
        var document = JobDocument.From(_journal, Job);
        _journal.Append(Amend.Hide(second, Noon, "", "by mistake"));
        _journal.Append(Amend.Hide(Record.Get<Job>(Job), Noon, "", "by mistake"));
        var shown = ImportedAgain.Shown(document, Record, Noon, "", "two-heads.json");
        Assert.Equal(new[] { Job, second.Id }.Order(), shown.Select(e => e.Subject).Order());
        Assert.All(shown, e => Assert.Equal("imported again from two-heads.json", e.Reason));
        Assert.Equal(2, _journal.Append([.. document.Entries, .. shown]));
        Assert.True(Record.IsHidden(first.Id));
        Assert.False(Record.IsHidden(second.Id) || Record.IsHidden(Job));
    }

    [Fact]
    public void A_test_pressure_in_the_wrong_unit_keeps_the_file_out()
    {
        Assert.Empty(Entries(out var problems, pressure: Typed.Of(28, "psi")));
        Assert.StartsWith("The test pressure 28 psi would choke the port", problems[0].Text, StringComparison.Ordinal);
        Assert.NotEmpty(Entries(out problems));
        Assert.Empty(problems);
    }

    private void Import(int cut = 0, string range = "high", Typed? pressure = null, string name = File, bool changed = false)
    {
        var entries = Entries(out var problems, cut, range, FlowDirection.Draw, pressure, name, changed);
        Assert.Empty(problems);
        _journal.Append(entries);
    }

    private IReadOnlyList<Entry> Entries(
        out IReadOnlyList<ImportProblem> problems, int cut = 0, string range = "high", FlowDirection direction = FlowDirection.Draw,
        Typed? pressure = null, string name = File, bool changed = false)
    {
        var bytes = SampleFile.Bytes(File);
        var preview = SampleFile.Preview(changed ? [.. bytes, (byte)'\n'] : bytes, name);
        // The heading names its pressure; here the porter's word counts.
        preview = preview with { Readings = [.. preview.Readings.Select(r => r with { TestPressure = null })] };
        var choice = new ImportChoice(Port, cut, "", range, pressure ?? Typed.Of(28, "inH2O"), direction);
        return SweepImport.Entries(preview, preview.Sweeps.ToDictionary(s => s, s => (ImportChoice?)choice), Record.Get<BenchCard>(_bench), Record, Noon.AddHours(_hour++), "", out problems);
    }
}
