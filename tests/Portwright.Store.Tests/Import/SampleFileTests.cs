using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

public sealed class SampleFileTests
{
    [Fact]
    public void Lift_and_cfm_with_an_inch_mark_in_the_heading()
    {
        var p = Clean("01-lift-and-cfm.csv", 6);
        Assert.All(p.Readings, r => Assert.Equal(28 * 249.08891, r.TestPressure!.Si(Dimension.Pressure), 6));
        Assert.Equal((".100", 0.1, "in", "64.2", 64.2, "cfm"), Figures(p.Readings[0]));
        Assert.Equal("row 2, column B", p.Readings[0].Address);
    }

    [Fact]
    public void Thousandths_decimal_comma_and_three_repeats_beside_an_average()
    {
        var p = Clean("02-thousandths-three-repeats.csv", 15);
        Assert.Equal(("300", 300, "thou", "183,4", 183.4, "cfm"), Figures(p.Readings[6]));
        Assert.Equal([1, 2, 3], p.Readings.Take(3).Select(r => r.Repeat));
        Assert.Equal(ColumnRole.LeftOut, p.Mapping.Columns[4].Role);
    }

    [Fact]
    public void Millimetres_litres_and_tabs_in_UTF16()
    {
        var p = Clean("03-millimetres-tab.txt", 5);
        Assert.Equal(("7.6 mm", 7.6, "mm", "86,8", 86.8, "l/s"), Figures(p.Readings[2]));
    }

    [Fact]
    public void Notes_above_and_averages_below_are_never_readings()
    {
        var p = Clean("04-notes-totals-blank-lines.csv", 11);
        Assert.Equal(["row 14", "row 15", "row 16", "row 17"], p.LeftOut.Select(l => l.Row));
        Assert.DoesNotContain(p.Readings, r => r.Row > 12);
        Assert.All(p.Readings, r => Assert.Equal(28, r.TestPressure!.Value));
        Assert.Equal((2, 0.4), (p.Readings.Single(r => r.Row == 11).Repeat, p.Readings.Single(r => r.Row == 11).Lift.Value));
        // A formula in a note is text, letter for letter.
        Assert.Equal("=HYPERLINK(\"http://example.invalid\",\"look\")", p.Table[11, 3].Text);
    }

    [Fact]
    public void Ports_as_groups_of_columns()
    {
        var p = Clean("05-ports-in-groups.csv", 16);
        Assert.Equal(["Intake 1", "Intake 2"], p.Sweeps.Select(s => s.Port));
        Assert.Equal([("Intake 1", 1), ("Intake 1", 2), ("Intake 2", 1), ("Intake 2", 2)], p.Readings.Take(4).Select(r => (r.Port, r.Repeat)));
    }

    [Fact]
    public void Ports_as_columns_beside_a_ratio()
    {
        var p = Clean("06-ports-as-columns.csv", 15);
        Assert.Equal(["Int 1", "Int 2", "Ex 1", "Ex 2"], p.Sweeps.Select(s => s.Port));
        Assert.All(p.Readings, r => Assert.Equal((1, "cfm", 28.0), (r.Repeat, r.Reading.Unit, r.TestPressure!.Value)));
        Assert.Equal(ColumnRole.LeftOut, p.Mapping.Columns[5].Role);
    }

    [Fact]
    public void One_reading_a_line_with_port_run_and_test_pressure()
    {
        var p = Clean("07-one-reading-a-line.csv", 8);
        Assert.Equal(["1 Int", "1 Ex", "2 Int"], p.Sweeps.Select(s => s.Port));
        Assert.Equal((2, 129.3), (p.Readings[1].Repeat, p.Readings[1].Reading.Value));
        Assert.Equal([28, 28, 28, 28, 25, 25, 28, 28], p.Readings.Select(r => r.TestPressure!.Value));
    }

    [Fact]
    public void Lifts_across_the_top()
    {
        var p = Clean("08-lifts-across.csv", 15);
        Assert.True(p.Mapping.Turned);
        Assert.Equal(["Intake 1", "Intake 2", "Exhaust 1"], p.Sweeps.Select(s => s.Port));
        var third = p.Readings.First(r => r.Port == "Intake 1" && r.Lift.Value == 0.3);
        Assert.Equal((183.4, "row 4, column D"), (third.Reading.Value, third.Address));
        Assert.DoesNotContain(p.Readings, r => r.Row == 7);
    }

    [Fact]
    public void Tables_one_below_another_each_under_its_port()
    {
        var p = Clean("09-tables-one-below-another.csv", 8);
        Assert.Equal(["Intake 3", "Exhaust 3"], p.Sweeps.Select(s => s.Port));
        Assert.Equal((95.1, 2), (p.Readings[5].Reading.Value, p.Readings[5].Repeat));
    }

