using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Findings.Weighed;

/// <summary>What readings say of the measurement: from sound to wrong, what each rule says of it.</summary>
public sealed class WeighedMeasurement
{
    /// <summary>Share by which the middle lift is off.</summary>
    [Theory]
    [InlineData(0, "nothing")]
    [InlineData(0.04, "0.3714")]
    [InlineData(0.07, "0.7662")]
    [InlineData(0.12, "0.9309")]
    [InlineData(-0.06, "0.2333")]
    public void A_lift_out_of_the_curve_is_a_reading_out_of_line(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, FlowFactor = l => Math.Abs(l - 0.0075) < 1e-6 ? 1 + size : 1 }, "reading-out-of-line");

    /// <summary>The same, against three sisters.</summary>
    [Theory]
    [InlineData(0.015, "nothing")]
    [InlineData(0.045, "0.2722")]
    [InlineData(0.055, "0.6146")]
    public void A_lift_out_of_its_sisters_line_is_a_reading_out_of_line(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, FlowFactor = l => Math.Abs(l - 0.0075) < 1e-6 ? 1 + size : 1, Sisters = Swept(3) }, "reading-out-of-line");

    /// <summary>The same at the lowest lift.</summary>
    [Theory]
    [InlineData(0.07, "nothing")]
    [InlineData(0.09, "nothing")]
    public void The_first_lift_out_of_its_sisters_line_is_one_too(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, FlowFactor = l => l < 0.003 ? 1 + size : 1, Sisters = Swept(3) }, "reading-out-of-line");

    /// <summary>The same at the highest.</summary>
    [Theory]
    [InlineData(0.06, "nothing")]
    [InlineData(0.08, "nothing")]
    public void The_last_lift_out_of_its_sisters_line_is_one_too(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, FlowFactor = l => l > 0.012 ? 1 + size : 1, Sisters = Swept(3) }, "reading-out-of-line");

    /// <summary>Share by which one of three readings of a lift is off.</summary>
    [Theory]
    [InlineData(0.01, "nothing")]
    [InlineData(0.02, "0.09482")]
    [InlineData(0.03, "0.2135")]
    [InlineData(0.08, "0.8897")]
    public void One_repeat_far_off_the_others_is_a_slip(double size, string said) => Weighing.Says(said, Slipped(3, size), "reading-out-of-line");

    /// <summary>Scatter of the repeats at one lift over the healthy one.</summary>
    [Theory]
    [InlineData(1, "nothing")]
    [InlineData(2, "0.04635")]
    [InlineData(2.5, "0.1917")]
    [InlineData(4, "0.9834")]
    public void Repeats_that_scatter_are_unsteady(double size, string said) => Weighing.Says(said, new MadePort(22) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 4, Sound = _ => "", Scatter = l => Math.Abs(l - 0.010) < 1e-6 ? size : 1 }, "curve-unsteady");

    /// <summary>The same on a bench whose card is taken as certain: it counts as twenty degrees of freedom.</summary>
    [Theory]
    [InlineData(2.5, "0.1917")]
    [InlineData(4, "0.9834")]
    public void Repeats_are_held_against_a_card_taken_as_certain(double size, string said) => Weighing.Says(said, new MadePort(22) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 4, Sound = _ => "", Scatter = l => Math.Abs(l - 0.010) < 1e-6 ? size : 1, Doubt = BenchDoubt.Unknown with { RepeatScatter = 0.002, RepeatDegrees = null, SetUpScatter = 0.003, SetUpDegrees = 15, Drift = 0.001 } }, "curve-unsteady");

    /// <summary>The same of two lifts.</summary>
    [Theory]
    [InlineData(2, "0.02783")]
    [InlineData(3, "0.1246")]
    [InlineData(4, "0.4822")]
    public void Two_lifts_that_scatter_are_a_band(double size, string said) => Weighing.Says(said, new MadePort(25) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 3, Sound = _ => "", Scatter = l => l > 0.009 ? size : 1 }, "curve-unsteady");

    /// <summary>Lift from which it whistles, m.</summary>
    [Theory]
    [InlineData(0.011, "0.5528")]
    [InlineData(0.009, "0.9753")]
    [InlineData(0.006, "0.9957")]
    public void A_whistle_says_it_is_unsteady(double size, string said) => Weighing.Says(said, new MadePort(28) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Sound = l => l > size ? "whistles" : "steady" }, "curve-unsteady");

    /// <summary>Share of the way to being exchanged.</summary>
    [Theory]
    [InlineData(1, "0.6682")]
    [InlineData(0.8, "0.2667")]
    [InlineData(0.6, "0.01866")]
    public void Two_lifts_written_in_each_others_place_are_told(double size, string said) => Weighing.Says(said, Exchanged(new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1 }, size), "lifts-swapped");

    /// <summary>The same, against three sisters.</summary>
    [Theory]
    [InlineData(1, "0.999")]
    [InlineData(0.9, "0.999")]
    [InlineData(0.8, "0.992")]
    [InlineData(0.7, "0.01554")]
    public void Two_lifts_exchanged_are_told_by_the_sisters(double size, string said) => Weighing.Says(said, Exchanged(new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, Sisters = Swept(3) }, size), "lifts-swapped");

    /// <summary>Probe over the true speed.</summary>
    [Theory]
    [InlineData(1, "0.0007865 B")]
    [InlineData(1.05, "0.1522 B")]
    [InlineData(1.08, "0.9198 B")]
    [InlineData(0.93, "0.5165 B")]
    public void A_probe_that_reads_high_closes_no_ring(double size, string said) => Weighing.Says(said, new MadePort(41) { ProbeError = size, Places = [] }, "closure-fails");

    /// <summary>Width of B as written down over the true one.</summary>
    [Theory]
    [InlineData(1.05, "0.1149 B")]
    [InlineData(1.07, "0.7558 B")]
    [InlineData(1.09, "0.9916 B")]
    public void A_section_too_wide_closes_its_ring_not(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(41) { Places = [] }, size), "closure-fails", "B");

    /// <summary>The same beside three sisters read at the same stations: area and ring are both held against theirs.</summary>
    [Theory]
    [InlineData(1, "0.007288 B")]
    [InlineData(1.03, "0.207 B")]
    [InlineData(1.05, "0.858 B")]
    [InlineData(1.07, "0.9685 B")]
    public void A_section_too_wide_is_told_by_the_sisters(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(41) { Places = [], RingsAt = ["B"], Sisters = Ringed(3) }, size), "closure-fails", "B");

    /// <summary>The same beside one sister, of whom nobody knows whether it is hers: then what is usual says it.</summary>
    [Theory]
    [InlineData(1.05, "0.1756 B")]
    [InlineData(1.09, "0.6137 B")]
    public void A_section_too_wide_beside_one_sister_is_told_later(double size, string said) => Weighing.Says(said, Reshaped(new MadePort(41) { Places = [], RingsAt = ["B"], Sisters = Ringed(1) }, size), "closure-fails", "B");

    /// <summary>Probe over the true speed, in the sisters as well: it is the probe's, and every ring says so.</summary>
    [Theory]
    [InlineData(1.03, "0.01699 B")]
    [InlineData(1.05, "0.172 B")]
    [InlineData(1.07, "0.8658 B")]
    public void A_probe_that_reads_high_in_all_sisters_is_told_by_all(double size, string said) => Weighing.Says(said, new MadePort(41) { ProbeError = size, Places = [], RingsAt = ["B"], Sisters = Ringed(3, size) }, "closure-fails");

    /// <summary>A section that is truly narrower closes its ring, however few sisters share it.</summary>
    [Theory]
    [InlineData(0.9, "0.01369 B")]
    public void A_section_that_is_truly_narrow_closes_its_ring(double size, string said)
    {
        var made = new MadePort(41) { Places = [], RingsAt = ["B"], Sisters = Ringed(3) };
        var at = made.Stations.FindIndex(s => s.Letter == "B");
        made.Stations[at] = made.Stations[at] with { Width = made.Stations[at].Width * size };
        Weighing.Says(said, made, "closure-fails", "B");
    }

    /// <summary>Share by which one of two readings of a lift is off, three sisters showing where the lift lies: the other reading lies there.</summary>
    [Theory]
    [InlineData(0.02, "nothing")]
    [InlineData(0.04, "0.1686")]
    [InlineData(0.08, "0.7273")]
    public void Of_two_readings_the_sisters_say_which_is_the_slip(double size, string said) => Weighing.Says(said, Slipped(2, size, Swept(3)), "reading-out-of-line");

    /// <summary>Share by which the highest lift of one of two sweeps is off: the other sweep lies in line.</summary>
    [Theory]
    [InlineData(0.02, "nothing")]
    [InlineData(0.05, "0.3666")]
    [InlineData(0.10, "0.7215")]
    public void Of_two_sweeps_one_says_where_the_other_slipped(double size, string said) => Weighing.Says(said, SweptAgain(1, size), "reading-out-of-line");

    /// <summary>The same of one of three sweeps.</summary>
    [Theory]
    [InlineData(0.02, "0.02255")]
    [InlineData(0.05, "0.387")]
    public void Of_three_sweeps_two_say_where_the_third_slipped(double size, string said) => Weighing.Says(said, SweptAgain(2, size), "reading-out-of-line");

    /// <summary>Burette over the true volume.</summary>
    [Theory]
    [InlineData(1, "0.0002409")]
    [InlineData(1.025, "0.148")]
    [InlineData(1.03, "0.4641")]
    [InlineData(0.97, "0.2771")]
    public void A_burette_off_the_sections_disagrees(double size, string said) => Weighing.Says(said, new MadePort(1) { RingsAt = [], Places = [], VolumeFactor = size }, "volume-disagrees");

    /// <summary>What the plate really passes, m2; its certificate says .001.</summary>
    [Theory]
    [InlineData(0.001, "9.906E-05")]
    [InlineData(0.001007, "0.03341")]
    [InlineData(0.00101, "0.4832")]
    [InlineData(0.001012, "0.9124")]
    public void A_plate_off_its_certificate_is_a_bench_not_fit(double size, string said) => Weighing.Says(said, new MadePort(2) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Check = b => new MorningCheck(b.BenchId, b.Today, b.Air(), b.ReadPlate("", 0), [b.ReadPlate("number one", size)]) }, "bench-not-fit");

    /// <summary>The same on a scale that shows nothing of a leak of some percent: it may be a leak that came as well as a meter that moved, and either is as bad.</summary>
    [Theory]
    [InlineData(0.001, "0.0001928")]
    [InlineData(0.001007, "0.08696")]
    [InlineData(0.00101, "0.7097")]
    [InlineData(0.001012, "0.9609")]
    public void A_plate_on_a_range_too_coarse_for_the_leak_may_be_off_by_a_leak_too(double size, string said) => Weighing.Says(said, new MadePort(2) { RingsAt = [], Places = [], Check = b => new MorningCheck(b.BenchId, b.Today, b.Air(), b.ReadPlate("", 0), [b.ReadPlate("number one", size)]) }, "bench-not-fit");

    /// <summary>Sisters swept alike, the middle lift three percent off: one does not say which of the two is off, two do.</summary>
    [Theory]
    [InlineData(1, "0.6702")]
    [InlineData(2, "0.459")]
    public void One_sister_does_not_say_which_of_two_is_out_of_line(double size, string said) => Weighing.Says(said, new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, FlowFactor = l => Math.Abs(l - 0.0075) < 1e-6 ? 1.06 : 1, Sisters = Swept((int)size) }, "reading-out-of-line");

    private static IReadOnlyList<MadePort> Swept(int sisters) => [.. Enumerable.Range(0, sisters).Select(i => new MadePort(61 + i)
    {
        RingsAt = [], Places = [], ExhaustShare = null, FlowFactor = _ => 1 + 0.004 * (i - 1),
    })];

    /// <summary>Sisters with a ring at B.</summary>
    private static IReadOnlyList<MadePort> Ringed(int sisters, double probe = 1) => [.. Enumerable.Range(0, sisters).Select(i => new MadePort(61 + i)
    {
        RingsAt = ["B"], Places = [], ExhaustShare = null, ProbeError = probe,
    })];

    /// <summary>A port swept so many times more, the first sweep's highest lift off by a share.</summary>
    private static MadePort SweptAgain(int times, double share)
    {
        var made = new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = 1, FlowFactor = l => l > 0.012 ? 1 + share : 1 };
        made.Also = (bench, cut) =>
        {
            made.FlowFactor = _ => 1;
            for (var i = 0; i < times; i++) made.SweepAgain(bench, cut);
        };
        return made;
    }

    /// <summary>The third and the fourth lift, each moved towards the other's flow.</summary>
    private static MadePort Exchanged(MadePort made, double share)
    {
        double low = made.EffectiveArea(0.0075), high = made.EffectiveArea(0.010);
        made.FlowFactor = l => Math.Abs(l - 0.0075) < 1e-6 ? Math.Pow(high / low, share) : Math.Abs(l - 0.010) < 1e-6 ? Math.Pow(low / high, share) : 1;
        return made;
    }

    /// <summary>A port read so often at each lift, the last reading of the middle one off by a share.</summary>
    private static MadePort Slipped(int repeats, double share, IReadOnlyList<MadePort>? sisters = null)
    {
        var made = new MadePort(21) { Range = Ranges.OfEachKind[3], RingsAt = [], Places = [], Repeats = repeats, Sisters = sisters ?? [] };
        made.Also = (bench, cut) =>
        {
            var last = bench.Ledger.All<FlowReading>().Last(r => bench.Ledger.Get<Sweep>(r.Fact.Sweep).Fact.Cut == cut && Math.Abs(r.Fact.Lift.Si(Dimension.Length) - 0.0075) < 1e-6);
            bench.Put(Amend.Correct(last, last.Fact with { Reading = Typed.Of(last.Fact.Reading.Value * (1 + share), last.Fact.Reading.Unit) }, SimulatedBench.Morning, "", "misread"));
        };
        return made;
    }

    /// <summary>Written down wider than it was when its ring was read.</summary>
    private static MadePort Reshaped(MadePort made, double wider)
    {
        made.Also = (bench, cut) =>
        {
            var station = bench.Ledger.All<Station>().First(s => s.Fact.Letter == "B").Id;
            var s = made.Stations.First(x => x.Letter == "B");
            bench.Add(new Section(cut, station, SectionForm.Rectangle, [Typed.Of(s.Width * wider * 1e3, "mm"), Typed.Of(s.Height * 1e3, "mm"), Typed.Of(s.Corner * 1e3, "mm")]));
        };
        return made;
    }
}
