using Portwright.Geometry.Views;

namespace Portwright.Shop.Words;

/// <summary>Places round a section in words of the metal.</summary>
public static class Bearings
{
    /// <summary><c>6 o'clock (floor)</c>.</summary>
    /// <param name="hours">Clock hour as the record keeps it.</param>
    public static string Words(double hours) => FormattableString.Invariant($"{hours:0.#} o'clock ({ViewWords.Metal(hours)})");

    /// <summary>A place this share of the way in from the wall to the centre, or farther in, lies in the middle and at no part of the wall; our own choice.</summary>
    public const double MiddleFrom = 0.6;

    /// <summary>A place with its depth: <c>in the middle</c>, else <c>.250 in from the wall at 12 o'clock (roof)</c>.</summary>
    /// <param name="hours">Clock hour as the record keeps it.</param>
    /// <param name="depth">In from the wall, m.</param>
    /// <param name="ofCentre">How far in the centre lies at that hour, m.</param>
    public static Sentence Words(double hours, double depth, double ofCentre) =>
        depth > MiddleFrom * ofCentre ? (Sentence)$"in the middle" : $"{Quantity.Length(depth)} from the wall at {Words(hours)}";
}
