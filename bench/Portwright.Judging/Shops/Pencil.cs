using System.Globalization;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>How a shop writes its numbers: inches or millimetres, and no finer than the scale shows.</summary>
public sealed record Pencil(bool Metric)
{
    private const double Inch = 0.0254;

    /// <summary>What a caliper shows: .001 in or 0.02 mm.</summary>
    public double CaliperStep => Metric ? 0.00002 : 0.001 * Inch;

    /// <summary>A number rounded to a step, with the digits the step has.</summary>
    public static Typed Rounded(double value, double step, string unit)
    {
        var shown = Math.Round(value / step) * step;
        var digits = Math.Max(0, (int)Math.Ceiling(-Math.Log10(step) - 1e-9));
        // A step of .05 or .25 needs the digits of the step itself.
        while (digits < 6 && Math.Abs(Math.Round(step, digits) - step) > 1e-9) digits++;
        shown = Math.Round(shown, digits);
        var number = shown.ToString("F" + digits, CultureInfo.InvariantCulture);
        return new Typed(shown, unit, $"{number} {unit}".TrimEnd());
    }

    /// <summary>A length (m) off a caliper.</summary>
    public Typed Caliper(double length) => Metric ? Rounded(length * 1000, 0.02, "mm") : Rounded(length / Inch, 0.001, "in");

    /// <summary>A length (m) off a tape or scribed line.</summary>
    public double Tape(double length) => Metric ? Math.Round(length * 1000) / 1000 : Math.Round(length / Inch / 0.02) * 0.02 * Inch;

    /// <summary>A lift (m) on the dial.</summary>
    public Typed Lift(double lift) => Metric ? Rounded(lift * 1000, 0.01, "mm") : Rounded(lift / Inch, 0.001, "in");

    /// <summary>A radius gauge's leaf: by 1/32 in or half a millimetre.</summary>
    public Typed Radius(double radius) => Metric ? Rounded(radius * 1000, 0.5, "mm") : Rounded(radius / Inch, 0.03125, "in");

    public Typed Temperature(double kelvin) => Metric ? Rounded(kelvin - 273.15, 0.5, "°C") : Rounded(kelvin * 9 / 5 - 459.67, 1, "°F");

    public Typed Barometer(double pascal) => Metric ? Rounded(pascal / 100, 1, "hPa") : Rounded(pascal / 3386.38864, 0.01, "inHg");
}
