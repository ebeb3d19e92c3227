using System.Globalization;
using System.Text.Json;
using CsCheck;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Units;

/// <summary>Spellings: common practice, no source. Factors are checked against NIST SP 811 in the reference tests.</summary>
public sealed class TypedNumberTests
{
    [Theory]
    [InlineData(".300", 0.300, "in")]
    [InlineData("0.3", 0.3, "in")]
    [InlineData(",300", 0.3, "in")]
    [InlineData("0,300", 0.3, "in")]
    [InlineData("300", 300, "thou")]
    [InlineData("1.1", 1.1, "in")]
    [InlineData("7.6 mm", 7.6, "mm")]
    [InlineData("7,6mm", 7.6, "mm")]
    [InlineData("12.7\u00A0mm", 12.7, "mm")]
    [InlineData("300 thou", 300, "thou")]
    [InlineData("62.5 mil", 62.5, "thou")]
    [InlineData("1/2\"", 0.5, "in")]
    [InlineData("1/2in.", 0.5, "in")]
    [InlineData("1 1/2 in", 1.5, "in")]
    [InlineData("1-1/2 in", 1.5, "in")]
    [InlineData("½ in", 0.5, "in")]
    [InlineData("1½\"", 1.5, "in")]
    [InlineData(" .5'' ", 0.5, "in")]
    [InlineData("1.27 cm", 1.27, "cm")]
    [InlineData("5e-1", 0.5, "in")]
    public void A_lift_is_read_as_a_porter_types_it(string text, double value, string unit)
    {
        var typed = Read(text, Dimension.Lift);
        Assert.Equal((value, unit, text), (typed.Value, typed.Unit, typed.Text));
    }

