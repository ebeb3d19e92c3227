using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>Valve and seat. What a valve usually is: common practice, no source.</summary>
public static class EnteredValve
{
    private const double Degree = Math.PI / 180;

    /// <summary>Head diameter of the valve of a sister port: what the plan and the other ports of the kind say.</summary>
    public static readonly EnteredField SisterHead = new("valve.sister-head", "Valve head of the other ports", Dimension.Length, 0.008, 0.1, _ => []);

    public static readonly EnteredField Head = new("valve.head", "Valve head", Dimension.Length, 0.008, 0.1, around =>
    {
        LikelyRange usual = new(0.016, 0.062, $"a valve's head is {Quantity.Length(0.016)} to {Quantity.Length(0.062)}");
        var byBore = around[EnteredPlan.Bore] is { } bore
            ? new LikelyRange(0.22 * bore, 0.62 * bore, $"one valve of a bore of {Quantity.Length(bore)} is {Quantity.Length(0.22 * bore)} to {Quantity.Length(0.62 * bore)}") : null;
        var bySisters = around[SisterHead] is { } sister
            ? new LikelyRange(0.9 * sister, 1.1 * sister, $"the other ports of the job have {Quantity.Length(sister)}") : null;
        return [usual.Within(byBore).Within(bySisters)];
    });

    public static readonly EnteredField Throat = new("valve.throat", "Throat under the seat", Dimension.Length, 0.005, 0.1, around => [around[Head] is { } head
        ? new(0.78 * head, 0.96 * head, $"under a valve of {Quantity.Length(head)} a throat is {Quantity.Length(0.78 * head)} to {Quantity.Length(0.96 * head)}")
        : new(0.012, 0.058, $"a throat is {Quantity.Length(0.012)} to {Quantity.Length(0.058)}")]);

    /// <summary>Seats are cut with stones and cutters of a few angles.</summary>
    public static readonly EnteredField SeatAngle = new("valve.seat-angle", "Seat angle", Dimension.Angle, 10 * Degree, 75 * Degree, _ =>
        [.. new[] { (45.0, 1.6), (30, 1.1), (50, 1.1), (55, 0.6), (60, 0.6), (15, 0.6), (20, 0.6) }
            .Select(a => new LikelyRange((a.Item1 - a.Item2) * Degree, (a.Item1 + a.Item2) * Degree, $"seats are cut at 30, 45, 50 or 55 degrees"))]);

    public static readonly EnteredField SeatWidth = new("valve.seat-width", "Seat width", Dimension.Length, 0.0002, 0.012, around =>
        [new(0.0006, Math.Min(0.0045, 0.12 * (around[Head] ?? 1)), $"a seat is {Quantity.Length(0.0006)} to {Quantity.Length(Math.Min(0.0045, 0.12 * (around[Head] ?? 1)))} wide")]);

    public static readonly EnteredField Stem = new("valve.stem", "Stem", Dimension.Length, 0.002, 0.02, around =>
        [new(0.0043, Math.Min(0.0128, 0.36 * (around[Head] ?? 1)), $"a stem is {Quantity.Length(0.0043)} to {Quantity.Length(Math.Min(0.0128, 0.36 * (around[Head] ?? 1)))} thick")]);
}
