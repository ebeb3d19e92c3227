using System.Text.Json;
using Portwright.Judging.Faults;
using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Judging.Trial;
using Portwright.Physics.Valves;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Tests.Judging;

/// <summary>The made shops themselves: a trial is worth what its truth is worth.</summary>
public sealed class MadeShopTests
{
    private const int Shops = 40;

    private static readonly IReadOnlyList<MadeShop> Healthy = [.. Enumerable.Range(0, Shops).Select(i => MadeShop.Of(11, i))];

    public static TheoryData<string> FaultNames => [.. PlantedFaults.All.Select(f => f.Name)];

    [Fact]
    public void A_made_bench_reads_its_ports_within_the_doubt_its_card_states()
    {
        var scores = (
            from shop in Healthy
            let reductions = new Reductions(shop.Ledger)
            from port in shop.Job.Ports
            from point in reductions.Of(shop.Ledger.Get<Cut>(port.Cut))!.Curve.Points
            select (point.EffectiveArea.Value - port.AreaAt(point.Lift)) / point.EffectiveArea.StandardUncertainty).ToList();
        Assert.True(scores.Count > 2000);
        // Shops share meter, day and gauge over all their ports, and a card may be 30 percent off: not a bell curve of 1, but near it.
        Assert.InRange(Math.Sqrt(scores.Average(z => z * z)), 0.6, 1.25);
        Assert.True(scores.Count(z => Math.Abs(z) > 3) < 0.02 * scores.Count);
    }

    [Fact]
    public void No_made_port_flows_more_than_its_valve_lets_through_nor_falls_off_by_itself()
    {
        foreach (var port in Healthy.SelectMany(s => s.Job.Ports))
        {
            foreach (var lift in Enumerable.Range(1, 20).Select(i => port.Top * i / 20))
                Assert.InRange(port.AreaAt(lift) / ValveWindow.At(port.Valve.Read(1e-7).Seat(), lift).Area, 0.3, 1.02);
            Assert.InRange(port.AreaAt(port.Top) / port.At(StationRole.Pinch).Section.Area, 0.45, 0.85);
        }
    }

    [Theory]
    [InlineData("throat-too-small")]
    [InlineData("throat-too-large")]
    [InlineData("bowl-too-large")]
    [InlineData("port-speed-against-plan")]
    [InlineData("thin-metal")]
    [InlineData("backs-up")]
    public void A_healthy_job_is_healthy_by_its_own_measure(string key) =>
        Assert.DoesNotContain(Healthy, s => s.Job.Ports.Any(p => Truth.Holds(s, p, key)));

    [Fact]
    public void The_same_number_makes_the_same_shop()
    {
        static string Record(long number) => JsonSerializer.Serialize(MadeShop.Of(3, number).Ledger.Entries, RecordJson.Default.IReadOnlyListEntry);
        Assert.Equal(Record(5), Record(5));
        Assert.NotEqual(Record(5), Record(6));
    }

    [Theory]
    [MemberData(nameof(FaultNames))]
    public void Every_fault_is_planted_at_every_size_and_its_shop_can_be_typed(string name)
    {
        var fault = PlantedFaults.All.Single(f => f.Name == name);
        foreach (var size in Enum.GetValues<Size>())
        {
            var shop = MadeShop.Of(7, Tried.NumberOf(fault, size, 0), fault, size);
            Assert.NotEmpty(shop.Planted!.Ports);
            Assert.Empty(fault.Found.Intersect(fault.Fair));
            var reductions = new Reductions(shop.Ledger);
            Assert.All(shop.Job.Ports, p => Assert.NotNull(reductions.Of(shop.Ledger.Get<Cut>(p.Cut))));
            Assert.Empty(shop.Ledger.All<Sweep>().SelectMany(s => reductions.Of(s).Refused));
        }
    }

    [Fact]
    public void Sound_air_tells_nothing_of_a_fault() => Assert.All(Healthy, s => Assert.Equal(0, s.Job.KnownAir.Apart(), 1e-9));

