using System.Text.Json.Serialization;

namespace Portwright.Shop.Units;

/// <summary>A number as a person or a file gave it. Nothing is rounded or converted before it is stored.</summary>
/// <param name="Value">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit's name as we print it, such as <c>in</c>, <c>thou</c>, <c>inH2O</c>, <c>cfm</c>; empty for plain numbers.</param>
/// <param name="Text">What was typed, letter for letter.</param>
[method: JsonConstructor]
public sealed record Typed(double Value, string Unit, string Text)
{
    /// <summary>The value in the SI unit of the dimension.</summary>
    /// <exception cref="ArgumentException">The unit is not one of the dimension's.</exception>
    public double Si(Dimension dimension) => Units.Unit.Find(Unit, dimension) is { } unit
        ? unit.ToSi(Value)
        : throw new ArgumentException($"'{Unit}' is not a unit of {dimension}: {string.Join(", ", Units.Unit.All(dimension).Select(u => u.Name).Distinct())}.", nameof(dimension));

    /// <summary>What was typed, with the unit where the typing left it out: it means the same whatever units are shown around it.</summary>
    [JsonIgnore]
    public string WithUnit => Unit.Length == 0 || Text.Any(c => char.IsLetter(c) || c is '%' or '°' or '"' or '”' or '″' or '\'') ? Text.Trim() : $"{Text.Trim()} {Unit}";

    /// <summary>A number we made ourselves (a default, a demo), with the text that prints it.</summary>
    public static Typed Of(double value, string unit) =>
        new(value, unit, FormattableString.Invariant($"{value:R} {unit}").TrimEnd());
}
