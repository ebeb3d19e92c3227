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

    /// <summary>One who knows all else must not be told much of faults by a job that has none.</summary>
    [Fact]
    public void Sound_air_tells_nothing_of_a_fault() => Assert.All(Healthy, s => Assert.Equal(0, s.Job.KnownAir.LogRatio));

    /// <summary>A reading of 1.1 that should be 1.0 within 0.1 with the fault, one deviation off, and 0.8 within 0.2 without, one and a half: 1.125 less 0.5, and the logarithm of two. Then a flag seen 15 times in 100.</summary>
    [Fact]
    public void What_is_known_of_the_air_is_Bayes_rule_by_hand()
    {
        var air = new KnownAir();
        air.Read(1.1, (0.8, 0.2), (1.0, 0.1));
        Assert.Equal(Math.Log(2) + 0.625, air.LogRatio, 1e-12);
        air.Seen(0.15);
        Assert.Equal(Math.Log(2 / 0.15) + 0.625, air.LogRatio, 1e-12);
    }

    /// <summary>Whoever weighs rightly is told twenty to one the wrong way one time in twenty at most, and the larger the fault the more of them can be told.</summary>
    [Fact]
    public void The_larger_a_fault_of_the_air_the_oftener_its_readings_suffice()
    {
        var fault = PlantedFaults.All.Single(f => f.Name == "uneven sides");
        List<MadeShop> Of(Size size) => [.. Enumerable.Range(0, 30).Select(i => MadeShop.Of(5, Tried.NumberOf(fault, size, i), fault, size))];
        var (small, large) = (Of(Size.Small), Of(Size.Large));
        Assert.True(small.Count(s => fault.IsReadEnough(s.Job)) < large.Count(s => fault.IsReadEnough(s.Job)));
        var wrong = small.Concat(large).Count(s => s.Job.KnownAir.LogRatio < -Math.Log(20));
        Assert.True(wrong <= Allowance.Of(60, 0.05), $"{wrong} of 60");
    }

    /// <summary>At the rule's prior of 0.15 nine in ten takes a ratio of 51.</summary>
    [Theory]
    [InlineData(3.92, false)]
    [InlineData(3.94, true)]
    public void Readings_suffice_where_one_who_knows_would_say_it_with_nine_in_ten(double log, bool enough)
    {
        var job = MadeShop.Of(11, 0).Job;
        job.KnownAir.Seen(Math.Exp(-log));
        Assert.Equal(enough, PlantedFaults.All.Single(f => f.Name == "uneven sides").IsReadEnough(job));
        Assert.True(PlantedFaults.All.Single(f => f.Name == "plate off in the morning").IsReadEnough(job));
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
