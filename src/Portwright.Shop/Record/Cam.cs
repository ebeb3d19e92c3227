namespace Portwright.Shop.Record;

/// <summary>What lifts the valve: lobe lift (m), rocker ratio, valve lash (m).</summary>
public sealed record CamLift(double LobeLift, double RockerRatio = 1, double Lash = 0)
{
    /// <summary>Net lift at the valve, m.</summary>
    public double NetLift() => Physics.Valves.NetLift.From(LobeLift, RockerRatio, Lash);
}

/// <summary>When a valve is open: by the cam card, or by a table of its lift. Angles in radians of crank; null where not known yet.</summary>
/// <param name="SeatDuration">Above <paramref name="SeatLift"/>.</param>
/// <param name="SeatLift">Lobe lift the seat duration is counted at, m.</param>
/// <param name="DurationAt050">Above 0.050 in (1.27 mm) of lobe lift.</param>
/// <param name="DurationAt200">Above 0.200 in (5.08 mm) of lobe lift.</param>
/// <param name="LobeCentre">Nose after top dead centre of gas exchange for an intake, before it for an exhaust.</param>
/// <param name="Table">Lift of the valve itself, its lash in, from seat to seat; it overrules the card.</param>
public sealed record CamTiming(
    double? SeatDuration = null,
    double? SeatLift = null,
    double? DurationAt050 = null,
    double? DurationAt200 = null,
    double? LobeCentre = null,
    IReadOnlyList<LiftAtAngle>? Table = null)
{
    /// <summary>m; null without a table.</summary>
    internal double? HighestOfTable => Table is { Count: > 0 } table ? table.Max(r => r.Lift) : null;
}

/// <summary>A row of a lift table.</summary>
/// <param name="Crank">rad after top dead centre of gas exchange; below zero before it.</param>
/// <param name="Lift">At the valve, m.</param>
public sealed record LiftAtAngle(double Crank, double Lift);
