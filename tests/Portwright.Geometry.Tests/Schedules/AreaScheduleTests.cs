using CsCheck;
using Portwright.Geometry.Schedules;
using Portwright.Geometry.Sections;

namespace Portwright.Geometry.Tests.Schedules;

public sealed class AreaScheduleTests
{
    private static readonly Gen<AreaSchedule> Any =
        Gen.Select(Gen.Double[0.005, 0.03], Gen.Double[8e-4, 2e-3], Gen.Double[0, 2e-5]).Array[2, 9]
            .Select(steps => new AreaSchedule(steps.Select((s, i) => new AreaStation(steps.Take(i).Sum(p => p.Item1), s.Item2, s.Item3)).Reverse()));

    [Fact]
    public void Stations_are_put_in_order_from_the_flange() =>
        Any.Sample(schedule => Assert.Equal(schedule.Stations.OrderBy(s => s.Distance), schedule.Stations));

    [Fact]
    public void No_station_is_smaller_than_the_smallest_section_and_nothing_between_is_either() =>
        Gen.Select(Any, Gen.Double[0, 1]).Sample((schedule, share) =>
        {
            Assert.All(schedule.Stations, s => Assert.True(s.Area >= schedule.Smallest.Area));
            Assert.True(schedule.AreaAt(schedule.Stations[0].Distance + share * schedule.Length) >= schedule.Smallest.Area * (1 - 1e-9));
        });

    [Fact]
    public void A_cone_of_five_degrees_is_found_again()
    {
        var wider = 0.04 + 2 * 0.05 * Math.Tan(5 * Math.PI / 180);
        var taper = new AreaSchedule([new(0.02, OvalSection.Round(0.04).Area), new(0.07, OvalSection.Round(wider).Area)]).Tapers[0];
        Assert.Equal(5, taper.ConeHalfAngle * 180 / Math.PI, 9);
        Assert.Equal((OvalSection.Round(wider).Area - OvalSection.Round(0.04).Area) / 0.05, taper.AreaPerLength, 12);
        Assert.Equal(Math.Pow(wider / 0.04, 2) - 1, taper.AreaShare, 12);
    }

    [Fact]
    public void Share_of_the_valve_by_hand()
    {
        // 2.5 in2 behind a 2.02 in valve: pi/4 x 2.02^2 = 3.2047 in2, share .7801.
        Assert.Equal(0.7801, AreaSchedule.ShareOfValve(2.5 * 0.0254 * 0.0254, 2.02 * 0.0254), 4);
    }

    [Fact]
    public void Nothing_is_said_beyond_the_measured_stations()
    {
        var schedule = new AreaSchedule([new(0.01, 1e-3), new(0.05, 2e-3)]);
        Assert.Throws<ArgumentOutOfRangeException>(() => schedule.AreaAt(0.009));
        Assert.Throws<ArgumentOutOfRangeException>(() => schedule.AreaAt(0.051));
        Assert.Equal(2e-3, schedule.AreaAt(0.05), 15);
    }

    [Fact]
    public void What_makes_no_schedule_is_refused_with_a_sentence()
    {
        static string? Refused(params AreaStation[] stations) => AreaSchedule.TryCreate(stations, out _, out var problem) ? null : problem;
        Assert.Contains("two stations or more", Refused(new AreaStation(0, 1e-3)));
        Assert.Contains("pinch lies at the same distance", Refused(new(0.02, 1e-3), new(0.02, 2e-3, Name: "pinch")));
        Assert.Contains("The area of bowl must be above zero", Refused(new(0.02, 1e-3), new(0.03, 0, Name: "bowl")));
        Assert.Contains("not a number", Refused(new(double.NaN, 1e-3), new(0.03, 1e-3)));
        Assert.Throws<ArgumentException>(() => new AreaSchedule([]));
    }

    [Fact]
    public void Volume_grows_with_area_and_length_and_its_working_adds_up() =>
        Any.Sample(schedule =>
        {
            var volume = SectionVolume.Of(schedule);
            var twice = SectionVolume.Of(new(schedule.Stations.Select(s => s with { Area = 2 * s.Area, Distance = 3 * s.Distance })));
            Assert.Equal(6, twice.Volume / volume.Volume, 1e-9);
            Assert.Equal(volume.Volume, volume.Working.Where(l => l.Effect == Portwright.Geometry.Working.Effect.Adds).Sum(l => l.Result.Value), 1e-15);
            Assert.InRange(volume.Volume, schedule.Smallest.Area * schedule.Length * (1 - 1e-9), schedule.Stations.Max(s => s.Area) * schedule.Length * (1 + 1e-9));
        });

    [Fact]
    public void Volume_doubt_from_the_areas_is_what_moving_each_area_does() =>
        Any.Sample(schedule =>
        {
            var sum = 0.0;
            for (var i = 0; i < schedule.Stations.Count; i++)
            {
                double With(double d) => SectionVolume.Of(new(schedule.Stations.Select((s, j) => j == i ? s with { Area = s.Area + d } : s))).Volume;
                sum += Math.Pow((With(1e-8) - With(-1e-8)) / 2e-8 * schedule.Stations[i].AreaDoubt, 2);
            }
            Assert.Equal(Math.Sqrt(sum), SectionVolume.Of(schedule).DoubtFromAreas, 1e-12);
        });

    [Fact]
    public void The_caliper_scale_moves_all_areas_together()
    {
        var volume = SectionVolume.Of(new([new(0, 1e-3), new(0.05, 1e-3), new(0.1, 1e-3)]), 0.001);
        Assert.Equal(0.002 * 1e-4, volume.Standard, 1e-15);
    }

    [Fact]
    public void The_rules_differ_where_the_port_swells_between_stations()
    {
        var plain = SectionVolume.Of(new([new(0, 1e-3), new(0.04, 1.01e-3), new(0.08, 1.02e-3)]));
        var swollen = SectionVolume.Of(new([new(0, 1e-3), new(0.04, 1.5e-3), new(0.08, 1e-3)]));
        Assert.True(swollen.DoubtFromRule > 100 * plain.DoubtFromRule);
    }

    [Fact]
    public void A_port_that_holds_more_than_its_sections_show_scores_above_zero()
    {
        var sections = SectionVolume.Of(new([new(0, 1e-3, 1e-5), new(0.1, 1e-3, 1e-5)]));
        var gap = new VolumeGap(sections, 1.05e-4, 5e-7);
        Assert.Equal(5e-6, gap.Difference, 1e-12);
        // Two ends of L/2 each: u = .05 x 1e-5 x sqrt 2 = 7.07e-7; with 5e-7: 8.66e-7.
        Assert.Equal(8.66e-7, gap.Standard, 1e-9);
        Assert.Equal(5.77, gap.Score, 0.01);
    }
}
