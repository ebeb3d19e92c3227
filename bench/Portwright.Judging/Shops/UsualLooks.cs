using Portwright.Judging.Chance;
using Portwright.Judging.Ports;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>What a shop usually looks at: all ports are swept, the rest on one port, on two, or on all of one kind.</summary>
public static class UsualLooks
{
    private const double Inch = 0.0254;

    public static readonly double?[] Cross = [12, 3, 6, 9];

    public static readonly double?[] CrossAndMiddle = [12, 3, 6, 9, null];

    public static readonly double?[] Round = [12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5, null];

    public static Looks Drawn(MadeJob job)
    {
        var draw = job.Draw;
        var looks = new Looks();
        foreach (var kind in (PortKind[])[PortKind.Intake, PortKind.Exhaust])
        {
            var design = kind == PortKind.Intake ? job.Engine.Intake : job.Engine.Exhaust;
            looks.Lifts[kind] = Lifts(design.Top, job.Pencil, draw);
        }

        looks.SweepsAPort = draw.Of(1, 1, 1, 2, 2, 3);
        looks.Repeats = draw.Of(1, 1, 2, 2, 3);
        looks.UpAndDown = looks.Repeats == 2 && draw.Chance(0.4);
        looks.Calibrated = draw.Chance(0.8);
        looks.Morning = true;
        looks.Evening = draw.Chance(0.25);
        looks.EarlierMornings = draw.Of(0, 0, 3, 6, 10);
        looks.LeakWithEachSweep = draw.Chance(0.8);
        looks.HeldFromTop = draw.Of(1, 2, 3);
        var looked = draw.Chance(0.75) ? PortKind.Intake : PortKind.Exhaust;
        if (draw.Chance(0.45)) LookInside(looks, Ports(job, looked), draw.Chance(0.4), draw);
        if (draw.Chance(0.35)) looks.Pinches.UnionWith(draw.Chance(0.6) ? job.Of(looked) : job.Ports);
        if (draw.Chance(0.15)) looks.Sections.UnionWith(job.Of(looked));
        if (draw.Chance(0.25)) looks.Filled.UnionWith(Ports(job, looked));
        if (draw.Chance(0.30)) looks.Sounded.UnionWith(Ports(job, looked));
        foreach (var port in job.Ports) Walls(port, job);
        return looks;
    }

    /// <summary>Balls at 3 to 9 places at one station or two, sometimes the probe round the same, sometimes flags; the sections with them more often than not.</summary>
    private static void LookInside(Looks looks, IReadOnlyList<MadePort> ports, bool ring, Draw draw)
    {
        var stations = draw.Of<StationRole[]>([StationRole.ShortSide], [StationRole.ShortSide], [StationRole.ShortSide, StationRole.Bowl], [StationRole.Pinch, StationRole.ShortSide]);
        var bearings = stations.Length == 1 ? draw.Of<double?[]>([6, 12, null], Cross, CrossAndMiddle, Round) : draw.Of<double?[]>([6, 12, null], Cross);
        var ringed = draw.Of(CrossAndMiddle, CrossAndMiddle, Round);
        var (flags, sections) = (draw.Chance(0.5), draw.Chance(0.85));
        foreach (var port in ports)
        {
            foreach (var station in stations) looks.Balls.Add(new PlacesLooked(port, station, bearings));
            if (ring) looks.Rings.Add(new PlacesLooked(port, stations[0], ringed));
            if (flags) looks.Flags.Add(new PlacesLooked(port, stations[0], bearings));
            if (sections || ring) looks.Sections.Add(port);
        }
    }

    /// <summary>One port, two, or all of a kind.</summary>
    private static IReadOnlyList<MadePort> Ports(MadeJob job, PortKind kind)
    {
        var all = job.Of(kind);
        return job.Draw.Some(all, job.Draw.Of(1, 1, 2, all.Count));
    }

    /// <summary>Where metal is usually sounded, and what a sound casting has there: a comfortable .030 to .120 in over the shop's limit, now and then only .012.</summary>
    private static void Walls(MadePort port, MadeJob job)
    {
        var draw = job.Draw;
        var stated = draw.Chance(0.7);
        foreach (var (role, bearing, behind) in ((StationRole, double, Behind)[])
            [(StationRole.Pinch, 9, Behind.Pushrod), (StationRole.ShortSide, 6, Behind.Water), (StationRole.Bowl, 12, Behind.Water), (StationRole.ShortSide, 3, Behind.Unknown)])
        {
            var limit = draw.Of(0.080, 0.100, 0.120) * Inch;
            var spare = draw.Chance(0.1) ? draw.Between(0.012, 0.030) : draw.Between(0.030, 0.120);
            // Where the shop states no limit the wall is thick by anybody's.
            port.Walls.Add(stated
                ? new MadeWall(port.At(role), bearing, limit + spare * Inch, limit, behind)
                : new MadeWall(port.At(role), bearing, draw.Between(0.220, 0.320) * Inch, null, behind));
        }
    }

    /// <summary>To the highest lift by a twentieth or a tenth of an inch, or by one or two millimetres, often finer off the seat.</summary>
    private static List<double> Lifts(double top, Pencil pencil, Draw draw)
    {
        var step = pencil.Metric ? draw.Of(0.001, 0.0015, 0.002) : draw.Of(0.050, 0.050, 0.100) * Inch;
        var lifts = new List<double>();
        if (step > 0.0019 && draw.Chance(0.7)) lifts.Add(step / 2);
        for (var lift = step; lift < top - 0.3 * step; lift += step) lifts.Add(lift);
        lifts.Add(pencil.Metric ? Math.Round(top * 1e4) / 1e4 : Math.Round(top / Inch / 0.005) * 0.005 * Inch);
        return lifts;
    }
}
