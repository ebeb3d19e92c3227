using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;

namespace Portwright.Judging.Faults;

/// <summary>Floor or a lower corner at 0.85, 0.7, 0.5 of its sisters' speed: fifteen percent is what a hand finds with a ball, half is dead air.</summary>
public sealed class LazyFloor() : LocalFault(
    "lazy floor or corner", StationRole.ShortSide, ["lazy-floor-or-corner"], "low-against-sisters", "uneven-sides", "busy-roof", "short-side-torn-off")
{
    protected override IReadOnlyList<double> Hours => [6, 6, 4.5, 7.5];

    protected override double Factor(Size size) => By(size, 0.85, 0.70, 0.50);
}

/// <summary>Roof at 1.12, 1.25, 1.45 of its sisters' speed: all the air goes there.</summary>
public sealed class BusyRoof() : LocalFault(
    "busy roof", StationRole.ShortSide, ["busy-roof"], "low-against-sisters", "uneven-sides", "lazy-floor-or-corner")
{
    protected override IReadOnlyList<double> Hours => [12, 12, 1.5, 10.5];

    protected override double Factor(Size size) => By(size, 1.12, 1.25, 1.45);
}

/// <summary>One side 1.12, 1.25, 1.45 times as fast against the other as in its sisters.</summary>
public sealed class UnevenSides() : LocalFault(
    "uneven sides", StationRole.ShortSide, ["uneven-sides"], "low-against-sisters", "busy-roof", "lazy-floor-or-corner")
{
    protected override IReadOnlyList<double> Hours => [3, 9];

    protected override double Factor(Size size) => By(size, 1.12, 1.25, 1.45);

    protected override double HalfWidth => 1.8;
}

/// <summary>Short side 1.15, 1.30, 1.50 times as fast as its sisters': too sharp a turn, the air about to leave it.</summary>
public sealed class FastShortSide() : LocalFault(
    "short side too fast", StationRole.ShortSide, ["short-side-too-fast"], "low-against-sisters", "backs-up", "lazy-floor-or-corner", "busy-roof")
{
    protected override IReadOnlyList<double> Hours => [6];

    protected override double Factor(Size size) => By(size, 1.15, 1.30, 1.50);

    protected override double Loss(Size size) => By(size, 0.005, 0.010, 0.020);
}

/// <summary>Behind the guide boss 0.85, 0.7, 0.5 of its sisters' speed, the flag trembling, swinging, hanging.</summary>
public sealed class GuideWake() : LocalFault(
    "wake behind the guide boss", StationRole.Bowl, ["guide-boss-wake"], "low-against-sisters", "lazy-floor-or-corner")
{
    protected override IReadOnlyList<double> Hours => [12];

    protected override double Factor(Size size) => By(size, 0.85, 0.70, 0.50);

    protected override void Also(MadeJob job, MadePort port, double bearing, Size size) =>
        Looked.Flag(job, port, StationRole.Bowl, bearing, By(size, Steadiness.Trembles, Steadiness.Swings, Steadiness.Hangs));
}

/// <summary>Air torn off the short side: a ball laid there mends it, by 0.2, 0.6, 1.5 percent of the flow; the flag swings, hangs, turns back; high lift pays 1, 2, 4 percent.</summary>
public sealed class TornOff() : LocalFault(
    "air torn off the short side", StationRole.ShortSide, ["short-side-torn-off"], "low-against-sisters", "backs-up", "lazy-floor-or-corner", "curve-unsteady", "busy-roof", "instruments-disagree")
{
    protected override IReadOnlyList<double> Hours => [6];

    protected override double Factor(Size size) => By(size, 0.75, 0.55, 0.35);

    protected override double Loss(Size size) => By(size, 0.01, 0.02, 0.04);

    protected override void Also(MadeJob job, MadePort port, double bearing, Size size)
    {
        job.Mended.Add(new PlaceOff(port, StationRole.ShortSide, bearing, Ball: true, By(size, 0.002, 0.006, 0.015)));
        Looked.Flag(job, port, StationRole.ShortSide, bearing, By(size, Steadiness.Swings, Steadiness.Hangs, Steadiness.TurnsBack));
    }
}
