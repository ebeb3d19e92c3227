using System.Globalization;
using CsCheck;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Units;

public sealed class PrintTests
{
    private const double Cfm = 0.0004719474432;

    [Fact]
    public void A_lift_is_printed_as_the_trade_writes_it()
    {
        Assert.Equal(".350", Print.Number(0.350 * 0.0254, Dimension.Lift, UnitSystem.UsCustomary));
        Assert.Equal("1.050", Print.Number(1.050 * 0.0254, Dimension.Lift, UnitSystem.UsCustomary));
        Assert.Equal("8.89 mm", Print.Number(0.350 * 0.0254, Dimension.Lift, UnitSystem.Si));
    }

    // Two figures of doubt and rounding to its place: JCGM 100:2008, 7.2.6.
    [Theory]
    [InlineData(221.94, 1.13, "221.9 ± 1.1 cfm")]
    [InlineData(221.94, 0.996, "221.9 ± 1.0 cfm")]
    [InlineData(221.94, 0.0996, "221.94 ± 0.10 cfm")]
    [InlineData(221.94, 12.3, "222 ± 12 cfm")]
    [InlineData(221.94, 123, "220 ± 120 cfm")]
    [InlineData(221.94, 0, "221.9 cfm")]
    [InlineData(221.94, double.NaN, "221.9 cfm")]
    [InlineData(double.NaN, 1, "–")]
    public void The_doubt_decides_the_figures_shown(double value, double doubt, string printed) =>
        Assert.Equal(printed, Print.WithDoubt(value * Cfm, doubt * Cfm, Dimension.VolumeFlow, UnitSystem.UsCustomary));

    [Fact]
    public void The_doubt_of_a_temperature_is_a_difference() =>
        Assert.Equal("68.0 ± 1.8 °F", Print.WithDoubt(293.15, 1, Dimension.Temperature, UnitSystem.UsCustomary));

    [Fact]
    public void Printing_does_not_listen_to_the_machines_language()
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
        try
        {
            Assert.Equal("221.9 ± 1.1 cfm", Print.WithDoubt(221.94 * Cfm, 1.13 * Cfm, Dimension.VolumeFlow, UnitSystem.UsCustomary));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void What_is_printed_reads_back_to_the_last_figure_shown() =>
        Gen.Select(Gen.Enum<Dimension>(), Gen.Enum<UnitSystem>(), Gen.Double[0, 1], Gen.Int[0, 6]).Sample((dimension, system, share, decimals) =>
        {
            var (least, greatest) = TypedRange.Of(dimension);
            var unit = Unit.Default(dimension, system);
            // Lifts between 1.5 and 3 in are asked for with their unit; counts are whole.
            if (dimension == Dimension.Lift) greatest /= 2;
            if (dimension == Dimension.Count) decimals = 0;
            var si = least + share * (greatest - least);
            var printed = Print.Number(si, dimension, system, decimals);
            // Rounding to few figures may step just past the end of the range.
            if (!TypedNumber.TryParse(printed, dimension, system, "Field", out var back, out var problem))
            {
                Assert.Contains("outside", problem, StringComparison.Ordinal);
                Assert.True(share is < 0.02 or > 0.98 || decimals == 0, $"{printed}: {problem}");
                return;
            }
            Assert.True(Math.Abs(unit.FromSi(back.Si(dimension)) - unit.FromSi(si)) <= 0.5000001 * Math.Pow(10, -decimals) + 1e-9 * Math.Abs(unit.FromSi(si)), $"{si:R} printed {printed}");
        });
}