    [Theory]
    [InlineData("28", Dimension.Pressure, 28, "inH2O")]
    [InlineData("28inH2O", Dimension.Pressure, 28, "inH2O")]
    [InlineData("28\"", Dimension.Pressure, 28, "inH2O")]
    [InlineData("28 \"H2O", Dimension.Pressure, 28, "inH2O")]
    [InlineData("28 in. H₂O", Dimension.Pressure, 28, "inH2O")]
    [InlineData("28 inH2O60F", Dimension.Pressure, 28, "inH2O60F")]
    [InlineData("29.92 inHg", Dimension.Barometer, 29.92, "inHg")]
    [InlineData("29,92", Dimension.Barometer, 29.92, "inHg")]
    [InlineData("101.3 kPa", Dimension.Barometer, 101.3, "kPa")]
    [InlineData("1013 mbar", Dimension.Barometer, 1013, "mbar")]
    [InlineData("1013 hPa", Dimension.Barometer, 1013, "hPa")]
    [InlineData("101325 Pa", Dimension.Barometer, 101325, "Pa")]
    [InlineData("101325 PA", Dimension.Barometer, 101325, "Pa")]
    [InlineData("711 mmH2O", Dimension.Pressure, 711, "mmH2O")]
    [InlineData("71.1 cmH2O", Dimension.Pressure, 71.1, "cmH2O")]
    [InlineData("1 psi", Dimension.Pressure, 1, "psi")]
    [InlineData("221.9 CFM", Dimension.VolumeFlow, 221.9, "cfm")]
    [InlineData("221.9 ft³/min", Dimension.VolumeFlow, 221.9, "cfm")]
    [InlineData("104.7 L/s", Dimension.VolumeFlow, 104.7, "l/s")]
    [InlineData("377 m3/h", Dimension.VolumeFlow, 377, "m³/h")]
    [InlineData("0.1 m³/s", Dimension.VolumeFlow, 0.1, "m³/s")]
    [InlineData("1,234.5 cfm", Dimension.VolumeFlow, 1234.5, "cfm")]
    [InlineData("1.234,5 cfm", Dimension.VolumeFlow, 1234.5, "cfm")]
    [InlineData("1\u202F234 cfm", Dimension.VolumeFlow, 1234, "cfm")]
    [InlineData("300 ft/s", Dimension.Speed, 300, "ft/s")]
    [InlineData("91 m/s", Dimension.Speed, 91, "m/s")]
    [InlineData("−4 °F", Dimension.Temperature, -4, "°F")]
    [InlineData("68F", Dimension.Temperature, 68, "°F")]
    [InlineData("20 degC", Dimension.Temperature, 20, "°C")]
    [InlineData("20 ℃", Dimension.Temperature, 20, "°C")]
    [InlineData("293.15 K", Dimension.Temperature, 293.15, "K")]
    [InlineData("45", Dimension.Fraction, 45, "%")]
    [InlineData("45 %", Dimension.Fraction, 45, "%")]
    [InlineData("182cc", Dimension.Volume, 182, "cc")]
    [InlineData("182 cm³", Dimension.Volume, 182, "cc")]
    [InlineData("182 ml", Dimension.Volume, 182, "cc")]
    [InlineData("2.1 in2", Dimension.Area, 2.1, "in²")]
    [InlineData("1350 mm²", Dimension.Area, 1350, "mm²")]
    [InlineData("45°", Dimension.Angle, 45, "°")]
    [InlineData("45 deg", Dimension.Angle, 45, "°")]
    [InlineData("7200 rpm", Dimension.RotationalSpeed, 7200, "rpm")]
    [InlineData("0.1 kg/s", Dimension.MassFlow, 0.1, "kg/s")]
    [InlineData("14 lb/min", Dimension.MassFlow, 14, "lb/min")]
    [InlineData("450 hp", Dimension.Power, 450, "hp")]
    [InlineData("335 kW", Dimension.Power, 335, "kW")]
    [InlineData("400 lb-ft", Dimension.Torque, 400, "lb-ft")]
    [InlineData("540 Nm", Dimension.Torque, 540, "N·m")]
    [InlineData("18.1 μPa·s", Dimension.Viscosity, 18.1, "µPa·s")]
    [InlineData("18.1 \u00B5Pa s", Dimension.Viscosity, 18.1, "µPa·s")]
    [InlineData("8", Dimension.Count, 8, "")]
    public void A_number_with_its_unit_is_honoured(string text, Dimension dimension, double value, string unit)
    {
        var typed = Read(text, dimension);
        Assert.Equal((value, unit, text), (typed.Value, typed.Unit, typed.Text));
    }

    [Theory]
    [InlineData("", Dimension.VolumeFlow, "is empty")]
    [InlineData("12.x", Dimension.VolumeFlow, "\"x\" is not a unit")]
    [InlineData("abc", Dimension.VolumeFlow, "is not a number")]
    [InlineData("NaN", Dimension.VolumeFlow, "is not a number")]
    [InlineData("∞", Dimension.VolumeFlow, "is not a number")]
    [InlineData("1e999", Dimension.VolumeFlow, "is not a number")]
    [InlineData("1..2", Dimension.VolumeFlow, "is not a number")]
    [InlineData("1,2,3", Dimension.VolumeFlow, "is not a number")]
    [InlineData("300 250", Dimension.VolumeFlow, "is not a number")]
    [InlineData("1/0 in", Dimension.Length, "is not a number")]
    [InlineData("1,234", Dimension.VolumeFlow, "1234 or 1.234")]
    [InlineData("-5", Dimension.VolumeFlow, "below zero")]
    [InlineData("12 mm", Dimension.VolumeFlow, "not a unit known here. Use one of cfm, l/s")]
    [InlineData("1013", Dimension.Barometer, "outside")]
    [InlineData("7.6", Dimension.Lift, "7.6 mm or 7.6 thou")]
    [InlineData("12", Dimension.Lift, "12 mm or 12 thou")]
    [InlineData("300 mm", Dimension.Lift, "outside")]
    [InlineData("4.5", Dimension.Count, "whole number")]
    public void A_number_that_cannot_be_taken_names_field_value_and_cure(string text, Dimension dimension, string says)
    {
        Assert.False(TypedNumber.TryParse(text, dimension, UnitSystem.UsCustomary, "Lift 3", out _, out var problem));
        Assert.StartsWith("Lift 3 ", problem, StringComparison.Ordinal);
        Assert.Contains(says, problem, StringComparison.Ordinal);
        Assert.Contains(text, problem, StringComparison.Ordinal);
        Assert.DoesNotContain('!', problem);
    }

