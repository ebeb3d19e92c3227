using Portwright.Geometry;
using Portwright.Physics.Rings;

namespace Portwright.Physics.Tests.Rings;

public sealed class OverEvenTests
{
    private const double Radius = 0.019;

    private static readonly Outline Pipe = new(Enumerable.Range(0, 240).Select(i => new PlanePoint(Radius * Math.Cos(i * Math.PI / 120), Radius * Math.Sin(i * Math.PI / 120))));

    [Fact]
    public void Developed_pipe_flow_is_even_air_at_every_depth()
    {
        var map = Map(_ => 1, 0.01);
        for (var i = 0; i < map.Readings.Length; i++) Assert.Equal(1, map.OverEven([i]).Value, 1e-3);
    }

    [Fact]
    public void A_reading_that_alone_is_a_fifth_low_is_a_fifth_under_the_others()
    {
        var map = Map(i => i == 4 ? 0.8 : 1, 0.01);
        Assert.Equal(0.8, map.OverEven([4]).Value / map.OverEven([1]).Value, 1e-9);
        Assert.InRange(map.OverEven([4]).Value, 0.8, 0.85);
    }

    [Fact]
    public void A_probe_that_reads_high_makes_no_place_busier_nor_surer()
    {
        Assert.Equal(Map(i => 1 + 0.02 * i, 0.01).OverEven([2, 3]).Value, Map(i => 1.3 * (1 + 0.02 * i), 0.01).OverEven([2, 3]).Value, 1e-9);
        Assert.Equal(Map(_ => 1, 0).OverEven([2]).StandardUncertainty, Map(_ => 1, 0.2).OverEven([2]).StandardUncertainty, 1e-9);
    }

    [Fact]
    public void No_reading_is_refused() => Assert.Throws<ArgumentException>(() => Map(_ => 1, 0.01).OverEven([]));

    /// <summary>The middle and eight bearings at two depths in a pipe of one-seventh power, each reading times a factor of its index.</summary>
    private static VelocityMap Map(Func<int, double> factor, double probeDoubt)
    {
        PlanePoint[] places = [new(0, 0), .. Enumerable.Range(0, 8).Select(i => Pipe.PointAt(1.5 * i, i % 2 == 0 ? 0.004 : 0.007))];
        ProbeReading[] readings = [.. places.Select((p, i) =>
        {
            var speed = factor(i) * 90 * Math.Pow(Pipe.DistanceToWall(p) / Radius, 1 / 7.0);
            return new ProbeReading(p, speed, 0.01 * speed, $"reading {i}");
        })];
        Assert.True(VelocityMap.TryCreate(Pipe, readings, new ProbeFactorDoubt(probeDoubt), "ring", out var map, out _));
        return map;
    }
}
