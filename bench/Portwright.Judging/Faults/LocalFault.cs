using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Record;

namespace Portwright.Judging.Faults;

/// <summary>A place of one port where the air is not as its sisters' is. Ball and probe see it alike; sisters are looked at as well, for no place is fast or slow by itself.</summary>
public abstract class LocalFault(string name, StationRole station, string[] found, params string[] fair) : Fault(name, found, fair)
{
    /// <summary>Clock hours it may lie at, one as often as it stands here.</summary>
    protected abstract IReadOnlyList<double> Hours { get; }

    /// <summary>On the speed at the wall there.</summary>
    protected abstract double Factor(Size size);

    /// <summary>Half width of the place, hours.</summary>
    protected virtual double HalfWidth => 1.1;

    /// <summary>Share of the flow it costs at full lift.</summary>
    protected virtual double Loss(Size size) => By(size, 0.004, 0.008, 0.015);

    protected virtual void Also(MadeJob job, MadePort port, double bearing, Size size)
    {
    }

    public override bool IsReadEnough(MadeShop shop, Size size) => Suffices.ForTheAir(shop.Job, this, Looked.Places(shop.Job, shop.Planted!.Ports[0], Hours.Contains));

    public override Planted Plant(MadeJob job, Size size)
    {
        var port = One(job, job.Draw.Chance(0.75) ? PortKind.Intake : PortKind.Exhaust);
        var bearing = job.Draw.Of([.. Hours]);
        port.At(station).Field.Put(new Patch(bearing, HalfWidth, Factor(size)));
        var loss = Loss(size);
        port.Faults.Add(lift => 1 - loss * Math.Pow(lift / port.Top, 3));
        Looked.Inside(job, port, station, bearing);
        Also(job, port, bearing, size);
        return On(port);
    }
}

/// <summary>Sees that a port and sisters of it are looked into.</summary>
internal static class Looked
{
    /// <summary>Balls at the place and others round it, on this port and on all sisters or a single one; in two jobs of five the probe as well.</summary>
    public static void Inside(MadeJob job, MadePort port, StationRole station, double bearing, bool ring = false)
    {
        var draw = job.Draw;
        var looks = job.Looks;
        IReadOnlyList<MadePort> ports = [port, .. draw.Chance(0.7) ? job.SistersOf(port) : draw.Some(job.SistersOf(port), 1)];
        var bearings = bearing % 3 == 0 ? draw.Of(UsualLooks.Cross, UsualLooks.CrossAndMiddle, UsualLooks.Round) : UsualLooks.Round;
        var probed = ring || draw.Chance(0.4);
        foreach (var each in ports)
        {
            looks.Balls.RemoveAll(b => b.Port == each && b.Station == station);
            looks.Balls.Add(new PlacesLooked(each, station, bearings));
            looks.Sections.Add(each);
            if (!probed) continue;
            looks.Rings.RemoveAll(b => b.Port == each && b.Station == station);
            looks.Rings.Add(new PlacesLooked(each, station, bearings == UsualLooks.Cross ? UsualLooks.CrossAndMiddle : bearings));
        }
    }

    /// <summary>Places at the wall of a port that are looked at by ball or probe, at hours that are asked for.</summary>
    public static int Places(MadeJob job, MadePort port, Func<double, bool> hours) => job.Looks.Balls.Concat(job.Looks.Rings).Where(l => l.Port == port)
        .SelectMany(l => l.Bearings.Where(b => b is { } hour && hours(hour)).Select(b => (l.Station, b))).Distinct().Count();

    public static void Flag(MadeJob job, MadePort port, StationRole station, double bearing, Steadiness stands)
    {
        job.Looks.Flags.RemoveAll(f => f.Port == port && f.Station == station);
        job.Looks.Flags.Add(new PlacesLooked(port, station, [12, bearing, null]));
        job.FlagsAt.Add(new FlagAt(port, station, bearing, stands));
    }
}
