using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

/// <summary>A page as a porter writes it, on paper, in a message or out of a spreadsheet.</summary>
public sealed class NotebookTests
{
    [Theory]
    [InlineData(".100 62\n.200 121\n.300 174")]
    [InlineData(".100 - 62\n.200 - 121\n.300 - 174")]
    [InlineData("0.100: 62 cfm\n0.200: 121 cfm\n0.300: 174 cfm")]
    [InlineData("100 62\n200 121\n300 174")]
    [InlineData("at .1 = 62\nat .2 = 121\nat .3 = 174")]
    [InlineData("lift cfm\n.100 62\n.200 121\n.300 174")]
    [InlineData("Lift,Flow\n.100,62\n.200,121\n.300,174")]
    [InlineData(".100\t62\n.200\t121\n.300\t174\n")]
    [InlineData("Lift (in);cfm\n0,100;62\n0,200;121\n0,300;174")]
    [InlineData("\r\n.100  62\r\n.200  121\r\n.300  174\r\n\r\n")]
    public void Lifts_and_flows_are_read_however_they_are_written(string page)
    {
        var read = Notebook.Read(page, null, UnitSystem.UsCustomary);
        Assert.Null(read.Problem);
        Assert.Empty(read.Preview!.Problems);
        Assert.Equal([(0.1, 62.0), (0.2, 121), (0.3, 174)], read.Preview.Readings.Select(r => (Math.Round(r.Lift.Si(Dimension.Lift) / 0.0254, 6), r.Reading.Value)));
        Assert.All(read.Preview.Readings, r => Assert.Equal(Dimension.VolumeFlow, r.Dimension));
    }

    [Fact]
    public void Port_pressure_and_repeats_are_taken_from_the_page_and_a_port_named_between_begins_another()
    {
        var read = Notebook.Read("Intake 2, 25\"\n.100 62 62.4\n.200 121 121.6\nexhaust 2\n.100 48\n.200 91", null, UnitSystem.UsCustomary);
        var preview = read.Preview!;
        Assert.Empty(preview.Problems);
        Assert.Equal([62, 62.4, 121, 121.6, 48, 91], preview.Readings.Select(r => r.Reading.Value));
        Assert.Equal(["intake 2", "exhaust 2"], preview.Sweeps.Select(s => PortWords.Plain(s.Port)));
        Assert.Equal([1, 2, 1, 2, 1, 1], preview.Readings.Select(r => r.Repeat));
        Assert.Equal(25, preview.Readings[0].TestPressure?.Value);
    }

    [Fact]
    public void A_line_is_found_again_by_its_row()
    {
        var read = Notebook.Read("Intake 1\n.100 62\n.200 1210", null, UnitSystem.UsCustomary);
        Assert.Equal(2, read.Lines[read.Preview!.Readings[1].Row - 1]);
    }

    [Theory]
    [InlineData("194.9 at .500", 194.9, 0.5, null)]
    [InlineData("194.9 cfm at 28 inH2O, lift .500", 194.9, 0.5, 28.0)]
    [InlineData("88.0 cfm at 10\" lift .450", 88.0, 0.45, 10.0)]
    public void One_number_is_a_page(string page, double flow, double lift, double? pressure)
    {
        var only = Assert.Single(Notebook.Read(page, null, UnitSystem.UsCustomary).Preview!.Readings);
        Assert.Equal((flow, lift, pressure), (only.Reading.Value, Math.Round(only.Lift.Si(Dimension.Lift) / 0.0254, 6), only.TestPressure?.Value));
    }

    [Theory]
    [InlineData("194.9")]
    [InlineData("194.9 cfm")]
    [InlineData("194.9 cfm at 28\"")]
    public void A_flow_without_a_lift_asks_for_the_lift_alone(string page)
    {
        Assert.True(Notebook.Read(page, null, UnitSystem.UsCustomary) is { NeedsLift: true, Preview: null, Problem: null });
        var only = Assert.Single(Notebook.Read(page, ".500", UnitSystem.UsCustomary).Preview!.Readings);
        Assert.Equal((194.9, 0.5), (only.Reading.Value, Math.Round(only.Lift.Si(Dimension.Lift) / 0.0254, 6)));
    }

    [Fact]
    public void Percent_stay_percent()
    {
        var read = Notebook.Read("lift %\n.100 31.5\n.200 52", null, UnitSystem.UsCustomary);
        Assert.All(read.Preview!.Readings, r => Assert.Equal(Dimension.Fraction, r.Dimension));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  \n ")]
    [InlineData("call the machinist on Tuesday")]
    public void A_page_without_numbers_ends_in_a_sentence(string page)
    {
        var read = Notebook.Read(page, null, UnitSystem.UsCustomary);
        Assert.True(read.Problem is { Length: > 10 } || read.Preview is { CanBeSaved: false, Problems: [{ Text.Length: > 10 }, ..] });
    }
}
