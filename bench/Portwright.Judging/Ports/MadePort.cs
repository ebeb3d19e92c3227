using Portwright.Shop.Record;

namespace Portwright.Judging.Ports;

/// <summary>A port whose truth is known: what it flows, how it is shaped, where its air goes, what metal is left.</summary>
public sealed class MadePort
{
    public required PortKind Kind { get; init; }

    /// <summary>Number of its head in the job, from 0.</summary>
    public required int Head { get; init; }

    public required int Cylinder { get; init; }

    public required bool Mirrored { get; init; }

    public required MadeValve Valve { get; set; }

    public required FlowLaw Law { get; init; }

    /// <summary>Flow over what the law says, the same at all lifts.</summary>
    public double Level { get; set; }

    /// <summary>More of this one casting: how its level leans over lift, from low to high.</summary>
    public required double Lean { get; set; }

    /// <summary>Highest lift tested, m.</summary>
    public required double Top { get; init; }

    /// <summary>From flange to seat, m.</summary>
    public required double Length { get; init; }

    /// <summary>rad.</summary>
    public required double Turn { get; init; }

    public required IReadOnlyList<MadeStation> Stations { get; init; }

    /// <summary>Metal at a station and clock hour: what is there and the shop's limit, m.</summary>
    public List<MadeWall> Walls { get; } = [];

    /// <summary>What faults do to the flow: a factor by lift (m).</summary>
    public List<Func<double, double>> Faults { get; } = [];

    public Guid Id { get; set; }

    public Guid Cut { get; set; }

    /// <summary>Effective area (m2) at a lift (m).</summary>
    public double AreaAt(double lift) =>
        Law.At(lift) * Level * (1 + Lean * (lift / Top - 0.5)) * Faults.Aggregate(1.0, (f, g) => f * g(lift));

    public MadeStation At(StationRole role) => Stations.First(s => s.Role == role);
}

/// <summary>A place of the wall, m.</summary>
public sealed record MadeWall(MadeStation Station, double Bearing, double Thickness, double? Limit, Behind Behind);