    [Fact]
    public void Percent_of_range_with_the_range_of_each_row()
    {
        var p = Clean("10-percent-of-range.txt", 4);
        Assert.Equal(["3", "3", "5", "5"], p.Readings.Select(r => r.Range));
        Assert.All(p.Readings, r => Assert.Equal((Dimension.Fraction, "%", 28.0), (r.Dimension, r.Reading.Unit, r.TestPressure!.Value)));
    }

    [Fact]
    public void Cuts_side_by_side_without_the_gains()
    {
        var p = Clean("11-cuts-side-by-side.csv", 12);
        Assert.Equal([0, 1, 2], p.Readings.Take(3).Select(r => r.Cut));
        Assert.Equal([61.0, 64.2, 65.0], p.Readings.Take(3).Select(r => r.Reading.Value));
    }

    [Fact]
    public void Numbers_only()
    {
        var p = Clean("12-numbers-only.csv", 4);
        Assert.Equal(("0.3", 0.3, "in", "183.4", 183.4, "cfm"), Figures(p.Readings[2]));
    }

    [Fact]
    public void Umlauts_of_Windows_and_a_sum_in_another_language()
    {
        var p = Clean("13-umlauts-and-comma.csv", 4);
        Assert.Equal("größer als gestern", p.Table[3, 2].Text);
        Assert.Equal(("7,5", 7.5, "mm", "86,1", 86.1, "l/s"), Figures(p.Readings[2]));
    }

    [Fact]
    public void An_average_that_carries_no_word()
    {
        var p = Clean("14-average-without-a-word.csv", 4);
        Assert.Equal("row 6", Assert.Single(p.LeftOut).Row);
    }

    [Fact]
    public void Two_lift_columns_each_with_its_own_port()
    {
        var p = Clean("15-two-lift-columns.csv", 7);
        Assert.Equal([0.08, 0.16, 0.24], p.Readings.Where(r => r.Port == "Exhaust").Select(r => r.Lift.Value));
        Assert.Equal([0.1, 0.2, 0.3, 0.4], p.Readings.Where(r => r.Port == "Intake").Select(r => r.Lift.Value));
    }

    [Fact]
    public void A_bad_cell_is_named_as_the_spreadsheet_names_it_and_nothing_can_be_saved()
    {
        var p = SampleFile.Preview("16-one-bad-cell.csv");
        var problem = Assert.Single(p.Problems);
        Assert.Equal("row 7, column C", problem.Address);
        Assert.StartsWith("row 7, column C: \"12.x\"", problem.Text, StringComparison.Ordinal);
        Assert.False(p.CanBeSaved);
    }

    [Fact]
    public void The_same_flow_in_another_unit_is_not_another_repeat()
    {
        var p = Clean("17-same-flow-twice.csv", 3);
        Assert.All(p.Readings, r => Assert.Equal(("cfm", 1, "mm"), (r.Reading.Unit, r.Repeat, r.Lift.Unit)));
    }

    [Fact]
    public void A_line_of_units_under_the_heading_and_lifts_as_fractions()
    {
        var p = Clean("18-units-under-the-heading.csv", 8);
        Assert.Equal(("3/8", 0.375, "in", "212.6", 212.6, "cfm"), Figures(p.Readings[4]));
        Assert.Equal([1, 2], p.Readings.Take(2).Select(r => r.Repeat));
        Assert.Equal("Intake 4", Assert.Single(p.Sweeps).Port);
    }

    [Fact]
    public void A_person_may_say_otherwise()
    {
        var p = SampleFile.Preview("17-same-flow-twice.csv");
        var cfm = p.Mapping.Columns[1];
        var other = p.Read(p.Mapping.With(cfm with { Role = ColumnRole.LeftOut }).With(p.Mapping.Columns[2] with { Role = ColumnRole.Reading }));
        Assert.Equal([30.3, 60.8, 86.6], other.Readings.Select(r => r.Reading.Value));
        Assert.All(other.Readings, r => Assert.Equal("l/s", r.Reading.Unit));
    }

    [Fact]
    public void Every_sample_reads_the_same_in_either_unit_system_when_its_units_are_named()
    {
        foreach (var name in new[] { "01-lift-and-cfm.csv", "03-millimetres-tab.txt", "13-umlauts-and-comma.csv", "17-same-flow-twice.csv" })
            Assert.Equal(SampleFile.Preview(name).Readings, SampleFile.Preview(name, UnitSystem.Si).Readings);
    }

    private static ImportPreview Clean(string name, int readings)
    {
        var p = SampleFile.Preview(name);
        Assert.True(p.Problems.Count == 0, string.Join("\n", p.Problems.Select(x => x.Text)));
        Assert.True(p.CanBeSaved);
        Assert.Equal(readings, p.Readings.Count);
        Assert.All(p.Readings, r => Assert.True(double.IsFinite(r.Lift.Si(Dimension.Lift)) && double.IsFinite(r.Reading.Si(r.Dimension))));
        return p;
    }

    private static (string, double, string, string, double, string) Figures(ImportedReading r) => (r.Lift.Text, r.Lift.Value, r.Lift.Unit, r.Reading.Text, r.Reading.Value, r.Reading.Unit);
}
