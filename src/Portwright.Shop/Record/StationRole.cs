namespace Portwright.Shop.Record;

/// <summary>What a station is to the port: findings and the guards over thin metal go by this, never by a free name.</summary>
/// <remarks>Numbered by hand: the record keeps names, and what was kept must keep its meaning.</remarks>
public enum StationRole
{
    /// <summary>A place along the port like any other.</summary>
    Other = 0,

    /// <summary>Where the manifold meets it.</summary>
    Flange = 1,

    /// <summary>The narrow place, usually beside the pushrods.</summary>
    Pinch = 2,

    /// <summary>Where the floor turns down to the seat.</summary>
    ShortSide = 3,

    /// <summary>The widening over the seat.</summary>
    Bowl = 4,

    /// <summary>The last section under the seat.</summary>
    Throat = 5,

    /// <summary>Beside the guide and its boss.</summary>
    Guide = 6,
}

/// <summary>Reads the role out of a station's free name, for stations kept before they had one.</summary>
public static class StationRoles
{
    private static readonly (string Word, StationRole Role)[] Words =
    [
        ("flange", StationRole.Flange), ("entry", StationRole.Flange), ("manifold face", StationRole.Flange),
        ("pinch", StationRole.Pinch), ("pushrod", StationRole.Pinch),
        ("short side", StationRole.ShortSide), ("short turn", StationRole.ShortSide), ("short-side", StationRole.ShortSide),
        ("bowl", StationRole.Bowl), ("pocket", StationRole.Bowl),
        ("throat", StationRole.Throat),
        ("guide", StationRole.Guide), ("boss", StationRole.Guide),
    ];

    /// <summary>The roles in the order they lie, with the trade's name of each.</summary>
    public static IReadOnlyList<(StationRole Role, string Name)> All { get; } =
    [
        (StationRole.Flange, "flange"), (StationRole.Pinch, "pinch"), (StationRole.ShortSide, "short side"), (StationRole.Guide, "guide"),
        (StationRole.Bowl, "bowl"), (StationRole.Throat, "throat"), (StationRole.Other, "another place"),
    ];

    /// <summary>The one role a name speaks of; null where it speaks of none, or of several.</summary>
    public static StationRole? In(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var roles = Words.Where(w => name.Contains(w.Word, StringComparison.OrdinalIgnoreCase)).Select(w => w.Role).Distinct().ToList();
        return roles.Count == 1 ? roles[0] : null;
    }
}