    [Fact]
    public void A_text_far_too_long_for_a_number_is_refused_without_being_repeated()
    {
        Assert.False(TypedNumber.TryParse(new string('9', 100_000), Dimension.VolumeFlow, UnitSystem.UsCustomary, "Flow", out _, out var problem));
        Assert.True(problem.Length < 250, problem);
    }

    [Fact]
    public void A_file_whose_decimal_mark_is_known_leaves_nothing_ambiguous()
    {
        Assert.Equal(1.234, Read("1,234", Dimension.VolumeFlow, DecimalMark.Comma).Value);
        Assert.Equal(1234, Read("1.234", Dimension.VolumeFlow, DecimalMark.Comma).Value);
        Assert.Equal(1234, Read("1,234", Dimension.VolumeFlow, DecimalMark.Point).Value);
    }

    [Fact]
    public void In_SI_a_bare_lift_is_millimetres()
    {
        Assert.True(TypedNumber.TryParse("12", Dimension.Lift, UnitSystem.Si, "Lift", out var typed, out _));
        Assert.Equal("mm", typed.Unit);
        Assert.Equal(0.012, typed.Si(Dimension.Lift), 15);
    }

    [Fact]
    public void A_unit_of_another_dimension_is_a_programmers_mistake() =>
        Assert.Throws<ArgumentException>(() => new Typed(1, "cfm", "1 cfm").Si(Dimension.Lift));

    [Fact]
    public void What_was_typed_survives_being_stored()
    {
        var typed = Read("½ \"", Dimension.Lift);
        Assert.Equal(typed, JsonSerializer.Deserialize<Typed>(JsonSerializer.Serialize(typed)));
    }

    [Fact]
    public void Every_unit_round_trips_through_SI() =>
        Gen.Select(Gen.OneOf<Unit>([.. Enum.GetValues<Dimension>().SelectMany(Unit.All)]), Gen.Double[1e-3, 1e4]).Sample((unit, x) =>
        {
            // An offset scale (°F, °C) is compared on its own zero.
            Assert.True(Math.Abs(unit.FromSi(unit.ToSi(x)) - x) <= 1e-12 * Math.Max(x, Math.Abs(unit.Offset)), $"{x:R} {unit.Name}");
            Assert.Same(unit, Unit.Find(unit.Name, unit.Dimension));
        });

    [Fact]
    public void Random_text_is_read_or_refused_the_same_in_every_language() =>
        Gen.Select(Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,/-+eE ½\"'°%mincftlsPaHg\u00A0\u2212²"], 0, 14]), Gen.Enum<Dimension>(), Gen.Enum<UnitSystem>())
            .Sample((text, dimension, system) =>
            {
                var plain = Outcome("", text, dimension, system);
                Assert.Equal(plain, Outcome("de-DE", text, dimension, system));
                Assert.Equal(plain, Outcome("tr-TR", text, dimension, system));
            }, iter: 20_000);

    private static (bool, Typed, string) Outcome(string culture, string text, Dimension dimension, UnitSystem system)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            var taken = TypedNumber.TryParse(text, dimension, system, "Field", out var typed, out var problem);
            Assert.Equal(taken, problem.Length == 0);
            Assert.Equal(taken, double.IsFinite(typed.Value));
            if (taken) Assert.True(double.IsFinite(typed.Si(dimension)));
            return (taken, typed, problem);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Typed Read(string text, Dimension dimension, DecimalMark mark = DecimalMark.Either)
    {
        Assert.True(TypedNumber.TryParse(text, dimension, UnitSystem.UsCustomary, "Field", mark, null, out var typed, out var problem), problem);
        return typed;
    }
}