    /// <summary>
    /// One ball in the middle of a section, where the air is nobody's own: a step of 0.9 with a noise of 0.30 besides what shop (0.20), check (0.10) and place (0.065) make: 0.9 over the root of
    /// 0.09 + 0.04 + 0.01 + 0.004225.
    /// </summary>
    [Fact]
    public void One_ball_lies_off_by_its_step_over_all_that_scatters()
    {
        var port = MadeShop.Of(11, 0).Job.Ports[0];
        var air = new KnownAir();
        air.Ball(port, port.At(StationRole.ShortSide), 0, 0, null, 0.9, 0.30);
        Assert.Equal(0.9 / Math.Sqrt(0.144225), air.Apart(), 1e-6);
    }

    /// <summary>Two probes in the middle share the probe's three hundredths, drawn evenly: their difference is told by 0.01 and 0.02 alone.</summary>
    [Fact]
    public void What_two_readings_share_does_not_tell_against_them()
    {
        var port = MadeShop.Of(11, 0).Job.Ports[0];
        var air = new KnownAir();
        air.Probe(port, port.At(StationRole.ShortSide), 0, 0, null, 0, 0.01);
        air.Probe(port, port.At(StationRole.Bowl), 0, 0, null, 0.05, 0.02);
        // By hand: s2^2 (c + a) / ((c + a)(c + b) - c^2), c = .03^2/3 = .0003, a = .0001, b = .0004, each with 1e-8.
        Assert.Equal(Math.Sqrt(0.0025 * 0.0004 / (0.0004 * 0.0007 - 0.0003 * 0.0003)), air.Apart(), 1e-3);
    }

    [Fact]
    public void The_larger_a_fault_of_the_air_the_oftener_its_readings_suffice()
    {
        var fault = PlantedFaults.All.Single(f => f.Name == "uneven sides");
        int Enough(Size size) => Enumerable.Range(0, 30).Count(i => fault.IsReadEnough(MadeShop.Of(5, Tried.NumberOf(fault, size, i), fault, size), size));
        Assert.True(Enough(Size.Small) < Enough(Size.Large));
    }

    /// <summary>
    /// At a prior of 0.15 nine in ten takes a ratio of 51; the deviations at which all but one judge in twenty have it, a fault's size open by a factor of 1.6: by bisection outside the program,
    /// fifteen equal classes of the log-normal. A flag that only the fault makes stand so tells it alone.
    /// </summary>
    [Theory]
    [InlineData(4.768, 0, false)]
    [InlineData(4.778, 0, true)]
    [InlineData(0, 3.92, false)]
    [InlineData(0, 3.94, true)]
    public void Readings_suffice_where_the_best_judge_would_say_it_with_nine_in_ten(double apart, double flags, bool enough) => Assert.Equal(enough, Suffices.Found(apart, flags, 0.15));

    /// <summary>The limit is one percent and the set-ups scatter: nobody can tell a port that is low by just that.</summary>
    [Fact]
    public void No_set_up_tells_a_port_that_is_low_by_the_limit()
    {
        var fault = PlantedFaults.All.Single(f => f.Name == "one port low");
        int Enough(Size size) => Enumerable.Range(0, 20).Count(i => fault.IsReadEnough(MadeShop.Of(5, Tried.NumberOf(fault, size, i), fault, size), size));
        Assert.Equal(0, Enough(Size.Small));
        Assert.True(Enough(Size.Middle) < Enough(Size.Large));
    }

    [Fact]
    public void The_speed_over_a_section_is_its_mean_on_the_mean()
    {
        var field = MadeShop.Of(11, 0).Job.Ports[0].At(StationRole.ShortSide).Field;
        field.Put(new Patch(6, 1, 0.6));
        var (sum, count) = (0.0, 0);
        for (var i = 0; i < 100; i++)
        {
            for (var j = 0; j < 100; j++)
            {
                var (px, py) = (((i + 0.5) / 100 - 0.5) * field.Section.Width, ((j + 0.5) / 100 - 0.5) * field.Section.Height);
                if (field.Section.Depth(px, py) <= 0) continue;
                sum += field.At(px, py);
                count++;
            }
        }

        Assert.Equal(1, sum / count, 0.01);
        Assert.Equal(field.Section.Area, count * 1e-4 * field.Section.Width * field.Section.Height, field.Section.Area * 0.01);
    }
}
