using CsCheck;
using Portwright.Engine.Runs;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Ports;

/// <summary>Odd records that may all the same be typed: no flow at a lift, one reading, the same lift again, a leak of nothing, no valve. Whatever is said of them is a number or is not said.</summary>
public sealed class OddRecords
{
    /// <param name="Range">Which kind of meter.</param>
    /// <param name="Flows">Effective area over 0.001 m2 at each lift, cut by cut.</param>
    /// <param name="Lifts">mm.</param>
    /// <param name="Leak">Null: not read.</param>
    /// <param name="Sections">Width and height of each section, mm.</param>
    /// <param name="Probe">Air speeds of a ring in the first section, m/s.</param>
    /// <param name="Balls">Readings with a ball there, in percent of the port's own.</param>
    private sealed record Odd(int Range, bool Blow, bool Exhaust, double[] Lifts, double[][] Flows, double? Leak, int Valve, int Plan, bool NoDoubt, int Repeats, int[] Sections, int[] Probe, int[] Balls);

    private static readonly Gen<Odd> Any = Gen.Select(
        Gen.Int[0, Ranges.OfEachKind.Count - 1],
        Gen.Bool,
        Gen.Bool,
        One(0.0, 0.0001, 2.5, 2.5, 5, 7.5, 10, 12.5, 76).Array[1, 6],
        Gen.OneOf(Gen.Const(0.0), One(1e-9, 0.4, 0.4, 0.8, 0.8), Gen.Double[0.001, 1.2]).Array[6].Array[1, 3],
        Gen.OneOf(Gen.Const((double?)null), Gen.Const((double?)0), Gen.Const((double?)0.003), Gen.Const((double?)0.5)),
        Gen.Int[0, 6],
        Gen.Int[0, 3],
        Gen.Select(Gen.Bool, Gen.Int[1, 3], Of(1, 20, 40, 40).Array[0, 3], Of(0, 0, 50, 90, 500).Array[0, 6], Of(0, 99, 100, 100, 101).Array[0, 5]),
        (range, blow, exhaust, lifts, flows, leak, valve, plan, rest) =>
            new Odd(range, blow, exhaust, lifts, flows, leak, valve, plan, rest.Item1, rest.Item2, rest.Item3, rest.Item4, rest.Item5));

    private static readonly string[] NoNumber = ["NaN", "∞", "Infinity"];

