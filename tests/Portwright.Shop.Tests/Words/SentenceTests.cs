using System.Text.Json;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Words;

public sealed class SentenceTests
{
    private const double Inch = 0.0254, Cfm = 0.0004719474432, FootPound = 1.3558179483314004;

    [Fact]
    public void A_sentence_reads_in_inches_and_in_millimetres_alike()
    {
        Sentence said = $"{Quantity.Length(0.094 * Inch)} over water at lift {Quantity.Lift(0.35 * Inch)}";
        Assert.Equal(".094 in over water at lift .350", said.In(UnitSystem.UsCustomary));
        Assert.Equal("2.39 mm over water at lift 8.89 mm", said.In(UnitSystem.Si));
    }

    // JCGM 100:2008, 7.2.6: the doubt to two figures, the value to the same place.
    [Theory]
    [InlineData(221.94, 1.13, "221.9 ± 1.1 cfm")]
    [InlineData(221.94, 12.3, "222 ± 12 cfm")]
    [InlineData(221.94, 123, "220 ± 120 cfm")]
    [InlineData(0.04, 1.1, "0.0 ± 1.1 cfm")]
    public void The_doubt_decides_the_digits(double value, double doubt, string shown) =>
        Assert.Equal(shown, new Quantity(value * Cfm, Dimension.VolumeFlow, doubt * Cfm).In(UnitSystem.UsCustomary));

    [Theory]
    [InlineData(2.44, 1.6, "+2.4 ± 1.6 cfm")]
    [InlineData(-2.44, 1.6, "−2.4 ± 1.6 cfm")]
    [InlineData(0.01, 1.6, "0.0 ± 1.6 cfm")]
    [InlineData(-0.01, 1.6, "0.0 ± 1.6 cfm")]
    public void A_difference_shows_its_sign_unless_it_rounds_to_nothing(double value, double doubt, string shown) =>
        Assert.Equal(shown, new Quantity(value * Cfm, Dimension.VolumeFlow, doubt * Cfm, Signed: true).In(UnitSystem.UsCustomary));

    [Fact]
    public void A_calculated_torque_has_the_figures_of_a_model()
    {
        Assert.Equal("395 lb-ft", new Quantity(395.37 * FootPound, Dimension.Torque).About(3).In(UnitSystem.UsCustomary));
        Assert.Equal("1020 lb-ft", new Quantity(1023.7 * FootPound, Dimension.Torque).About(3).In(UnitSystem.UsCustomary));
        Assert.Equal("536 N·m", new Quantity(395.37 * FootPound, Dimension.Torque).About(3).In(UnitSystem.Si));
    }

    [Theory]
    [InlineData(Dimension.Pressure, 28 * 249.08891, "28 inH2O", "6.974 kPa")]
    [InlineData(Dimension.Temperature, 293.15, "68 °F", "20 °C")]
    [InlineData(Dimension.Fraction, 0.88, "88 %", "88 %")]
    [InlineData(Dimension.Angle, Math.PI / 4, "45°", "45°")]
    [InlineData(Dimension.RotationalSpeed, 4980 * Math.PI / 30, "4,980 rpm", "4,980 rpm")]
    public void What_was_set_is_written_as_a_person_writes_it(Dimension dimension, double si, string us, string metric)
    {
        Assert.Equal(us, new Quantity(si, dimension).In(UnitSystem.UsCustomary));
        Assert.Equal(metric, new Quantity(si, dimension).In(UnitSystem.Si));
    }

    [Fact]
    public void The_first_of_two_leaves_its_unit_to_the_second()
    {
        var square = Inch * Inch;
        Sentence wanted = $"{Quantity.Area(2.3 * square).About(3) with { WithoutUnit = true }} to {Quantity.Area(2.66 * square).About(3)}";
        Assert.Equal("2.30 to 2.66 in²", wanted.In(UnitSystem.UsCustomary));
    }

    [Fact]
    public void Words_follow_the_units()
    {
        Sentence said = $"{Term.Aluminum} under the {Term.Carburetor}";
        Assert.Equal("aluminum under the carburetor", said.In(UnitSystem.UsCustomary));
        Assert.Equal("aluminium under the carburettor", said.In(UnitSystem.Si));
    }

    [Fact]
    public void A_quantity_made_text_too_early_is_found_at_once()
    {
        var early = $"the throat is {Quantity.Length(0.04)}";
        Assert.Throws<InvalidOperationException>(() => (Sentence)$"{early}, said the rule");
    }

    [Fact]
    public void A_sentence_once_read_takes_nothing_more()
    {
        Sentence said = $"done";
        _ = said.Pieces;
        Assert.Throws<InvalidOperationException>(() => said.AppendLiteral("more"));
    }

    [Fact]
    public void A_sentence_comes_back_from_the_record_as_it_was()
    {
        Sentence said = $"Open to {Quantity.Area(0.00153)} ({Term.Aluminum}), {new Quantity(0.001, Dimension.VolumeFlow, 0.0002, Signed: true)}; {Quantity.Ratio(0.6).About(2) with { WithoutUnit = true }}";
        var json = JsonSerializer.Serialize(said);
        Assert.Contains("\"dimension\":\"volume-flow\"", json, StringComparison.Ordinal);
        Assert.Equal(said, JsonSerializer.Deserialize<Sentence>(json));
    }

    [Fact]
    public void Every_dimension_comes_back_by_its_name()
    {
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            Sentence said = $"{new Quantity(1.5, dimension)}";
            Assert.Equal(said, JsonSerializer.Deserialize<Sentence>(JsonSerializer.Serialize(said)));
        }
    }

    [Theory]
    [InlineData("[{\"value\":1,\"dimension\":\"furlong\"}]")]
    [InlineData("[1]")]
    [InlineData("7")]
    public void A_sentence_that_cannot_be_one_is_refused(string json) =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Sentence>(json));
}
