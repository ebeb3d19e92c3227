using Portwright.Judging.Ports;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>What a shop reads of its ports: few observe everything.</summary>
public sealed class Looks
{
    /// <summary>Lifts set, m, by kind.</summary>
    public Dictionary<PortKind, IReadOnlyList<double>> Lifts { get; } = [];

    public int SweepsAPort { get; set; } = 1;

    /// <summary>Readings a lift in one sweep.</summary>
    public int Repeats { get; set; } = 1;

    /// <summary>The second reading of a lift comes on the way down.</summary>
    public bool UpAndDown { get; set; }

    /// <summary>Balls, probe and flags are held at this lift of the list, counted from the highest, 1.</summary>
    public int HeldFromTop { get; set; } = 1;

    public bool Morning { get; set; } = true;

    public bool Evening { get; set; }

    public int EarlierMornings { get; set; }

    public bool Calibrated { get; set; } = true;

    public bool LeakWithEachSweep { get; set; } = true;

    /// <summary>Ports whose pinch alone is measured.</summary>
    public HashSet<MadePort> Pinches { get; } = [];

    /// <summary>Ports measured at every station.</summary>
    public HashSet<MadePort> Sections { get; } = [];

    /// <summary>Ports filled from a burette, all sections measured.</summary>
    public HashSet<MadePort> Filled { get; } = [];

    public HashSet<MadePort> Sounded { get; } = [];

    public List<PlacesLooked> Balls { get; } = [];

    public List<PlacesLooked> Rings { get; } = [];

    public List<PlacesLooked> Flags { get; } = [];

    /// <summary>True where anything but flow is read of a port.</summary>
    public bool LooksInto(MadePort port) =>
        Pinches.Contains(port) || Sections.Contains(port) || Filled.Contains(port) || Sounded.Contains(port)
        || Balls.Concat(Rings).Concat(Flags).Any(p => p.Port == port);
}

/// <summary>Places of one port at one station.</summary>
/// <param name="Bearings">Clock hours; null the middle.</param>
public sealed record PlacesLooked(MadePort Port, StationRole Station, IReadOnlyList<double?> Bearings);
