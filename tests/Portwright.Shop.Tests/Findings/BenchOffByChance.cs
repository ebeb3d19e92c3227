using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Tests.Findings;

/// <summary>
/// Thousands of mornings at benches whose truth is known: certificates that are off by what they state, calibrations that scatter, a bench
/// that drifts by its card, and now and then one that moved.
/// </summary>
public sealed class BenchOffByChance(ITestOutputHelper output)
{
    private const double Drift = 0.002;
    private const double Repeat = 0.002;
    private const double Certificate = 0.002;

    /// <summary>Twice what the readings of two sound days differ by.</summary>
    private static readonly double Matters = 2 * Math.Sqrt(2 * Drift * Drift + Repeat * Repeat);

    private static readonly double[] Areas = [0.00100, 0.00060];

    [Fact]
    public void A_sound_bench_is_left_in_peace_and_one_that_moved_by_three_percent_is_found()
    {
        var random = new Random(5);
        int Found(Func<Random, double> moved, int plates) => Enumerable.Range(0, 400).Count(_ => Chance(random, moved(random), plates) >= 0.9);

        foreach (var plates in (int[])[1, 2])
        {
            var (quiet, loud) = (Found(_ => 0, plates), Found(r => r.Next(2) == 0 ? 0.03 : -0.03, plates));
            output.WriteLine($"{plates} plates: sound and found {quiet} of 400, moved and found {loud} of 400");
            Assert.InRange(quiet, 0, 2);
            Assert.InRange(loud, 380, 400);
        }
    }

    /// <summary>
    /// Two million mornings, one in a hundred of which found a meter that moved by anything up to some percent (and another one a leak that changed, which a fine scale shows): of those whose plate reads so much over its
    /// certificate, as many are off by more than what matters as the rule says of a plate that reads it.
    /// </summary>
    [Fact]
    public void The_probability_it_states_is_how_often_it_is_right()
    {
        const double width = 0.0006;
        double[] readings = [0.007, 0.010, 0.012];
        var (here, right) = (new double[readings.Length], new double[readings.Length]);
        var random = new Random(11);
        // Plate and calibration (five readings) each scatter by the card, and each day drifts by it; the certificate is the same in both.
        var noise = Math.Sqrt(Repeat * Repeat * (1 + 1.0 / 5) + 2 * Drift * Drift);
        for (var morning = 0; morning < 2_000_000; morning++)
        {
            var moved = random.Next(100) == 0 ? 0.02 * Normal(random) : 0;
            var reads = moved + noise * Normal(random);
            for (var i = 0; i < readings.Length; i++)
            {
                if (Math.Abs(reads - readings[i]) < width)
                {
                    here[i]++;
                    right[i] += Math.Abs(moved) > Matters ? 1 : 0;
                }
            }
        }

        for (var i = 0; i < readings.Length; i++)
        {
            var stated = Chance(null, readings[i], 1);
            output.WriteLine($"{readings[i]:P1} over: stated {stated:F3}, right {right[i] / here[i]:F3} of {here[i]}");
            Assert.True(here[i] > 500);
            Assert.InRange(stated, right[i] / here[i] - 0.08, right[i] / here[i] + 0.08);
        }
    }

    [Fact]
    public void Two_plates_that_agree_say_more_than_one()
    {
        var (one, two) = (Chance(null, 0.013, 1), Chance(null, 0.013, 2));
        output.WriteLine($"one {one:F3}, two {two:F3}");
        Assert.InRange(two - one, 0.15, 0.6);
    }

    [Fact]
    public void A_shift_within_twice_drift_and_repeat_together_does_not_matter_however_surely_it_is_known()
    {
        Assert.InRange(Chance(null, 0.8 * Matters, 2), 0, 0.1);
        Assert.InRange(Chance(null, 4 * Matters, 2), 0.99, 1);
    }

    [Fact]
    public void A_steady_leak_that_is_measured_and_taken_off_is_no_finding_however_large()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            Assert.InRange(Chance(new Random(seed), 0, 1, 0.03 * Areas[0]), 0, 0.5);
        }
    }

    /// <summary>What the rule says of a sweep on a morning when the bench is off by a share.</summary>
    /// <param name="random">Null: nothing scatters, and what is read is what is.</param>
    private static double Chance(Random? random, double shift, int plates, double leak = 3e-6)
    {
        double Scatter() => random is null ? 0 : Normal(random);
        var doubt = BenchDoubt.Unknown with { Drift = Drift, RepeatScatter = Repeat, RepeatDegrees = 400, TestPressure = 5 };
        CheckPlate[] cards = [.. Areas.Take(plates).Select((a, i) => new CheckPlate($"number {i + 1}", a, a * Certificate))];
        double[] holes = [.. cards.Select(c => c.EffectiveArea * (1 + Certificate * Scatter()))];
        var range = Ranges.OfEachKind[7];
        var bench = new SimulatedBench(range, doubt, cards) { LeakArea = leak };
        PlateReading Read(int plate)
        {
            var reading = bench.ReadPlate(cards[plate].Name, holes[plate]);
            return reading with { Reading = reading.Reading with { Value = reading.Reading.Value * (1 + Repeat * Scatter()) } };
        }

        bench.Add(new Calibration(
            bench.BenchId, range.Name, bench.Today, [.. Enumerable.Range(0, plates).SelectMany(i => Enumerable.Range(0, 5).Select(_ => Read(i)))], bench.Air(), Leak: bench.ReadPlate("", 0)));
        bench.NextDay();
        // The meter shows more where it needs a smaller factor.
        bench.TrueFactor = 1 / (1 + shift + Drift * Scatter());
        bench.Add(new MorningCheck(bench.BenchId, bench.Today, bench.Air(), bench.ReadPlate("", 0), [.. Enumerable.Range(0, plates).Select(Read)]));
        var sweep = bench.Sweep(bench.Cut(0));
        bench.ReadLeak(sweep);
        bench.Read(sweep, 0.006, 0.0009);
        return Assert.Single(new BenchNotFit().Look(PortSurvey.Of(bench.Ledger, bench.PortId))).Confidence;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
