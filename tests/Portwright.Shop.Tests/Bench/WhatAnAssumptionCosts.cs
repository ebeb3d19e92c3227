using Portwright.Physics.Metering;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Tests.Bench;

/// <summary>
/// What each figure of a percent scale that nobody stated costs a reading, as a share of it. The numbers are the program's own when this was written;
/// what is tested is that none of the figures held for plausible moves unseen.
/// </summary>
public sealed class WhatAnAssumptionCosts
{
    private static readonly PercentCard Stated = new(0.16, AssumedScale.TestPressure, RangeScale.SquareRoot, AssumedScale.Differential, new AirCard());

    /// <summary>Air a tenth thinner goes with its root: nearly 5 percent to either side, a rectangle's standard deviation of it.</summary>
    [Fact]
    public void A_warm_day_500_m_above_the_sea_costs_nearly_three_percent() => Assert.Equal(-0.02712, Cost(Stated with { CalibrationAir = null }), 1e-4);

    [Fact]
    public void A_test_pressure_of_10_for_28_inches_costs_over_one_percent() => Assert.Equal(-0.01335, Cost(Stated with { PressureAssumed = true }), 1e-4);

    [Fact]
    public void A_column_of_12_for_6_inches_costs_little() => Assert.Equal(0.00153, Cost(Stated with { DifferentialAssumed = true }), 1e-5);

    private static double Cost(PercentCard card)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[3] with { Meter = card, Resolution = 0.01 }, BenchDoubt.Unknown);
        var sweep = bench.Sweep(bench.Cut(0));
        bench.Read(sweep, 0.006, 0.0009);
        var area = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.Points[0].EffectiveArea;
        return area.Contributions.Single(c => c.Source.StartsWith("assumed", StringComparison.Ordinal)).Amount / area.Value;
    }
}
