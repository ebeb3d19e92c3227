using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Reduction;

/// <summary>A sweep reduced: its curve, and what has to be said about it.</summary>
/// <param name="LeakArea">m2; null where no leak test was made.</param>
/// <param name="Remarks">What was assumed or left out, in sentences.</param>
public sealed record ReducedSweep(
    Kept<Sweep> Sweep,
    Kept<BenchCard> Bench,
    FlowCurve Curve,
    Estimate? LeakArea,
    MeterFactor? Factor,
    IReadOnlyList<string> Remarks);

/// <summary>Reduces a sweep: raw readings to effective area, flow restated, and the whole doubt of the bench.</summary>
public static class SweepReduction
{
    /// <summary>Lifts closer than this are the same lift, m (a quarter of a thousandth of an inch).</summary>
    public const double SameLift = 6e-6;

    public static ReducedSweep Reduce(Ledger ledger, Kept<Sweep> sweep)
    {
        var bench = ledger.Get<BenchCard>(sweep.Fact.Bench);
        var remarks = new List<string>();
        var weather = ledger.WeatherOf(sweep.Id);
        var leaks = ledger.LeaksOf(sweep.Id);
        var readings = ledger.ReadingsOf(sweep.Id);
        var day = DateOnly.FromDateTime((readings.Count > 0 ? readings[0].Entry : sweep.Entry).At.DateTime);
        var ranges = new Dictionary<(string, RoomState), ReadingInputs>();
        var rooms = new Dictionary<Guid, RoomState>();
        MeterFactor? factor = null;

        RoomState RoomAt(int sequence)
        {
            var holds = weather.LastOrDefault(w => w.Sequence <= sequence) ?? weather.FirstOrDefault();
            if (!rooms.TryGetValue(holds?.Id ?? Guid.Empty, out var room))
            {
                room = holds is null ? RoomState.Assumed(bench.Fact) : RoomState.Of(holds.Fact, bench);
                rooms[holds?.Id ?? Guid.Empty] = room;
                remarks.AddRange(room.Remarks);
            }

            return room;
        }

        ReadingInputs InputsFor(string name, RoomState room, Estimate? leak)
        {
            if (!ranges.TryGetValue((name, room), out var inputs))
            {
                var range = bench.Fact.RangeNamed(name)
                    ?? throw new ArgumentException($"The bench card has no range named '{name}'. Add it to the card, or correct the sweep.");
                var ofRange = MeterFactor.On(day, bench, range, ledger);
                factor ??= ofRange;
                inputs = new ReadingInputs(bench, range, room, ofRange.Factor, leak);
                ranges[(name, room)] = inputs;
            }

            return inputs;
        }

        Estimate? leakArea = null;
        if (leaks.Count > 0)
        {
            var leak = leaks[^1];
            var found = InputsFor(leak.Fact.Range, RoomAt(leak.Sequence), null)
                .Reduce(leak.Fact.Reading, leak.Fact.TestPressure, sweep.Fact.Direction, null, null, Sources.ReadingName(leak.Id)).EffectiveArea;
            leakArea = found.With(new Contribution(
                Sources.Leak(leak.Id), found.Value * bench.Fact.Doubt.Leak, double.PositiveInfinity, ContributionKind.Leak));
            ranges.Clear();
        }
        else if (readings.Count > 0)
        {
            remarks.Add("No leak test was made for this sweep: nothing was taken off, and the flow may read high.");
        }

        var reduced = readings.Select(r => ReduceOne(r, InputsFor(RangeOf(r, sweep), RoomAt(r.Sequence), leakArea), sweep)).ToList();
        remarks.AddRange(reduced.SelectMany(r => r.Remarks).Distinct());
        var points = PointsOf(reduced, sweep, bench, day);
        var curve = new FlowCurve(points, sweep.Fact.Direction, bench.Fact.RestatedAt, bench.Fact.StandardAir.Air());
        return new ReducedSweep(sweep, bench, curve, leakArea, factor, [.. remarks.Distinct()]);
    }

    private static string RangeOf(Kept<FlowReading> reading, Kept<Sweep> sweep) =>
        reading.Fact.Range.Length > 0 ? reading.Fact.Range : sweep.Fact.Range;

    private static ReducedReading ReduceOne(Kept<FlowReading> reading, ReadingInputs inputs, Kept<Sweep> sweep)
    {
        var pressure = reading.Fact.TestPressure ?? sweep.Fact.TestPressure;
        var (area, mass, remarks) = inputs.Reduce(
            reading.Fact.Reading, pressure, sweep.Fact.Direction, reading.Fact.MeterTemperature, reading.Fact.PlenumTemperature, Sources.ReadingName(reading.Id));
        return new ReducedReading(reading, reading.Fact.Lift.Si(Dimension.Lift), pressure.Si(Dimension.Pressure), area, mass, remarks);
    }

    private static List<LiftPoint> PointsOf(List<ReducedReading> reduced, Kept<Sweep> sweep, Kept<BenchCard> bench, DateOnly day)
    {
        var doubt = bench.Fact.Doubt;
        var groups = LiftGroups.Of(reduced, r => r.Lift);
        var scatter = PooledScatter.WithCard(
            groups.Select(g => g.Items.Select(r => r.EffectiveArea.Value).ToArray()), doubt.RepeatScatter, doubt.RepeatDegrees);
        var slopes = LiftGroups.Slopes([.. groups.Select(g => (g.Lift, g.Items.Average(r => r.EffectiveArea.Value)))]);
        var points = new List<LiftPoint>(groups.Count);
        for (var i = 0; i < groups.Count; i++)
        {
            var (lift, items) = groups[i];
            var mean = Estimate.Mean([.. items.Select(r => r.EffectiveArea)]);
            var area = mean
                .With(new Contribution(Sources.Repeat(sweep.Id, lift), mean.Value * scatter.StandardDeviation / Math.Sqrt(items.Count), scatter.DegreesOfFreedom, ContributionKind.Repeat, Sources.RepeatPool(sweep.Id), items.Count))
                .With(new Contribution(Sources.SetUp(sweep), mean.Value * doubt.SetUpScatter, doubt.SetUpDegrees ?? double.PositiveInfinity, ContributionKind.SetUp, Sources.SetUpPool(bench.Id)))
                .With(new Contribution(Sources.Day(bench.Id, day), mean.Value * doubt.Drift, double.PositiveInfinity, ContributionKind.Drift))
                .With(new Contribution(Sources.LiftSetting(sweep.Id, lift), slopes[i] * doubt.Lift, double.PositiveInfinity, ContributionKind.Geometry));
            points.Add(Point(lift, items, area, sweep.Fact.Direction, bench.Fact));
        }

        return points;
    }

    private static LiftPoint Point(double lift, IReadOnlyList<ReducedReading> items, Estimate area, FlowDirection direction, BenchCard bench)
    {
        var air = bench.StandardAir.Air();
        var perArea = RestatedFlow.VolumeFlow(1, bench.RestatedAt, air, direction);
        var plain = items.Average(r => RestatedFlow.SquareRootRule(
            RestatedFlow.VolumeFlow(r.EffectiveArea.Value, r.TestPressure, air, direction), r.TestPressure, bench.RestatedAt));
        return new LiftPoint(lift, items, area, area.Scale(perArea), plain);
    }
}
