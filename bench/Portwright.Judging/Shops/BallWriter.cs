using Portwright.Judging.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>
/// A ball held at place after place, the meter read each time, and now and then without it. Rod, surface of the ball and a port that is no pipe put one factor on all falls of a check, most of it the
/// same in all checks of a shop.
/// </summary>
public sealed class BallWriter
{
    private readonly MadeJob _job;
    private readonly Book _book;
    private readonly double _shop;
    private readonly int _reads;

    public BallWriter(MadeJob job, Book book)
    {
        (_job, _book) = (job, book);
        _shop = job.Draw.Factor(KnownAir.BallOfAShop);
        _reads = job.Draw.Of(1, 2, 2, 3);
    }

    public void Write(MadePort port, IReadOnlyList<PlacesLooked> looked, HeldPort held)
    {
        var draw = _job.Draw;
        var ball = Size(looked.Min(l => Math.Min(port.At(l.Station).Section.Width, port.At(l.Station).Section.Height)));
        var check = _book.Add(new BallCheck(port.Cut, held.Setting, ball, _job.Bench.Room.Typed()));
        var truly = ball.Si(Dimension.Length) * _job.BallTyped.GetValueOrDefault(port, 1);
        var common = _shop * draw.Factor(KnownAir.BallOfACheck);
        var (drift, read) = (draw.Normal(0.0006), 0);
        double Read(Guid? station, double? bearing, double fall)
        {
            var drifted = held.Area * (1 + drift * read++ / 10.0);
            var shown = _job.Bench.Shows(held.Range, drifted * (1 - fall), held.Direction);
            _book.Add(new BallReading(check, station, bearing, shown));
            return 1 - _job.Bench.AreaOf(held.Range, shown, held.Direction) / drifted;
        }

        void Without()
        {
            for (var i = 0; i < Math.Max(2, _reads); i++) Read(null, null, 0);
        }

        Without();
        var places = looked.SelectMany(l => l.Bearings.Select(b => (l.Station, Bearing: b))).ToList();
        for (var i = 0; i < places.Count; i++)
        {
            var (role, bearing) = places[i];
            var due = Fall(port.At(role), bearing, truly, held) * common;
            var fall = due * draw.Factor(KnownAir.BallAtAPlace);
            var mended = _job.Mended.FirstOrDefault(m => m.Port == port && m.Station == role && m.Bearing == bearing);
            if (mended is not null) fall = -mended.Factor;
            for (var again = 0; again < _reads; again++) Read(port.At(role).Id, bearing, fall);
            var sound = SoundFall(port.At(role), bearing, ball.Si(Dimension.Length), held) * common;
            var scatter = _job.Bench.ScatterOf(held.Range, held.Area, held.Direction, _reads);
            var (x, y) = Middle(port.At(role), bearing, truly);
            _job.KnownAir.Ball(port, port.At(role), x, y, bearing, (mended is null ? due : fall) / sound - 1, scatter / sound);
            if (i % 4 == 3 || i == places.Count - 1) Without();
        }
    }

    /// <summary>The ball lies against the wall at a bearing, or hangs in the middle.</summary>
    private double Fall(MadeStation station, double? bearing, double ball, HeldPort held)
    {
        var off = _job.PlacesOff.FirstOrDefault(p => p.Ball && p.Port == held.Port && p.Station == station.Role && p.Bearing == bearing)?.Factor ?? 1;
        return Fall(station, station.Field, bearing, ball, off, held);
    }

    /// <summary>The same without what was planted, by the ball that is written down.</summary>
    private static double SoundFall(MadeStation station, double? bearing, double ball, HeldPort held) => Fall(station, station.Field.Sound, bearing, ball, 1, held);

    private static double Fall(MadeStation station, SpeedField field, double? bearing, double ball, double off, HeldPort held)
    {
        var (x, y) = Middle(station, bearing, ball);
        return SphereDrag.Fall(field, held.At(station), ball, x, y, off, held.Pressure);
    }

    /// <summary>Middle of a ball that lies against the wall, m.</summary>
    private static (double X, double Y) Middle(MadeStation station, double? bearing, double ball) => station.Section.Place(bearing, ball / 2 + 0.0003);

    /// <summary>The largest ball of the box that is no more than a third of the section across.</summary>
    private Typed Size(double across)
    {
        if (_job.Ball is { } chosen) return chosen;
        double[] box = _job.Pencil.Metric ? [6, 8, 10, 12, 14, 16] : [0.25, 0.3125, 0.375, 0.4375, 0.5, 0.5625, 0.625];
        var unit = _job.Pencil.Metric ? 0.001 : 0.0254;
        var size = box.Where(b => b * unit <= 0.36 * across).DefaultIfEmpty(box[0]).Max();
        _job.Ball = _job.Pencil.Metric ? Pencil.Rounded(size, 1, "mm") : Pencil.Rounded(size, 0.0005, "in");
        return _job.Ball;
    }
}
