using Portwright.Geometry.Views;

namespace Portwright.Shop.Words;

/// <summary>Places round a section in words of the metal.</summary>
public static class Bearings
{
    /// <summary><c>6 o'clock (floor)</c>.</summary>
    /// <param name="hours">Clock hour as the record keeps it.</param>
    public static string Words(double hours) => FormattableString.Invariant($"{hours:0.#} o'clock ({ViewWords.Metal(hours)})");
}
