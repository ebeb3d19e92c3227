using BenchmarkDotNet.Attributes;
using Portwright.Geometry;
using Portwright.Physics.Rings;

namespace Portwright.Bench;

/// <summary>A ring of thirteen readings over a section of 64 wall points: the map with its doubts, and the picture of it.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class RingBench
{
    private const int Side = 200;

    private readonly double[] _speeds = new double[Side * Side];
    private Outline _outline = null!;
    private ProbeReading[] _ring = [];
    private VelocityMap _map = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _outline = new(Enumerable.Range(0, 64).Select(i => new PlanePoint(0.017 * Math.Cos(i * Math.PI / 32), 0.024 * Math.Sin(i * Math.PI / 32))));
        _ring =
        [
            new(_outline.BearingCentre, 96, 0.5, "centre"),
            .. Enumerable.Range(0, 12).Select(i => new ProbeReading(_outline.PointAt(i, 0.004), 84 + i % 5, 0.5, $"bearing {i}")),
        ];
        _map = Map_with_its_doubts();
    }

    [Benchmark]
    public VelocityMap Map_with_its_doubts() =>
        VelocityMap.TryCreate(_outline, _ring, new(0.01), "ring", out var map, out var problem) ? map : throw new InvalidOperationException(problem);

    [Benchmark]
    public double Map_at_200_by_200_points()
    {
        _map.Fill(Side, Side, _speeds);
        return _speeds[Side * Side / 2];
    }
}
