using Portwright.Physics.TestPiece;
using Portwright.Physics.Valves;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Sheets;

/// <summary>What cannot be, or is done against custom, is said once where it arises.</summary>
public sealed class WhatCannotBe
{
    private const double Lift = 0.005;

    [Theory]
    [InlineData(1.42, true)]
    [InlineData(0.98, false)]
    public void More_through_the_window_than_a_nozzle_of_its_size_passes_is_said(double share, bool said)
    {
        var bench = Windowed(share);
        Assert.Equal(said ? 1 : 0, Said(bench, "that cannot be").Count);
        if (said)
        {
            var words = Said(bench, "that cannot be")[0];
            Assert.Contains("At lift .197 the port passes 1.42", words, StringComparison.Ordinal);
            Assert.Contains("valve 1.969 in", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Over_one_within_its_doubt_it_is_not_said()
    {
        var bench = Windowed(1);
        var expanded = PortSheet.Of(bench.Ledger, bench.PortId).Windows[0].OfWindow.Expanded();
        Assert.InRange(expanded, 0.005, 0.1);
        Assert.Empty(Said(Windowed(1 + 0.9 * expanded), "that cannot be"));
        Assert.Single(Said(Windowed(1 + 1.2 * expanded), "that cannot be"));
    }

    [Theory]
    [InlineData(PortKind.Exhaust, FlowDirection.Draw, "This exhaust was drawn")]
    [InlineData(PortKind.Intake, FlowDirection.Blow, "This intake was blown")]
    [InlineData(PortKind.Intake, FlowDirection.Draw, null)]
    [InlineData(PortKind.Exhaust, FlowDirection.Blow, null)]
    public void Air_sent_against_the_engines_way_is_said(PortKind kind, FlowDirection direction, string? words)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var port = bench.Ledger.Get<Port>(bench.PortId);
        bench.Put(Amend.Correct(port, port.Fact with { Kind = kind }, SimulatedBench.Morning, ""));
        bench.Read(bench.Sweep(bench.Cut(0), direction), Lift, 0.0004);
        Assert.Equal(words is null ? 0 : 1, Said(bench, "the two ways differ by several percent").Count);
        if (words is not null)
        {
            Assert.StartsWith(words, Said(bench, "the two ways differ")[0], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_reading_under_the_leak_is_said_once_with_its_lift()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[3]) { LeakArea = 0.00002 };
        var sweep = bench.Sweep(bench.Cut(0));
        bench.ReadLeak(sweep);
        bench.Read(sweep, 0.010, 0.0008);
        Assert.Empty(Said(bench, "no air goes backwards"));
        bench.Add(new FlowReading(sweep, Typed.Of(0.1, "in"), new Typed(0.9, "%", "0.9")));
        Assert.StartsWith("The reading 0.9 % at lift 0.1 in is under what leaks", Assert.Single(Said(bench, "no air goes backwards")), StringComparison.Ordinal);
    }

    [Fact]
    public void With_the_valve_shut_a_reading_may_scatter_about_the_leak()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[3]) { LeakArea = 0.00002 };
        var sweep = bench.Sweep(bench.Cut(0));
        bench.ReadLeak(sweep);
        var leak = bench.Shows(0, FlowDirection.Draw).Value;
        bench.Add(new FlowReading(sweep, Typed.Of(0, "in"), Typed.Of(leak * 0.99, "%")));
        Assert.Empty(Said(bench, "no air goes backwards"));
        bench.Add(new FlowReading(sweep, Typed.Of(0, "in"), Typed.Of(leak * 0.3, "%")));
        Assert.Single(Said(bench, "no air goes backwards"));
    }

    [Fact]
    public void A_test_pressure_that_chokes_the_port_is_refused_where_it_is_typed_and_counts_nowhere()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var cut = bench.Cut(0);
        string? Refuses(Fact fact) => Trial.Refuses(bench.Ledger, Entry.About(Guid.NewGuid(), bench.JobId, fact, SimulatedBench.Morning));
        Sweep Of(double pressure, string unit, FlowDirection direction = FlowDirection.Draw) => new(cut, bench.BenchId, direction, bench.Range.Name, new Typed(pressure, unit, $"{pressure}"), []);
        Assert.Null(Refuses(Of(28, "inH2O")));
        Assert.StartsWith("The test pressure 28 psi would choke the port", Refuses(Of(28, "psi")), StringComparison.Ordinal);
        // Drawn, 47.2 percent of 101.325 kPa; blown, the port stands 89.3 percent over it.
        Assert.Null(Refuses(Of(47.7, "kPa")));
        Assert.NotNull(Refuses(Of(47.9, "kPa")));
        Assert.Null(Refuses(Of(90.3, "kPa", FlowDirection.Blow)));
        Assert.NotNull(Refuses(Of(90.6, "kPa", FlowDirection.Blow)));

        // In a record that has it already the reading does not count, and the sheet says why.
        var sweep = bench.Add(Of(28, "psi"));
        bench.Add(new FlowReading(sweep, Typed.Of(Lift, "m"), Typed.Of(9, "inH2O")));
        var reduced = SweepReduction.Reduce(bench.Ledger, bench.Ledger.Get<Sweep>(sweep));
        Assert.Empty(reduced.Curve.Points);
        Assert.Contains("would choke the port", Assert.Single(reduced.Refused).Why, StringComparison.Ordinal);
        Assert.Contains("look at its unit", Refuses(new FlowReading(bench.Sweep(cut), Typed.Of(Lift, "m"), Typed.Of(9, "inH2O"), "", Typed.Of(28, "psi"))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_probe_faster_than_sound_is_refused_and_a_section_too_small_for_its_flow_is_said()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var cut = bench.Cut(0);
        bench.Read(bench.Sweep(cut), Lift, 0.0008);
        var station = bench.Add(new Station(bench.PortId, "C", 0.05, "pinch"));
        bench.Add(new Section(cut, station, SectionForm.Rectangle, [Typed.Of(30, "mm"), Typed.Of(40, "mm"), Typed.Of(5, "mm")]));
        var ring = bench.Add(new Ring(cut, station, new BenchSetting(bench.BenchId, FlowDirection.Draw, Typed.Of(Lift, "m"), Typed.Of(28, "inH2O"), bench.Range.Name)));
        string? Refuses(Typed reading) => Trial.Refuses(bench.Ledger, Entry.About(Guid.NewGuid(), bench.JobId, new ProbeReading(ring, null, null, reading), SimulatedBench.Morning));
        Assert.Null(Refuses(Typed.Of(12, "inH2O")));
        Assert.Null(Refuses(Typed.Of(340, "m/s")));
        foreach (var fast in new[] { Typed.Of(12, "psi"), Typed.Of(346, "m/s"), Typed.Of(300, "kPa") })
        {
            Assert.StartsWith($"{fast.WithUnit} at the probe is no speed below that of sound", Refuses(fast), StringComparison.Ordinal);
        }

        IEnumerable<string> Remarks() => PortSurvey.Of(bench.Ledger, bench.PortId).Remarks.Select(r => r.Us());
        Assert.DoesNotContain(Remarks(), r => r.Contains("speed of sound", StringComparison.Ordinal));
        bench.Add(new Section(cut, station, SectionForm.Rectangle, [Typed.Of(18, "mm"), Typed.Of(20, "mm"), Typed.Of(2, "mm")]));
        Assert.StartsWith("Section C, 0.55", Assert.Single(Remarks(), r => r.Contains("below the speed of sound", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void An_engine_that_would_draw_faster_than_sound_is_said_and_no_such_speed_is_printed()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var cut = bench.Cut(0);
        var station = bench.Add(new Station(bench.PortId, "C", 0.05, "pinch"));
        bench.Add(new Section(cut, station, SectionForm.Rectangle, [Typed.Of(30, "mm"), Typed.Of(40, "mm"), Typed.Of(5, "mm")]));
        PortSurvey At(double rpm)
        {
            bench.Put(Amend.Correct(bench.Ledger.Get<Job>(bench.JobId), new Job("a job", "", new EnginePlan(0.1, 0.09, Cylinders: 4, HighestSpeed: rpm)), SimulatedBench.Morning, ""));
            return PortSurvey.Of(bench.Ledger, bench.PortId);
        }

        // 0.1 m bore, 0.09 m stroke over 11.79 cm2: 20 m/s for each thousand turns a minute.
        var quick = At(16_500);
        Assert.InRange(quick.DemandSpeedIn(quick.Sections.Single())!.Value, 320, 343);
        Assert.DoesNotContain(quick.Remarks, r => r.Us().Contains("faster than sound", StringComparison.Ordinal));
        var past = At(17_500);
        Assert.Null(past.DemandSpeedIn(past.Sections.Single()));
        Assert.Single(past.Remarks, r => r.Us().StartsWith("The plan's engine would draw air through section C", StringComparison.Ordinal));
    }

    /// <summary>A bench that reads so much of the valve window at one lift.</summary>
    private static SimulatedBench Windowed(double share)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[3], BenchDoubt.Unknown with { SetUpScatter = 0.001, Calliper = 0.00001 });
        var window = ValveWindow.At(bench.Ledger.Get<Port>(bench.PortId).Fact.Valve!.Seat(), Lift).Area;
        bench.Read(bench.Sweep(bench.Cut(0)), Lift, share * window);
        return bench;
    }

    private static List<string> Said(SimulatedBench bench, string words) =>
        [.. PortSheet.Of(bench.Ledger, bench.PortId).Remarks.Select(r => r.Us()).Where(r => r.Contains(words, StringComparison.Ordinal))];
}
