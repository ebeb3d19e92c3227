using System.Globalization;

namespace Portwright.Geometry.Working;

/// <summary>What a number of the working is, so that whoever prints it picks the unit.</summary>
public enum Dimension { Length, Area, Volume, Angle, Number }

/// <summary>A number of the working in SI (m, m2, m3, rad).</summary>
/// <param name="Value">m, m2, m3 or rad by its dimension, in SI; for a plain number none.</param>
public readonly record struct Quantity(double Value, Dimension Dimension)
{
    /// <param name="value">m.</param>
    public static Quantity Length(double value) => new(value, Dimension.Length);

    /// <param name="value">m2.</param>
    public static Quantity Area(double value) => new(value, Dimension.Area);

    /// <param name="value">m3.</param>
    public static Quantity Volume(double value) => new(value, Dimension.Volume);

    /// <param name="value">rad.</param>
    public static Quantity Angle(double value) => new(value, Dimension.Angle);

    /// <param name="value">No unit.</param>
    public static Quantity Number(double value) => new(value, Dimension.Number);
}

/// <summary>How a line's result enters the total.</summary>
public enum Effect { Adds, TakesOff, Aside, Total }

/// <summary>One line of hand working: "rectangle 1.250 × 2.100 = 2.625".</summary>
/// <param name="Label">What is worked out, in the trade's words.</param>
/// <param name="Formula">The sum with {0}, {1} … where the given numbers go.</param>
/// <param name="Given">The numbers of the formula.</param>
/// <param name="Result">What it gives; with <see cref="Effect.TakesOff"/> the amount taken off.</param>
/// <param name="Effect">Whether the result is added, taken off, used further on (aside) or the total.</param>
public sealed record WorkingLine(string Label, string Formula, IReadOnlyList<Quantity> Given, Quantity Result, Effect Effect = Effect.Adds)
{
    /// <summary>The formula with the given numbers printed by <paramref name="print"/>.</summary>
    public string Sum(Func<Quantity, string> print) =>
        string.Format(CultureInfo.InvariantCulture, Formula, [.. Given.Select(q => (object)print(q))]);
}
