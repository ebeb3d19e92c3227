using Portwright.Judging.Ports;

namespace Portwright.Judging.Trial;

/// <summary>What became of a thing said.</summary>
public enum Became
{
    /// <summary>It is true of the port: planted, or so by its own measure.</summary>
    True,

    /// <summary>It may fairly follow from what was planted: counted neither way.</summary>
    Fair,

    False,
}

/// <summary>A thing the program said of a made port.</summary>
/// <param name="Key">Of the rule.</param>
/// <param name="Chance">That it is so, 0 to 1; null for a remark without one.</param>
public sealed record Said(MadePort? Port, string Key, double? Chance, Became Became);
