using Portwright.Geometry;
using Portwright.Physics.Rings;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Tests.Rings;

public sealed class VelocityMapTests
{
    private static readonly Outline Pipe = new(Enumerable.Range(0, 240).Select(i => new PlanePoint(0.019 * Math.Cos(i * Math.PI / 120), 0.019 * Math.Sin(i * Math.PI / 120))));

    /// <summary>Developed pipe flow is what the wall law is: mean 49/60 of the axis (Schlichting), uniformity index 0.9433.</summary>
    [Fact]
    public void In_a_pipe_of_one_seventh_power_the_map_is_the_profile()
    {
        var map = Map(Pipe, Ring(Pipe, p => 110 * Power(p), 8, 0.005));
        Assert.Equal(110 * 49 / 60.0, map.Mean.Value, 110 * 5e-4);
        Assert.Equal(0.9433437628894042, map.UniformityIndex, 1e-3);
        Assert.Equal(0, map.SideBalance.Value, 1e-6);
        Assert.Equal(0, map.RoofBalance.Value, 1e-6);
        foreach (var depth in new[] { 0.0005, 0.002, 0.012 })
            Assert.Equal(110 * Power(Pipe.PointAt(4.3, depth)), map.At(Pipe.PointAt(4.3, depth)), 110 * 1e-3);
    }

    [Fact]
    public void There_is_no_speed_on_the_wall_and_no_map_outside_it()
    {
        var map = Map(Pipe, Ring(Pipe, _ => 90, 6, 0.006));
        Assert.Equal(0, map.At(Pipe.Points[7]));
        Assert.True(double.IsNaN(map.At(new(0.02, 0))));
        Assert.True(map.At(Pipe.PointAt(3, 1e-6)) < 30);
    }

    [Fact]
    public void The_grid_is_the_map_box_by_box()
    {
        var map = Map(Pipe, Ring(Pipe, p => 80 + 900 * p.X - 500 * p.Y, 7, 0.006));
        const int columns = 37, rows = 23;
        var grid = new double[columns * rows];
        map.Fill(columns, rows, grid);
        var b = Pipe.Bounds;
        for (var j = 0; j < rows; j++)
        {
            for (var i = 0; i < columns; i++)
            {
                var expected = map.At(new(b.Left + (i + 0.5) * b.Width / columns, b.Bottom + (j + 0.5) * b.Height / rows));
                Assert.Equal(double.IsNaN(expected) ? -1 : expected, double.IsNaN(grid[j * columns + i]) ? -1 : grid[j * columns + i], 1e-9);
            }
        }
    }

    [Fact]
    public void Air_faster_on_the_centre_side_and_at_the_roof_shows_in_the_balance()
    {
        var map = Map(Pipe, Ring(Pipe, p => (80 + 1500 * p.X + 800 * p.Y) * Power(p), 8, 0.005));
        Assert.True(map.SideBalance.Value - map.SideBalance.Expanded() > 0 && map.RoofBalance.Value - map.RoofBalance.Expanded() > 0);
        Assert.InRange(map.Fastest.BearingHours, 1, 3);
        Assert.InRange(map.Laziest.BearingHours, 7, 9);
    }

    [Fact]
    public void A_mirrored_port_has_the_same_mean_and_the_opposite_balance()
    {
        var port = new SyntheticPort(new Random(5));
        var ring = port.Ring(new Random(6), 9, 0.01, 0);
        var here = Map(port.Outline, ring);
        var there = Map(port.Outline.Mirrored(), [.. ring.Select(r => r with { Place = new(-r.Place.X, r.Place.Y) })]);
        Assert.Equal(here.Mean.Value, there.Mean.Value, 1e-3 * here.Mean.Value);
        Assert.Equal(here.SideBalance.Value, -there.SideBalance.Value, 2e-3 * here.Mean.Value);
        Assert.Equal(here.RoofBalance.Value, there.RoofBalance.Value, 2e-3 * here.Mean.Value);
    }

    [Fact]
    public void The_sensitivity_to_a_reading_is_how_the_mean_moves_with_it()
    {
        var port = new SyntheticPort(new Random(11));
        var ring = port.Ring(new Random(12), 8, 0.01, 0);
        for (var i = 0; i < ring.Length; i++)
        {
            // A single reading moved by its own standard uncertainty; the correlation length is taken anew and may step.
            Estimate With(double by) => Map(port.Outline, [.. ring.Select((r, k) => k == i ? r with { Speed = r.Speed + by * r.StandardUncertainty } : r)]).Mean;
            var moved = (With(0.1).Value - With(-0.1).Value) / 0.2;
            Assert.Equal(moved, With(0).Contributions.Single(c => c.Source == $"reading {i + 1}").Amount, 0.02 * Math.Abs(moved) + 1e-4);
        }
    }

    [Fact]
    public void The_probes_factor_cancels_between_two_rings_taken_with_it()
    {
        var ring = Ring(Pipe, p => 90 * Power(p), 8, 0.005);
        Assert.True(VelocityMap.TryCreate(Pipe, ring, new(0.05, "probe 2"), "before", out var before, out _));
        Assert.True(VelocityMap.TryCreate(Pipe, ring, new(0.05, "probe 2"), "after", out var after, out _));
        Assert.True(after.Mean.Subtract(before.Mean).StandardUncertainty < before.Mean.StandardUncertainty / 2);
    }

