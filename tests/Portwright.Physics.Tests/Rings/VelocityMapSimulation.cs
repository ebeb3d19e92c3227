using MathNet.Numerics.Distributions;
using Portwright.Physics.Rings;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Rings;

/// <summary>
/// Rings sampled from random fields on random outlines: what the map says against what is true. Readings off by 1 percent each and by 1 percent together
/// (the probe), section by 0.8 percent, bench by 0.5 percent.
/// </summary>
public sealed class VelocityMapSimulation
{
    private const double Noise = 0.01, Probe = 0.01, Caliper = 0.008, Bench = 0.005;

    [Fact]
    public void Mean_and_closure_recover_the_truth_within_their_doubt()
    {
        var trials = Run(new Random(71), 300, random => 5 + random.Next(9));
        foreach (var g in trials.GroupBy(t => t.Readings < 7 ? "5 and 6 readings" : t.Readings < 10 ? "7 to 9 readings" : "10 to 13 readings")) Print(g.Key, g);
        Print("all", trials);
        Assert.True(Share(trials, t => t.MeanInside) >= 0.90 && Share(trials, t => t.ClosureInside) >= 0.90);
        Assert.True(Share(trials, t => t.SideInside) >= 0.88 && Share(trials, t => t.RoofInside) >= 0.88);
        // Not bought with a doubt so wide that it says nothing.
        Assert.True(Median(trials, t => t.Expanded) <= 0.05);
        // A section taken 12 percent too large is found as a closure that fails.
        Assert.True(Share(trials, t => !t.WrongAreaInside) >= 0.9);
    }

    [Fact]
    public void Three_and_four_readings_are_doubted_more_and_still_hold()
    {
        var few = Run(new Random(19), 240, random => 3 + random.Next(2));
        Print("3 and 4 readings", few);
        Assert.True(Share(few, t => t.MeanInside) >= 0.90);
        Assert.True(Median(few, t => t.Expanded) <= 0.12);
    }

    private static List<Trial> Run(Random random, int fields, Func<Random, int> count)
    {
        List<Trial> trials = [];
        for (var f = 0; f < fields; f++)
        {
            var port = new SyntheticPort(random);
            var ring = port.Ring(random, count(random), Noise, Normal.Sample(random, 0, Probe));
            Assert.True(VelocityMap.TryCreate(port.Outline, ring, new(Probe), "ring", out var map, out var problem), problem);
            HoldsItsLimits(map, ring);

            const double density = 1.17;
            var area = port.Outline.Area * (1 + Normal.Sample(random, 0, Caliper));
            var flow = density * port.Mean * port.Outline.Area * (1 + Normal.Sample(random, 0, Bench));
            MapClosure Close(double a) => MapClosure.Of(map.Mean, new(a, [new("calipers", Caliper * a)]), Estimate.Exact(density), new(flow, [new("bench", Bench * flow)]));
            bool Inside(Estimate e, double truth) => Math.Abs(e.Value - truth) <= e.Expanded();
            trials.Add(new(ring.Length, map.Mean.Value / port.Mean - 1, map.Mean.Expanded() / map.Mean.Value, Inside(map.Mean, port.Mean),
                Inside(map.SideBalance, port.Side), Inside(map.RoofBalance, port.Roof), map.SideBalance.Expanded() / map.Mean.Value,
                Close(area).IsInside, Close(1.12 * area).IsInside, Close(area).RelativeExpanded,
                ShareOf(map.Mean, "reading "), ShareOf(map.Mean, "probe"), ShareOf(map.Mean, "wall"), ShareOf(map.Mean, "ring:")));
        }
        return trials;
    }

    /// <summary>Every reading is met, nothing is below zero, nothing past the highest reading.</summary>
    private static void HoldsItsLimits(VelocityMap map, ProbeReading[] ring)
    {
        var highest = ring.Max(r => r.Speed);
        foreach (var r in ring) Assert.Equal(r.Speed, map.At(r.Place), 1e-9 * highest);
        var grid = new double[70 * 70];
        map.Fill(70, 70, grid);
        Assert.Contains(grid, v => v > 0);
        Assert.DoesNotContain(grid, v => v < 0 || v > highest);
        Assert.InRange(map.Laziest.Speed, 0, map.Fastest.Speed);
        Assert.InRange(map.UniformityIndex, 0, 1);
    }

    private static void Print(string name, IEnumerable<Trial> of)
    {
        var trials = of.ToList();
        TestContext.Current.TestOutputHelper!.WriteLine(FormattableString.Invariant(
            $"{name}: {trials.Count} fields; inside: mean {Share(trials, t => t.MeanInside):P1}, closure {Share(trials, t => t.ClosureInside):P1}, side {Share(trials, t => t.SideInside):P1}, roof {Share(trials, t => t.RoofInside):P1}; mean off by {trials.Average(t => t.Off):P2}, rms {Math.Sqrt(trials.Average(t => t.Off * t.Off)):P2}; median U: mean {Median(trials, t => t.Expanded):P1}, closure {Median(trials, t => t.ClosureU):P1}, side {Median(trials, t => t.SideU):P1} of the mean; 12 percent too large an area found in {Share(trials, t => !t.WrongAreaInside):P1}; variance of the mean from readings {trials.Average(t => t.FromReadings):P0}, probe {trials.Average(t => t.FromProbe):P0}, wall law {trials.Average(t => t.FromWall):P0}, air between {trials.Average(t => t.FromAir):P0}"));
    }

    private static double ShareOf(Estimate e, string source) =>
        e.Contributions.Where(c => c.Source.StartsWith(source, StringComparison.Ordinal)).Sum(c => c.Amount * c.Amount) / e.Variance;

    private static double Share(List<Trial> trials, Func<Trial, bool> what) => trials.Count(what) / (double)trials.Count;

    private static double Median(List<Trial> trials, Func<Trial, double> what) => trials.Select(what).Order().ElementAt(trials.Count / 2);

    private sealed record Trial(int Readings, double Off, double Expanded, bool MeanInside, bool SideInside, bool RoofInside, double SideU,
        bool ClosureInside, bool WrongAreaInside, double ClosureU, double FromReadings, double FromProbe, double FromWall, double FromAir);
}
