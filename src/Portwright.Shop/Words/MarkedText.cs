using System.Globalization;
using Portwright.Shop.Units;

namespace Portwright.Shop.Words;

/// <summary>
/// Reads a sentence as records kept it before quantities had names: <c>Open the throat to ⟦0|0.0457⟧.</c>, the first number the place of
/// the dimension in a list, then the value in SI and, where there is one, the expanded doubt. It is read for ever and never written.
/// </summary>
public static class MarkedText
{
    private const char Open = '⟦', Shut = '⟧';

    /// <summary>The list those places count in. It is history: nothing is put into it or moved.</summary>
    private static readonly Dimension[] Places =
    [
        Dimension.Length, Dimension.Lift, Dimension.Elevation, Dimension.Pressure, Dimension.Barometer, Dimension.Temperature, Dimension.VolumeFlow,
        Dimension.MassFlow, Dimension.Speed, Dimension.Area, Dimension.Volume, Dimension.Angle, Dimension.Fraction, Dimension.Ratio, Dimension.Density,
        Dimension.RotationalSpeed, Dimension.Power, Dimension.Torque, Dimension.Viscosity, Dimension.Duration, Dimension.Count,
    ];

    /// <summary>The sentence; what only looks like a mark stays as it stands.</summary>
    public static Sentence Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var pieces = new List<Piece>();
        var at = 0;
        while (text.IndexOf(Open, at) is >= 0 and var open && text.IndexOf(Shut, open) is >= 0 and var shut)
        {
            if (Quantity(text[(open + 1)..shut]) is { } quantity)
            {
                pieces.Add(new Piece.Plain(text[at..open]));
                pieces.Add(new Piece.Number(quantity));
            }
            else
            {
                pieces.Add(new Piece.Plain(text[at..(shut + 1)]));
            }

            at = shut + 1;
        }

        pieces.Add(new Piece.Plain(text[at..]));
        return new(pieces);
    }

    private static Quantity? Quantity(string mark)
    {
        var parts = mark.Split('|');
        if (parts.Length is < 2 or > 3 || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var place) || place >= Places.Length) return null;
        return Number(parts[1]) is not { } value ? null
            : parts.Length == 2 ? new(value, Places[place])
            : Number(parts[2]) is { } doubt ? new(value, Places[place], doubt) : null;
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
}