    [Fact]
    public void Repeats_at_a_place_count_as_their_mean()
    {
        var ring = Ring(Pipe, p => 90 * Power(p), 5, 0.005);
        ProbeReading[] twice = [.. ring.Select(r => r with { Speed = r.Speed + 1, Source = r.Source + " a" }), .. ring.Select(r => r with { Speed = r.Speed - 1, Source = r.Source + " b" })];
        var (once, both) = (Map(Pipe, ring), Map(Pipe, twice));
        Assert.Equal(once.Mean.Value, both.Mean.Value, 1e-9);
        Assert.True(both.Mean.StandardUncertainty < once.Mean.StandardUncertainty);
    }

    [Fact]
    public void A_reading_more_leaves_less_open()
    {
        double Open(int bearings) => Map(Pipe, Ring(Pipe, p => 90 * Power(p), bearings, 0.006)).Mean.Contributions.Single(c => c.Source.Contains("between", StringComparison.Ordinal)).Amount;
        Assert.True(Open(8) < Open(4) && Open(4) < Open(2));
    }

    [Fact]
    public void The_reading_worth_taking_next_is_where_the_ring_has_its_gap_and_takes_what_it_says()
    {
        // Centre, and bearings from 5 round to 1 o'clock: nothing at 3.
        ProbeReading[] ring = [.. Ring(Pipe, p => 90 * Power(p), 12, 0.006).Where((_, i) => i is not (3 or 4 or 5))];
        var map = Map(Pipe, ring);
        var next = map.WorthReadingNext;
        Assert.InRange(next.Place.BearingHours, 2, 4);
        Assert.Equal(map.Mean.Contributions.Single(c => c.Source.Contains("between", StringComparison.Ordinal)).Amount, next.OpenNow, 1e-9);
        Assert.True(next.OpenAfter < 0.8 * next.OpenNow);
        var taken = Map(Pipe, [.. ring, new(next.Place.Point, next.Place.Speed, 0.9, "next")]);
        var open = taken.Mean.Contributions.Single(c => c.Source.Contains("between", StringComparison.Ordinal));
        // The spread is known by one reading more, hence a little smaller than foretold.
        var n = ring.Length;
        Assert.Equal(next.OpenAfter * Math.Sqrt((n + 1.0) / (n + 2.0)), open.Amount, 0.03 * next.OpenAfter);
    }

    [Fact]
    public void Dead_air_at_a_place_is_a_reading()
    {
        var ring = Ring(Pipe, p => 90 * Power(p), 6, 0.006);
        ring[2] = ring[2] with { Speed = 0 };
        var map = Map(Pipe, ring);
        Assert.Equal(0, map.At(ring[2].Place), 1e-9);
        Assert.True(map.Laziest.Point.To(ring[2].Place) < 0.004);
    }

    [Fact]
    public void Readings_that_make_no_map_are_refused_with_the_reason_and_the_cure()
    {
        string Refused(params ProbeReading[] ring)
        {
            Assert.False(VelocityMap.TryCreate(Pipe, ring, new(0.01), "ring", out _, out var problem));
            return problem;
        }
        var good = Ring(Pipe, _ => 90, 4, 0.006);
        Assert.Equal("The ring has readings at 2 places. A map takes three or more: the centre and two bearings at the least.", Refused(good[0], good[1], good[1]));
        Assert.Contains("Reading 4 of the ring lies outside the section, at 30.0, 0.0 mm.", Refused([.. good[..3], good[3] with { Place = new(0.03, 0) }]), StringComparison.Ordinal);
        Assert.Contains("reads the wall", Refused([.. good, good[0] with { Place = Pipe.PointAt(5, 1e-5) }]), StringComparison.Ordinal);
        Assert.Contains("Reading 2 of the ring, -5 m/s, is no speed", Refused(good[0], good[1] with { Speed = -5 }, good[2]), StringComparison.Ordinal);
        Assert.Contains("Every reading of the ring is zero", Refused([.. good.Select(r => r with { Speed = 0 })]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_closure_says_how_far_map_and_bench_lie_apart_and_whether_doubt_explains_it()
    {
        Estimate mean = new(90, [new("probe factor", 0.9), new("air", 1, 8)]), area = new(1e-3, [new("calipers", 1e-5)]), density = new(1.17, [new("weather", 0.002)]);
        MapClosure Against(double flow) => MapClosure.Of(mean, area, density, new(flow, [new("weather", 0.0002), new("bench", 0.0005)]));
        Assert.True(Against(0.1053).IsInside && Against(0.1053).PValue == 1);
        Assert.True(Against(0.103).IsInside);
        Assert.False(Against(0.095).IsInside);
        Assert.Equal(0.1053 / 0.095 - 1, Against(0.095).Relative, 1e-12);
        // The weather moves both alike.
        Assert.Equal(0.09 * 0.002 - 0.0002, Against(0.1).Difference.Contributions.Single(c => c.Source == "weather").Amount, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>("area", () => MapClosure.Of(mean, Estimate.Exact(0), density, mean));
    }

    private static double Power(PlanePoint p) => Math.Pow(Math.Max(0, 1 - p.To(new(0, 0)) / 0.019), 1.0 / 7);

    private static ProbeReading[] Ring(Outline outline, Func<PlanePoint, double> speed, int bearings, double depth)
    {
        List<PlanePoint> places = [outline.BearingCentre, .. Enumerable.Range(0, bearings).Select(i => outline.PointAt(12.0 * i / bearings, depth))];
        return [.. places.Select((p, i) => new ProbeReading(p, speed(p), 0.9, $"reading {i + 1}"))];
    }

    private static VelocityMap Map(Outline outline, ProbeReading[] ring)
    {
        Assert.True(VelocityMap.TryCreate(outline, ring, new(0.01), "ring", out var map, out var problem), problem);
        return map;
    }
}
