using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Reduction;

/// <summary>A sweep reduced: its curve, and what has to be said about it.</summary>
/// <param name="When">The day it was run, and its first reading's place in that day.</param>
/// <param name="LeakArea">m2; null where no leak test was made.</param>
/// <param name="Factors">Of each range its readings were taken on, in the order used.</param>
/// <param name="Refused">Readings that cannot be an air flow: kept as typed, not counted.</param>
/// <param name="Remarks">What was assumed or left out, in sentences.</param>
public sealed record ReducedSweep(
    Kept<Sweep> Sweep,
    Kept<BenchCard> Bench,
    BenchMoment When,
    FlowCurve Curve,
    Estimate? LeakArea,
    IReadOnlyList<RangeFactor> Factors,
    IReadOnlyList<RefusedReading> Refused,
    IReadOnlyList<string> Remarks)
{
    /// <summary>The day it was run.</summary>
    public DateOnly Day => When.Day;
}

/// <summary>Reduces a sweep: raw readings to effective area, flow restated, and the whole doubt of the bench.</summary>
public static class SweepReduction
{
    /// <summary>Nothing saved makes this fail: what cannot be reduced is left out, with a remark.</summary>
    public static ReducedSweep Reduce(Ledger ledger, Kept<Sweep> sweep)
    {
        var bench = ledger.Get<BenchCard>(sweep.Fact.Bench);
        var readings = ledger.ReadingsOf(sweep.Id);
        var when = WhenOf(ledger, sweep, readings);
        var inputs = new SweepInputs(ledger, sweep, bench, when);
        var leak = LeakOf(ledger.LeaksOf(sweep.Id), sweep, inputs, readings.Count > 0);
        var reduced = new List<ReducedReading>(readings.Count);
        var refused = new List<RefusedReading>();
        var factors = new List<RangeFactor>();
        foreach (var reading in readings)
        {
            try
            {
                var with = inputs.For(RangeOf(reading, sweep), reading.Sequence, leak);
                reduced.Add(ReduceOne(reading, with, sweep));
                if (!factors.Any(f => f.Range.Equals(with.Range.Name, StringComparison.OrdinalIgnoreCase)))
                {
                    factors.Add(new RangeFactor(with.Range.Name, inputs.FactorOf(with.Range)));
                }
            }
            catch (ArgumentException trouble)
            {
                refused.Add(Refusal.Of(reading, trouble));
            }
        }

        string[] remarks = [.. inputs.Remarks, .. reduced.SelectMany(r => r.Remarks), .. refused.Select(r => r.Why)];
        var points = SweepPoints.Of(reduced, leak?.Value ?? 0, sweep, bench, when.Day);
        var curve = new FlowCurve(points, sweep.Fact.Direction, bench.Fact.RestatedAt, bench.Fact.StandardAir.Air());
        return new ReducedSweep(sweep, bench, when, curve, leak, factors, refused, [.. remarks.Distinct()]);
    }

    /// <summary>When a sweep was run: on the day stated, else when its first reading was first typed; a later correction does not move it.</summary>
    public static BenchMoment WhenOf(Ledger ledger, Kept<Sweep> sweep, IReadOnlyList<Kept<FlowReading>> readings)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        ArgumentNullException.ThrowIfNull(readings);
        return readings.Count > 0 ? BenchMoment.Of(ledger, readings[0], sweep.Fact.Date) : BenchMoment.Of(ledger, sweep, sweep.Fact.Date);
    }

    private static Estimate? LeakOf(IReadOnlyList<Kept<LeakReading>> leaks, Kept<Sweep> sweep, SweepInputs inputs, bool hasReadings)
    {
        if (leaks.Count == 0)
        {
            if (hasReadings)
            {
                inputs.Remarks.Add("No leak test was made for this sweep: nothing was taken off, and the flow may read high.");
            }

            return null;
        }

        var leak = leaks[^1];
        try
        {
            var found = Finite(inputs.For(leak.Fact.Range, leak.Sequence, null)
                .Reduce(leak.Fact.Reading, leak.Fact.TestPressure, sweep.Fact.Direction, null, null, Sources.ReadingName(leak.Id)).EffectiveArea);
            return found.With(new Contribution(
                Sources.Leak(leak.Id), found.Value * inputs.Bench.Fact.Doubt.Leak, double.PositiveInfinity, ContributionKind.Leak));
        }
        catch (ArgumentException trouble)
        {
            inputs.Remarks.Add($"The leak test ({leak.Fact.Reading.Text}) was left out, and the flow may read high: {Refusal.Sentence(trouble)}");
            return null;
        }
    }

    private static string RangeOf(Kept<FlowReading> reading, Kept<Sweep> sweep) =>
        reading.Fact.Range.Length > 0 ? reading.Fact.Range : sweep.Fact.Range;

    private static ReducedReading ReduceOne(Kept<FlowReading> reading, ReadingInputs inputs, Kept<Sweep> sweep)
    {
        var pressure = reading.Fact.TestPressure ?? sweep.Fact.TestPressure;
        var (area, mass, remarks) = inputs.Reduce(
            reading.Fact.Reading, pressure, sweep.Fact.Direction, reading.Fact.MeterTemperature, reading.Fact.PlenumTemperature, Sources.ReadingName(reading.Id));
        var lift = reading.Fact.Lift.Si(Dimension.Lift);
        return new ReducedReading(
            reading, lift, pressure.Si(Dimension.Pressure), Finite(area), mass, UnderTheLeak.Words(reading.Fact, lift, area) is { } under ? [.. remarks, under] : remarks);
    }

    private static Estimate Finite(Estimate area) => double.IsFinite(area.Value) && double.IsFinite(area.StandardUncertainty)
        ? area
        : throw new ArgumentException("No flow can be worked out from it.", nameof(area));
}