    private static Gen<int> Of(params int[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static Gen<double> One(params double[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    [Fact]
    public void Nothing_that_is_no_number_is_ever_said_of_a_port() => Any.Sample(
        odd =>
        {
            var said = Document(odd);
            foreach (var units in new[] { UnitSystem.UsCustomary, UnitSystem.Si })
            {
                var text = said.Sentences.Select(s => s.In(units)).FirstOrDefault(t => NoNumber.Any(n => t.Contains(n, StringComparison.Ordinal)));
                Assert.True(text is null, $"Said: {text}");
            }

            var none = said.Sentences.FirstOrDefault(s => s.Quantities.Any(q => !double.IsFinite(q.Si) || double.IsNaN(q.Expanded)));
            Assert.True(none is null, $"No quantity: {none}");
        },
        iter: 300,
        threads: 1,
        print: o => $"{o} lifts {string.Join(' ', o.Lifts)} flows {string.Join(" | ", o.Flows.Select(f => string.Join(' ', f)))} sections {string.Join(' ', o.Sections)} probe {string.Join(' ', o.Probe)} balls {string.Join(' ', o.Balls)}");

    private static Document Document(Odd odd)
    {
        var doubt = odd.NoDoubt
            ? new BenchDoubt(0, null, 0, null, 0, 0, 0, 0, 0, 0, 0, 0)
            : BenchDoubt.Unknown;
        var range = Ranges.OfEachKind[odd.Range];
        var bench = new SimulatedBench(odd.NoDoubt ? range with { Resolution = 0, Accuracy = 0 } : range, doubt) { LeakArea = (odd.Leak ?? 0) * 0.001 };
        EnginePlan plan = odd.Plan switch
        {
            0 => new EnginePlan(),
            1 => new EnginePlan(Cylinders: 4, IntakeCam: new CamLift(0.0085, 1.5, 0.0002), ExhaustCam: new CamLift(0.0085, 1.5, 0.0002)),
            2 => new EnginePlan(0.086, 0.086, Cylinders: 4, IntakeCam: new CamLift(0.0001), ExhaustCam: new CamLift(0.00001), HighestSpeed: 6000),
            _ => new EnginePlan(0.086, 0.086, Cylinders: 1, IntakeCam: new CamLift(0.01, 1.5), ExhaustCam: new CamLift(0.01, 1.5), HighestSpeed: 9000, LowestSpeed: 9000),
        };
        bench.Put(Amend.Correct(bench.Ledger.Get<Job>(bench.JobId), new Job("odd", "", plan), SimulatedBench.Morning, ""));
        ValveData? valve = odd.Valve switch
        {
            0 => null,
            1 => new(0.050, Math.PI / 4, 0.0015, 0.044, 0.008),
            2 => new(0.050, Math.PI / 4, 0, 0.044, 0),
            3 => new(0.050, 0.5, 0.0249, 0.0499, 0.0498),
            // What no valve can be, from a record of before it was asked about.
            4 => new(0.040, Math.PI / 4, 0.0015, 0.044, 0.008),
            5 => new(0.050, 1.5, 0.0015, 0.044, 0.045),
            _ => new(0.050, 0, 0.0015, 0.044, 0.008),
        };
        var port = bench.Ledger.Get<Port>(bench.PortId);
        bench.Put(Amend.Correct(port, port.Fact with { Kind = odd.Exhaust ? PortKind.Exhaust : PortKind.Intake, Valve = valve }, SimulatedBench.Morning, ""));
        for (var cut = 0; cut < odd.Flows.Length; cut++)
        {
            var sweep = bench.Sweep(bench.Cut(cut), odd.Blow ? FlowDirection.Blow : FlowDirection.Draw);
            if (odd.Leak is not null) bench.ReadLeak(sweep);
            for (var i = 0; i < odd.Lifts.Length; i++)
            {
                for (var repeat = 0; repeat < odd.Repeats; repeat++)
                {
                    bench.Add(new FlowReading(sweep, Typed.Of(odd.Lifts[i], "mm"), Shown(bench, odd.Flows[cut][i] * 0.001, odd.Blow)));
                }
            }
        }

        if (odd.Repeats > 1)
        {
            // The other port of the cylinder, with the first cut's flows the other way round.
            var mate = bench.Add(new Port(bench.HeadId, odd.Exhaust ? PortKind.Intake : PortKind.Exhaust, 1, false, valve));
            var sweep = bench.Sweep(bench.Add(new Cut(mate, 0, "", new DateOnly(2025, 3, 3))), odd.Blow ? FlowDirection.Blow : FlowDirection.Draw);
            for (var i = 0; i < odd.Lifts.Length; i++) bench.Add(new FlowReading(sweep, Typed.Of(odd.Lifts[i], "mm"), Shown(bench, odd.Flows[0][5 - i] * 0.001, odd.Blow)));
        }

        Observed(bench, odd);
        return PortDocument.Of(PortAtCut.Of(new Reductions(bench.Ledger), bench.PortId, null, new NothingKept()));
    }

    /// <summary>What was held into the port at its last cut, and measured of it.</summary>
    private static void Observed(SimulatedBench bench, Odd odd)
    {
        var cut = bench.Ledger.CutsOf(bench.PortId)[^1].Id;
        var area = odd.Flows[^1][0] * 0.001;
        var setting = new BenchSetting(bench.BenchId, odd.Blow ? FlowDirection.Blow : FlowDirection.Draw, Typed.Of(odd.Lifts[0], "mm"), Typed.Of(28, "inH2O"), bench.Range.Name);
        Guid? first = null;
        foreach (var (side, i) in odd.Sections.Select((side, i) => (side, i)))
        {
            var station = bench.Add(new Station(bench.PortId, $"{(char)('A' + i)}", 0.03 * i, i == 0 ? "pinch" : ""));
            bench.Add(new Section(cut, station, SectionForm.Rectangle, [Typed.Of(side, "mm"), Typed.Of(side, "mm"), Typed.Of(side / 4.0, "mm")],
                InAir: i % 2 == 0 ? null : [new MetalInAir(MetalInAirKind.Stem, SectionForm.Oval, [Typed.Of(side / 4.0, "mm")])]));
            bench.Add(new WallPoint(cut, station, 12, Typed.Of(0.001 * side, "mm"), Behind.Water));
            first ??= station;
        }

        if (first is not { } at) return;
        var ring = bench.Add(new Ring(cut, at, setting, odd.Probe.Length % 2 == 0 ? null : Shown(bench, area, odd.Blow)));
        foreach (var (speed, i) in odd.Probe.Select((speed, i) => (speed, i)))
        {
            bench.Add(new ProbeReading(ring, i == 0 ? null : 12.0 / odd.Probe.Length * i, i == 0 ? null : Typed.Of(5, "mm"), Typed.Of(speed, "m/s")));
        }

        var check = bench.Add(new BallCheck(cut, setting, Typed.Of(10, "mm")));
        foreach (var (percent, i) in odd.Balls.Select((percent, i) => (percent, i)))
        {
            bench.Add(new BallReading(check, i % 2 == 0 ? null : at, i % 2 == 0 ? null : 6, Shown(bench, area * percent / 100, odd.Blow)));
        }

        bench.Add(new VolumeReading(cut, Typed.Of(odd.Sections[0], "cc")));
    }

    private static Typed Shown(SimulatedBench bench, double area, bool blow)
    {
        try
        {
            return bench.Shows(area, blow ? FlowDirection.Blow : FlowDirection.Draw);
        }
        catch (ArgumentOutOfRangeException)
        {
            // More than this meter can pass: typed all the same.
            return Typed.Of(99, bench.Range.Unit);
        }
    }

    private sealed class NothingKept : IKeptPoints
    {
        public OperatingPoint? Find(string key) => null;

        public void Keep(string key, OperatingPoint point)
        {
        }
    }
}
