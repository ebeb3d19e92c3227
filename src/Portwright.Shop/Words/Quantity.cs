using System.Globalization;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Shop.Words;

/// <summary>A number inside a sentence, a table or a drawing's caption: kept in SI, printed in the reader's units when it is laid out.</summary>
/// <param name="Si">In the SI unit of the dimension; a rotational speed in rad/s, a share of one.</param>
/// <param name="Expanded">Half of the 95 percent interval, SI; 0 where no doubt is known or told. It decides the digits (JCGM 100:2008, 7.2.6).</param>
/// <param name="Figures">Significant figures where the number is known no better than that; 0: by the doubt, else as the unit is usually printed.</param>
/// <param name="Signed">True for a difference: it is printed with its sign, and a temperature's without its zero.</param>
/// <param name="WithoutUnit">True for the first of two whose unit stands behind the second: <c>2.30 to 2.66 in²</c>.</param>
/// <param name="Budget">Key of the table that says where its doubt comes from; empty where there is none.</param>
public sealed record Quantity(double Si, Dimension Dimension, double Expanded = 0, int Figures = 0, bool Signed = false, bool WithoutUnit = false, string Budget = "")
{
    /// <summary>A length along or across the port, m: <c>.094 in</c>.</summary>
    public static Quantity Length(double metres) => new(metres, Dimension.Length);

    /// <summary>A valve lift, m: <c>.350</c>.</summary>
    public static Quantity Lift(double metres) => new(metres, Dimension.Lift);

    /// <summary>An air speed, m/s.</summary>
    public static Quantity Speed(double metresASecond) => new(metresASecond, Dimension.Speed);

    /// <summary>A volume flow, m3/s restated.</summary>
    public static Quantity Flow(double flow) => new(flow, Dimension.VolumeFlow);

    /// <inheritdoc cref="Flow(double)"/>
    public static Quantity Flow(Estimate flow) => Of(flow, Dimension.VolumeFlow);

    /// <summary>An area, m2.</summary>
    public static Quantity Area(double area) => new(area, Dimension.Area);

    /// <summary>A volume, m3.</summary>
    public static Quantity Volume(double volume) => new(volume, Dimension.Volume);

    /// <summary>A share of one, printed in percent.</summary>
    public static Quantity Share(double share) => new(share, Dimension.Fraction);

    /// <summary>A pressure difference, Pa.</summary>
    public static Quantity Pressure(double pascals) => new(pascals, Dimension.Pressure);

    /// <summary>A plain number.</summary>
    public static Quantity Ratio(double ratio, int figures = 0) => new(ratio, Dimension.Ratio, Figures: figures);

    /// <summary>An engine speed, turns a second.</summary>
    public static Quantity Turns(double turnsASecond) => new(turnsASecond * 2 * Math.PI, Dimension.RotationalSpeed);

    /// <summary>A result with its expanded doubt.</summary>
    public static Quantity Of(Estimate estimate, Dimension dimension)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return new(estimate.Value, dimension, estimate.Expanded());
    }

    /// <summary>A difference of two results, with its sign.</summary>
    /// <param name="level">Of the interval its doubt is half of: the comparison's own where many were made at once, so that doubt and verdict say the same.</param>
    public static Quantity Difference(Estimate difference, Dimension dimension, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return new(difference.Value, dimension, difference.Expanded(level), Signed: true);
    }

    /// <summary>The same number, known to a few significant figures only.</summary>
    public Quantity About(int figures) => this with { Figures = figures, Expanded = 0 };

    /// <summary>The same number, whose doubt that budget explains.</summary>
    public Quantity By(string budget) => this with { Budget = budget };

    /// <summary>As a reader sees it: <c>221.9 ± 1.1 cfm</c>, <c>.350</c>, <c>+2.4 lb-ft</c>.</summary>
    public string In(UnitSystem units) => WithoutUnit ? Bare(units) : Behind(Bare(units), units);

    /// <summary>Without the unit, for a table whose head names it.</summary>
    public string Bare(UnitSystem units)
    {
        if (!double.IsFinite(Si)) return Print.Nothing;
        var unit = Unit.Default(Dimension, units);
        var number = Signed ? Si / unit.Factor : unit.FromSi(Si);
        var text = Expanded > 0 && double.IsFinite(Expanded) ? WithDoubt(number, Expanded / unit.Factor)
            : Figures > 0 ? Digits(number, Math.Max(0, PlacesOf(number, Figures)), PlacesOf(number, Figures))
            : Trim(Digits(number, unit.Decimals, unit.Decimals));
        var sign = number < 0 ? "−" : Signed ? "+" : "";
        // A number that rounds to nothing has no sign.
        return (text.AsSpan().IndexOfAnyInRange('1', '9') < 0 || (Expanded > 0 && text.Split(' ')[0].AsSpan().IndexOfAnyInRange('1', '9') < 0) ? "" : sign) + text;

        string WithDoubt(double value, double doubt)
        {
            var places = Print.DecimalsOfDoubt(doubt);
            return $"{Digits(value, Math.Max(places, 0), places)} ± {Digits(doubt, Math.Max(places, 0), places)}";
        }

        string Digits(double value, int decimals, int places)
        {
            value = Math.Abs(value);
            if (places < 0)
            {
                var step = Math.Pow(10, -places);
                value = Math.Round(value / step, MidpointRounding.AwayFromZero) * step;
            }

            var shown = value.ToString((Dimension == Dimension.RotationalSpeed ? "N" : "F") + Math.Clamp(decimals, 0, 12).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            return IsInches(units) && shown.StartsWith("0.", StringComparison.Ordinal) ? shown[1..] : shown;
        }

        // What was set or stated, not measured, is written as a person writes it: 28 inH2O, 68 °F, 92 %.
        string Trim(string shown) => Dimension is Dimension.Pressure or Dimension.Barometer or Dimension.Temperature or Dimension.Fraction or Dimension.Angle or Dimension.Duration or Dimension.Ratio
            && shown.Contains('.', StringComparison.Ordinal) ? shown.TrimEnd('0').TrimEnd('.') : shown;
    }

    /// <summary>The unit's name in the reader's system; empty where it is left out, as behind a lift in inches.</summary>
    public static string UnitName(Dimension dimension, UnitSystem units) =>
        dimension == Dimension.Lift && units == UnitSystem.UsCustomary ? "" : Unit.Default(dimension, units).Name;

    /// <summary>For a debugger: whoever shows a quantity to a person lays it out with <see cref="In"/>.</summary>
    public override string ToString() => FormattableString.Invariant($"{Sentence.Flattened}{Si:R} {Dimension}");

    private string Behind(string number, UnitSystem units)
    {
        var name = UnitName(Dimension, units);
        return name.Length == 0 || number == Print.Nothing ? number : name == "°" ? number + name : $"{number} {name}";
    }

    private bool IsInches(UnitSystem units) => Dimension is Dimension.Length or Dimension.Lift && units == UnitSystem.UsCustomary;

    /// <summary>Decimals that show so many significant figures; negative where they end left of the point.</summary>
    private static int PlacesOf(double number, int figures) => number == 0 ? 0 : figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(number)));
}
