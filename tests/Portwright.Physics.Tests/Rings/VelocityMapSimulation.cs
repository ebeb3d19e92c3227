using System.Globalization;
using MathNet.Numerics.Distributions;
using Portwright.Physics.Rings;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Rings;

/// <summary>Rings sampled from random fields on random outlines: what the map says against what is true.</summary>
public sealed class VelocityMapSimulation
{
    [Fact]
    public void Mean_balance_and_closure_recover_the_truth_within_their_doubt()
    {
        const int fields = 320;
        var random = new Random(int.Parse(Environment.GetEnvironmentVariable("SEED") ?? "71", CultureInfo.InvariantCulture));
        List<(int Readings, double Off, double Expanded, bool Mean, bool Side, bool Roof, double SideU, double Err)> trials = [];
        for (var f = 0; f < fields; f++)
        {
            var port = new SyntheticPort(random);
            var readings = 5 + random.Next(9);
            var ring = port.Ring(random, readings, 0.01, Normal.Sample(random, 0, 0.01));
            Assert.True(VelocityMap.TryCreate(port.Outline, ring, new(0.01), "ring", out var map, out var problem), problem);
            bool Inside(Estimate e, double truth) => Math.Abs(e.Value - truth) <= e.Expanded();
            trials.Add((readings, map.Mean.Value / port.Mean - 1, map.Mean.Expanded() / map.Mean.Value, Inside(map.Mean, port.Mean), Inside(map.SideBalance, port.Side),
                Inside(map.RoofBalance, port.Roof), map.SideBalance.Expanded() / map.Mean.Value, map.Mean.StandardUncertainty/map.Mean.Value));
        }
        foreach (var g in trials.GroupBy(t => t.Readings < 7 ? "5-6" : t.Readings < 10 ? "7-9" : "10-13").OrderBy(g => g.Key).Append(trials.GroupBy(_ => "all").Single()))
        {
            var n = (double)g.Count();
            TestContext.Current.TestOutputHelper!.WriteLine(FormattableString.Invariant(
                $"{g.Key}: n {n}, mean in {g.Count(t => t.Mean) / n:P1}, side in {g.Count(t => t.Side) / n:P1}, roof in {g.Count(t => t.Roof) / n:P1}, bias {g.Average(t => t.Off):P2}, rms {Math.Sqrt(g.Average(t => t.Off * t.Off)):P2}, median U {g.Select(t => t.Expanded).Order().ElementAt(g.Count() / 2):P1}, median side U {g.Select(t => t.SideU).Order().ElementAt(g.Count() / 2):P1}"));
        }
    }
}
