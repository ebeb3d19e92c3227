using System.Globalization;

namespace Portwright;

/// <summary>Refuses arguments outside their stated range: a programmer's mistake, so it throws.</summary>
/// <remarks>One file, compiled into every room that reckons in figures, so that none of them has to show it to the others.</remarks>
internal static class Require
{
    public static double Positive(double value, string name, string unit)
    {
        if (!(value > 0) || double.IsInfinity(value)) Refuse(value, name, $"a finite number above zero, in {unit}");
        return value;
    }

    public static double NotNegative(double value, string name, string unit)
    {
        if (!(value >= 0) || double.IsInfinity(value)) Refuse(value, name, $"a finite number, zero or above, in {unit}");
        return value;
    }

    public static double Between(double value, double low, double high, string name, string unit)
    {
        if (!(value >= low && value <= high))
            Refuse(value, name, string.Create(CultureInfo.InvariantCulture, $"{low} to {high} {unit}"));
        return value;
    }

    public static void Refuse(double value, string name, string range) =>
        throw new ArgumentOutOfRangeException(name, value, $"{name} must be {range}.");

    /// <summary>A place along the port: a hair past an end, as rounding leaves it, is the end.</summary>
    public static double Along(double value, double from, double to, string name)
    {
        var hair = 1e-9 * (to - from);
        return Math.Clamp(Between(value, from - hair, to + hair, name, "m"), from, to);
    }
}
