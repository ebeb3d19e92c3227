using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;

namespace Portwright.Judging.Trial;

/// <summary>
/// What is true of a made port by its own measure, planted or not: castings scatter, and a port that came out two percent low is low. Each limit lies at or under the smallest fault planted of its kind.
/// </summary>
public static class Truth
{
    /// <summary>A port that flows this much less than its sisters is low.</summary>
    public const double Low = 0.01;

    public static bool Holds(MadeShop shop, MadePort port, string key)
    {
        var job = shop.Job;
        return key switch
        {
            "low-against-sisters" => Against(job, port, 0.1, 1) <= -Low,
            "seat-limits-low-lift" => Against(job, port, 0, 0.1) - Against(job, port, 0.15, 1) <= -0.03,
            "small-against-sisters" => port.Stations.Any(s => Median(job.SistersOf(port).Select(p => p.At(s.Role).Section.Area)) * 0.98 >= s.Section.Area),
            "stalls-before-cam-lift" => Gain(port, CamLift(job, port)) < 0.015,
            "backs-up" => Fall(port) >= 0.0075,
            "throat-too-small" => port.Valve.Throat < 0.85 * port.Valve.Head,
            "throat-too-large" => port.Valve.Throat > 0.92 * port.Valve.Head,
            "bowl-too-large" => port.At(StationRole.Bowl).Section.Area > 1.20 * port.At(StationRole.Throat).Section.Area,
            "port-speed-against-plan" => port.Kind == PortKind.Intake && job.Engine.InletMach(port.AreaAt) > 0.6,
            "thin-metal" => port.Walls.Any(w => w.Limit is { } limit && w.Thickness < limit),
            "lazy-floor-or-corner" => Places(job, port, StationRole.ShortSide, 4.5, 6, 7.5).Any(f => f <= 0.88),
            "busy-roof" => Places(job, port, StationRole.ShortSide, 10.5, 12, 1.5).Any(f => f >= 1.10),
            "short-side-too-fast" => Places(job, port, StationRole.ShortSide, 6).Any(f => f >= 1.12),
            "guide-boss-wake" => Places(job, port, StationRole.Bowl, 12).Any(f => f <= 0.88),
            "uneven-sides" => port.Stations.Any(s => Places(job, port, s.Role, 3, 9).ToList() is var sides && sides[0] / sides[1] is >= 1.10 or <= 1 / 1.10),
            "bench-not-fit" => Unproved(job),
            // That a sound port needs no cut is no fault found.
            "nothing-worth-cutting" => shop.Planted?.Ports.Contains(port) != true,
            _ => false,
        };
    }

    /// <summary>Mean over lift, as L/D from and to, of the flow over the sisters' median, less one.</summary>
    private static double Against(MadeJob job, MadePort port, double from, double to)
    {
        var lifts = job.Looks.Lifts[port.Kind].Where(l => l / port.Valve.Head >= from && l / port.Valve.Head <= to).ToList();
        return lifts.Count == 0 ? 0 : lifts.Average(l => port.AreaAt(l) / Median(job.SistersOf(port).Select(s => s.AreaAt(l)))) - 1;
    }

    /// <summary>What the last fifth of the cam's lift brings, as a share.</summary>
    private static double Gain(MadePort port, double lift) => 1 - port.AreaAt(0.8 * lift) / port.AreaAt(lift);

    /// <summary>Local speed over the sisters' at clock hours of a station, a third of the way in.</summary>
    private static IEnumerable<double> Places(MadeJob job, MadePort port, StationRole role, params IEnumerable<double> bearings)
    {
        static double Speed(MadePort port, StationRole role, double bearing)
        {
            var field = port.At(role).Field;
            var (x, y) = field.Section.Place(bearing, 0.35 * field.Section.Deepest);
            return field.At(x, y);
        }

        return bearings.Select(b => Speed(port, role, b) / Median(job.SistersOf(port).Select(s => Speed(s, role, b))));
    }

    /// <summary>A meter nobody calibrated that is a percent off: its plate says so.</summary>
    private static bool Unproved(MadeJob job) => !job.Looks.Calibrated && Math.Abs(job.Bench.RangeFor(job.Bench.Plates[0].Area).Factor - 1) >= 0.01;

    private static double Fall(MadePort port) => 1 - port.AreaAt(port.Top) / Enumerable.Range(1, 40).Max(i => port.AreaAt(port.Top * i / 40));

    private static double CamLift(MadeJob job, MadePort port) => port.Kind == PortKind.Intake ? job.Engine.IntakeLift : job.Engine.ExhaustLift;

    private static double Median(IEnumerable<double> of)
    {
        double[] sorted = [.. of.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
