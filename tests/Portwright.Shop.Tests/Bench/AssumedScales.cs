using Portwright.Physics.Metering;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Tests.Bench;

/// <summary>A percent scale of which the porter does not know what it was set at: the bench really is one thing, the card assumes another.</summary>
public sealed class AssumedScales(ITestOutputHelper output)
{
    private const double Area = 0.00090;

    private static readonly PercentCard Assumed = new(
        0.16, AssumedScale.TestPressure, RangeScale.SquareRoot, AssumedScale.Differential, null, null, PressureAssumed: true, DifferentialAssumed: true);

    public static TheoryData<double, double, double, double> Truths => new()
    {
        { 28, 6, 101_325, 293.15 },
        { 10, 6, 101_325, 293.15 },
        { 25, 12, 101_325, 293.15 },
        { 28, 6, 97_000, 300 },
        { 15, 8, 98_000, 290 },
    };

    [Theory]
    [MemberData(nameof(Truths))]
    public void Whatever_it_was_set_at_the_doubt_allows_for_it_and_a_card_that_states_it_is_surer(double pressure, double differential, double barometer, double temperature)
    {
        PercentCard truth = new(0.16, pressure * UnitFactors.InchOfWater, RangeScale.SquareRoot, differential * UnitFactors.InchOfWater, new AirCard(barometer, temperature));
        var (guessed, stated) = (Read(truth, Assumed, false), Read(truth, truth, false));
        output.WriteLine($"off {guessed.Value / Area - 1:P2}, doubt {guessed.StandardUncertainty / Area:P2}; stated {stated.StandardUncertainty / Area:P2}");
        Assert.Equal(Area, stated.Value, 1e-8);
        Assert.InRange(Math.Abs(guessed.Value - Area), 0, 2 * AssumedPart(guessed));
        Assert.Equal(0, AssumedPart(stated));
        Assert.InRange(AssumedPart(guessed) / Area, 0.015, 0.05);
    }

    [Fact]
    public void A_check_plate_read_on_the_scale_takes_the_guess_out_again()
    {
        PercentCard truth = new(0.16, 10 * UnitFactors.InchOfWater, RangeScale.SquareRoot, 12 * UnitFactors.InchOfWater, new AirCard(97_000, 300));
        var calibrated = Read(truth, Assumed, true);
        output.WriteLine($"off {calibrated.Value / Area - 1:P3}, assumed {AssumedPart(calibrated) / Area:P3}");
        Assert.Equal(Area, calibrated.Value, Area * 0.003);
        Assert.InRange(AssumedPart(calibrated) / Area, 0, 0.003);
    }

    [Fact]
    public void Each_guess_is_a_cause_of_its_own_that_all_readings_of_the_range_share()
    {
        double Only(PercentCard card) => AssumedPart(Read(card, card, false)) / Area;
        PercentCard stated = Assumed with { PressureAssumed = false, DifferentialAssumed = false, CalibrationAir = new AirCard() };
        Assert.Equal(0, Only(stated));
        Assert.InRange(Only(stated with { PressureAssumed = true }), 0.008, 0.02);
        Assert.InRange(Only(stated with { DifferentialAssumed = true }), 0.001, 0.01);
        Assert.InRange(Only(stated with { CalibrationAir = null }), 0.015, 0.035);
        var range = Ranges.OfEachKind[3];
        Assert.Empty(AssumedScale.Words(range));
        Assert.Equal(["the air it was set in"], AssumedScale.Words(range with { Meter = stated with { CalibrationAir = null } }));
        Assert.Equal(3, AssumedScale.Words(range with { Meter = Assumed }).Count);
        var bench = Bench(Assumed, Assumed);
        var sweep = bench.Sweep(bench.Cut(0));
        bench.Read(sweep, 0.004, 0.0006);
        bench.Read(sweep, 0.006, Area);
        var points = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.Points;
        // A ratio of two readings on one scale hardly feels it.
        Assert.InRange(AssumedPart(Estimate.Ratio(points[1].EffectiveArea, points[0].EffectiveArea)) / 1.5, 0, 0.002);
    }

    [Fact]
    public void The_factor_that_is_told_is_that_of_the_scale_as_the_card_has_it()
    {
        var bench = Bench(Assumed, Assumed);
        bench.Add(new Calibration(bench.BenchId, bench.Range.Name, bench.Today, [bench.ReadPlate("number one", 0.00100)], bench.Air(), Leak: bench.ReadPlate("", 0)));
        var factor = MeterFactor.At(BenchMoment.Last, bench.Ledger.Get<BenchCard>(bench.BenchId), bench.Range with { Meter = Assumed }, bench.Ledger);
        Assert.True(factor.Factor.StandardUncertainty > 0.02);
        Assert.InRange(factor.OfTheScale.StandardUncertainty, 0.003, 0.006);
    }

    private static double AssumedPart(Estimate of) =>
        Math.Sqrt(of.Contributions.Where(c => c.Source.StartsWith("assumed", StringComparison.Ordinal)).Sum(c => c.Amount * c.Amount));

    private static SimulatedBench Bench(PercentCard truth, PercentCard card)
    {
        var range = Ranges.OfEachKind[3] with { Meter = truth, Resolution = 0.01 };
        var bench = new SimulatedBench(range, BenchDoubt.Unknown, [new CheckPlate("number one", 0.00100, 0.000002)]);
        bench.Put(Entry.About(bench.BenchId, null, bench.Card with { Ranges = [range with { Meter = card }] }, SimulatedBench.Morning));
        return bench;
    }

    private static Estimate Read(PercentCard truth, PercentCard card, bool calibrated)
    {
        var bench = Bench(truth, card);
        if (calibrated)
        {
            bench.Add(new Calibration(bench.BenchId, bench.Range.Name, bench.Today, [bench.ReadPlate("number one", 0.00100)], bench.Air(), Leak: bench.ReadPlate("", 0)));
        }

        var sweep = bench.Sweep(bench.Cut(0));
        bench.Read(sweep, 0.006, Area);
        return SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep)).Curve.Points[0].EffectiveArea;
    }
}
