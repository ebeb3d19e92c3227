using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Reduction;

/// <summary>From typed readings in the record to the effective area: the truth comes back, and the doubt stated is the doubt there is.</summary>
public sealed class RecoveryOfAKnownArea
{
    public static TheoryData<string> Kinds => [.. Ranges.OfEachKind.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Readings_without_noise_give_the_area_back_within_one_part_in_a_billion(string kind)
    {
        var range = Ranges.OfEachKind.Single(r => r.Name == kind);
        Gen.Select(
            Gen.Double[0.0004, 0.0016], Gen.Double[94_000, 104_000], Gen.Double[288, 300], Gen.Double[0.1, 0.9],
            Gen.Double[8, 40], Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-7, 0.00002]), Gen.Bool)
            .Sample((area, pressure, temperature, humidity, testPressure, leak, blow) =>
            {
                var bench = new SimulatedBench(range)
                {
                    Room = AirState.FromRelativeHumidity(pressure, temperature, humidity),
                    LeakArea = leak,
                };
                var sweep = bench.Sweep(bench.Cut(0), blow ? FlowDirection.Blow : FlowDirection.Draw, testPressure);
                bench.ReadLeak(sweep, testPressure);
                bench.Read(sweep, 0.005, area, testPressure: testPressure);
                var ledger = bench.Ledger;
                var point = SweepReduction.Reduce(ledger, ledger.Get<Sweep>(sweep)).Curve.Points.Single();
                var off = Math.Abs(point.EffectiveArea.Value / area - 1);
                Assert.True(off < 1e-9, $"{kind}: off by {off:E2}");
            }, iter: 200, threads: 1);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_day_of_changing_weather_leaves_no_trend_in_the_effective_area(string kind)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind.Single(r => r.Name == kind));
        var areas = new List<double>();
        for (var hour = 0; hour < 10; hour++)
        {
            bench.Room = AirState.FromRelativeHumidity(100_800 - 150 * hour, 289 + 1.1 * hour, 0.75 - 0.04 * hour);
            var sweep = bench.Sweep(bench.Cut(hour));
            bench.Read(sweep, 0.008, 0.0011);
            var ledger = bench.Ledger;
            areas.Add(SweepReduction.Reduce(ledger, ledger.Get<Sweep>(sweep)).Curve.Points[0].EffectiveArea.Value);
        }

        Assert.All(areas, a => Assert.Equal(0.0011, a, 0.0011 * 1e-9));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_95_percent_interval_covers_the_truth_in_93_to_97_of_100_noisy_trials(string kind)
    {
        const int trials = 2000;
        const double area = 0.0011;
        var range = Ranges.OfEachKind.Single(r => r.Name == kind);
        var random = new Random(20_250_303);
        var covered = 0;
        for (var i = 0; i < trials; i++)
        {
            if (OneTrial(range, area, random).Interval().Contains(area))
            {
                covered++;
            }
        }

        Assert.InRange(covered / (double)trials, 0.93, 0.97);
    }

    /// <summary>One day at a bench where every entry of the budget really happens, each as large as the card says it is.</summary>
    private static Physics.Uncertainty.Estimate OneTrial(RangeCard range, double area, Random random)
    {
        double Normal(double sigma) => sigma * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        // The card's figure for a scatter is itself an estimate with few degrees of freedom.
        double Estimated(double sigma, int degrees) => sigma * Math.Sqrt(Enumerable.Range(0, degrees).Sum(_ => Math.Pow(Normal(1), 2)) / degrees);

        const double setUp = 0.005;
        const double repeat = 0.003;
        var doubt = new BenchDoubt(
            Estimated(setUp, 8), 8, Estimated(repeat, 10), 10, Drift: 0.002, Barometer: 150, Temperature: 0.8, Humidity: 0.05, TestPressure: 20,
            Lift: 0.00002, Leak: 0.1);
        var room = AirState.FromRelativeHumidity(99_000, 294, 0.5);
        var bench = new SimulatedBench(range, doubt)
        {
            Room = room,
            Shown = (room.Pressure + Normal(doubt.Barometer), room.Temperature + Normal(doubt.Temperature), 0.5 + Normal(doubt.Humidity)),
            TrueFactor = 1 + Normal(range.Accuracy),
        };
        var truePressure = 28 * UnitFactors.InchOfWater + Normal(doubt.TestPressure);
        var common = area * (1 + Normal(setUp)) * (1 + Normal(doubt.Drift));
        var sweep = bench.Sweep(bench.Cut(0));
        var step = Typed.Of(range.Resolution, range.Unit).Si(Shop.Bench.MeterOf.ReadingDimension(range));
        for (var k = 0; k < 3; k++)
        {
            bench.Read(sweep, 0.008, common * (1 + Normal(repeat)), r => Math.Round(r / step) * step, truePressure);
        }

        // A second lift gives the curve its slope, and so the lift setting its weight.
        bench.Read(sweep, 0.006, 0.82 * common * (1 + Normal(repeat)), truePressure: truePressure);
        var ledger = bench.Ledger;
        var point = SweepReduction.Reduce(ledger, ledger.Get<Sweep>(sweep)).Curve.Points[^1];
        return point.EffectiveArea with { };
    }
}
