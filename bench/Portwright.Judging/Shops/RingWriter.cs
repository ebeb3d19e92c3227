using Portwright.Judging.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>Air speeds round a station by a pitot probe: off by one factor everywhere, and by a percent or two anew each time.</summary>
public sealed class RingWriter
{
    private readonly MadeJob _job;
    private readonly Book _book;
    private readonly double _probe;
    private readonly double _scatter;
    private readonly double _stated;
    private readonly bool _asSpeed;
    private readonly double _depth;

    public RingWriter(MadeJob job, Book book)
    {
        (_job, _book) = (job, book);
        _probe = job.Draw.Between(1 - KnownAir.ProbeWithin, 1 + KnownAir.ProbeWithin);
        _scatter = job.Draw.Between(0.01, 0.02);
        _stated = job.Draw.Of(1.0, 1.0, 1.0, 0.99, 1.01);
        _asSpeed = job.Draw.Chance(0.3);
        _depth = job.Pencil.Metric ? job.Draw.Of(0.004, 0.005, 0.006) : job.Draw.Of(0.150, 0.200, 0.250) * 0.0254;
    }

    public void Write(PlacesLooked looked, HeldPort held)
    {
        var station = looked.Port.At(looked.Station);
        var air = held.At(station);
        var meter = _job.Draw.Chance(0.7) ? _job.Bench.Shows(held.Range, held.Area, held.Direction) : null;
        var ring = _book.Add(new Ring(looked.Port.Cut, station.Id, held.Setting, meter, _stated, _job.Bench.Room.Typed()));
        foreach (var bearing in looked.Bearings)
        {
            var (x, y) = station.Section.Place(bearing, _depth + _job.Draw.Normal(0.0003));
            var off = _job.PlacesOff.FirstOrDefault(p => !p.Ball && p.Port == looked.Port && p.Station == looked.Station && p.Bearing == bearing)?.Factor ?? 1;
            var scattered = 1 + _job.Draw.Normal(_scatter);
            var local = station.Field.At(x, y) * off;
            var speed = air.Mean * local * _probe / _stated * scattered * _job.ProbeOff.GetValueOrDefault(looked.Port, 1);
            var sound = station.Field.Sound.At(x, y);
            _job.KnownAir.Probe(looked.Port, station, x, y, bearing, local / sound - 1, _scatter);
            var depth = bearing is null ? null : _job.Pencil.Metric ? Pencil.Rounded(_depth * 1000, 0.1, "mm") : Pencil.Rounded(_depth / 0.0254, 0.001, "in");
            _book.Add(new ProbeReading(ring, bearing, depth, Shown(air, speed)));
        }
    }

    private Typed Shown(LocalAir air, double speed)
    {
        if (_asSpeed) return _job.Pencil.Metric ? Pencil.Rounded(speed, 0.1, "m/s") : Pencil.Rounded(speed / 0.3048, 1, "ft/s");
        var rise = air.Rise(speed);
        return _job.Pencil.Metric ? Pencil.Rounded(rise / 9.80665, 1, "mmH2O") : Pencil.Rounded(rise / 249.08891, 0.05, "inH2O");
    }
}
