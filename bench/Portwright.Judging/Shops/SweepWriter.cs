using Portwright.Judging.Chance;
using Portwright.Judging.Ports;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>Puts a port on the bench and types what the meter shows over lift.</summary>
public sealed class SweepWriter(MadeJob job, Book book)
{
    /// <summary>What this shop leads the air in with.</summary>
    private readonly string _entry = job.Draw.Of("clay radius", "clay radius", "radius plate", "");

    public void Write(MadePort port, FlowDirection direction)
    {
        var (bench, draw, looks) = (job.Bench, job.Draw, job.Looks);
        var lifts = looks.Lifts[port.Kind];
        var first = bench.RangeFor(port.AreaAt(lifts[^1]));
        var sweep = book.Add(new Sweep(port.Cut, bench.Id, direction, first.Card.Name, bench.TestPressure, [.. lifts.Select(job.Pencil.Lift)],
            port.Kind == PortKind.Intake ? _entry : "", Date: book.Day));
        book.Add(bench.Room.Weather(sweep));
        if (looks.LeakWithEachSweep)
        {
            var range = bench.Ranges[0];
            book.Add(new LeakReading(sweep, range.Card.Name, bench.Shows(range, 0, direction), bench.TestPressure));
        }

        var setUp = new SetUp(bench.Truth, draw);
        foreach (var lift in Order(lifts))
        {
            var set = lift + setUp.DialZero + draw.Normal(bench.Truth.Lift * 0.8);
            var band = job.Unsteady.FirstOrDefault(u => u.Port == port && lift >= u.From && lift <= u.To);
            var area = port.AreaAt(Math.Max(0, set)) * setUp.Factor(lift / port.Top) * Drawn(port, direction, lift);
            var range = bench.RangeFor(area);
            book.Add(new FlowReading(
                sweep, job.Pencil.Lift(lift), bench.Shows(range, area, direction, band?.Times ?? 1), range == first ? "" : range.Card.Name, Sound: band is null ? "" : "whistles"));
        }

        book.Wait(TimeSpan.FromMinutes(draw.Between(6, 15)));
        bench.Room.Later();
    }

    /// <summary>An exhaust that is drawn passes the seat's edge the wrong way: 4 to 10 percent off, more at low lift (common practice, no source).</summary>
    private static double Drawn(MadePort port, FlowDirection direction, double lift) =>
        port.Kind == PortKind.Exhaust && direction == FlowDirection.Draw ? 0.93 + 0.03 * lift / port.Top : 1;

    private IEnumerable<double> Order(IReadOnlyList<double> lifts)
    {
        if (job.Looks.UpAndDown) return lifts.Concat(lifts.Reverse());
        return lifts.SelectMany(l => Enumerable.Repeat(l, job.Looks.Repeats));
    }

    /// <summary>One putting of the head on the bench: its flow is off by so much at all lifts, a little more at the one end than at the other, and the dial's nought stands so.</summary>
    private sealed class SetUp(BenchDoubt truth, Draw draw)
    {
        private readonly double _level = draw.Normal(truth.SetUpScatter);
        private readonly double _lean = draw.Normal(0.3 * truth.SetUpScatter);

        public double DialZero { get; } = draw.Normal(truth.Lift * 0.6);

        public double Factor(double share) => 1 + _level + _lean * (2 * share - 1);
    }
}
