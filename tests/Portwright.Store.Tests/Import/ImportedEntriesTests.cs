using Portwright.Shop.Record;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

public sealed class ImportedEntriesTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.FromHours(1));

    [Fact]
    public void The_same_file_into_the_same_sweep_is_the_same_entries()
    {
        var preview = SampleFile.Preview("05-ports-in-groups.csv");
        var targets = preview.Sweeps.ToDictionary(s => s, s => (ImportTarget?)new ImportTarget(Guid.NewGuid(), Guid.NewGuid()));
        var first = ImportedEntries.Of(preview, targets, Noon);
        var again = ImportedEntries.Of(SampleFile.Preview("05-ports-in-groups.csv"), targets, Noon);
        Assert.Equal(first, again);
        Assert.Equal(16, first.Select(e => e.Number).Distinct().Count());
        Assert.Equal(16, first.Select(e => e.Subject).Distinct().Count());
        var elsewhere = preview.Sweeps.ToDictionary(s => s, s => (ImportTarget?)new ImportTarget(Guid.NewGuid(), Guid.NewGuid()));
        Assert.Empty(ImportedEntries.Of(preview, elsewhere, Noon).Select(e => e.Number).Intersect(first.Select(e => e.Number)));
    }

    [Fact]
    public void The_same_file_imported_another_day_adds_nothing()
    {
        using var folder = new TemporaryFolder();
        using var journal = Journal.Open(folder.Path);
        var job = Guid.NewGuid();
        var preview = SampleFile.Preview("01-lift-and-cfm.csv");
        var targets = new Dictionary<(string, int?), ImportTarget?> { [("", null)] = new ImportTarget(Guid.NewGuid(), job) };
        Assert.Equal(6, journal.Append(ImportedEntries.Of(preview, targets, Noon, record: Ledger.Of(journal.ReadJob(job)))));
        Assert.Empty(ImportedEntries.Of(preview, targets, Noon.AddDays(1), "mk", Ledger.Of(journal.ReadJob(job))));
        Assert.Equal(6, journal.ReadJob(job).Count);
    }

    [Fact]
    public void An_entry_carries_the_cell_it_came_from_and_the_text_as_it_stood()
    {
        var preview = SampleFile.Preview("02-thousandths-three-repeats.csv");
        var target = new ImportTarget(Guid.NewGuid(), Guid.NewGuid(), "3");
        var entry = ImportedEntries.Of(preview, new Dictionary<(string, int?), ImportTarget?> { [("", null)] = target }, Noon, "mk")[6];
        var reading = Assert.IsType<FlowReading>(entry.Fact);
        Assert.Equal(("02-thousandths-three-repeats.csv, row 4, column B", "mk", target.Job), (entry.Source, entry.Hand, entry.Job));
        Assert.Equal((target.Sweep, "3", "300", "183,4"), (reading.Sweep, reading.Range, reading.Lift.Text, reading.Reading.Text));
    }

    [Fact]
    public void A_port_may_be_left_out_but_not_forgotten()
    {
        var preview = SampleFile.Preview("05-ports-in-groups.csv");
        var targets = new Dictionary<(string, int?), ImportTarget?> { [("Intake 1", null)] = new ImportTarget(Guid.NewGuid(), Guid.NewGuid()) };
        Assert.Throws<ArgumentException>(() => ImportedEntries.Of(preview, targets, Noon));
        targets[("Intake 2", null)] = null;
        Assert.Equal(8, ImportedEntries.Of(preview, targets, Noon).Count);
    }

    [Fact]
    public void A_preview_with_a_problem_gives_no_entries() =>
        Assert.Throws<InvalidOperationException>(() => ImportedEntries.Of(SampleFile.Preview("16-one-bad-cell.csv"), new Dictionary<(string, int?), ImportTarget?>(), Noon));

    [Theory]
    [InlineData("Meter temp (F)", "Plenum temperature, F", "88.5", "°F")]
    [InlineData("Temp at flow meter [°C]", "Plenum °C", "31.4", "°C")]
    [InlineData("T meter", "T plenum", "88.5", "°F")]
    public void Thermometers_at_the_meter_and_in_the_plenum_have_columns_of_their_own(string meter, string plenum, string text, string unit)
    {
        var csv = $"Lift;CFM;{meter};{plenum};Temp\n.100;62.1;{text};{text};70\n.200;121.4;;{text};70\n";
        var preview = SampleFile.Preview(System.Text.Encoding.UTF8.GetBytes(csv), "warm.csv");
        Assert.Empty(preview.Problems);
        var readings = ImportedEntries.Of(preview, new Dictionary<(string, int?), ImportTarget?> { [("", null)] = new ImportTarget(Guid.NewGuid(), Guid.NewGuid()) }, Noon)
            .Select(e => (FlowReading)e.Fact).ToList();
        Assert.Equal([62.1, 121.4], readings.Select(r => r.Reading.Value));
        Assert.Equal((text, unit), (readings[0].MeterTemperature!.Text, readings[0].MeterTemperature!.Unit));
        Assert.Null(readings[1].MeterTemperature);
        Assert.All(readings, r => Assert.Equal((text, unit), (r.PlenumTemperature!.Text, r.PlenumTemperature!.Unit)));
    }

    [Fact]
    public void A_temperature_that_is_none_is_named_by_its_cell()
    {
        var preview = SampleFile.Preview("Lift;CFM;Plenum temp\n.100;62.1;8x\n.200;121.4;88\n"u8.ToArray(), "warm.csv");
        Assert.Contains("row 2, column C", Assert.Single(preview.Problems).Text, StringComparison.Ordinal);
        Assert.False(preview.CanBeSaved);
    }
}
