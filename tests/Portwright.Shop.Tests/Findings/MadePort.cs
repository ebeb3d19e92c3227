using Portwright.Geometry;
using Portwright.Physics.Drag;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Valves;
using Portwright.Shop.Cutting;
using Portwright.Shop.Record;
using Portwright.Shop.Sections;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Findings;

/// <summary>
/// A port whose air is known: every observation a porter takes of it is simulated with noise and written into a record. Healthy by itself;
/// a test gives it one fault by changing one member.
/// </summary>
internal sealed class MadePort(int seed)
{
    public const double BallDiameter = 0.625 * 0.0254;
    public const double RingLift = 0.0125;

    private readonly Random _random = new(seed);

    /// <summary>Letter, distance (m), mark, width and height (m), corner radius (m; half the width: an oval).</summary>
    public List<(string Letter, double Distance, string Mark, double Width, double Height, double Corner)> Stations { get; } =
    [
        ("A", 0.000, "flange", 0.0340, 0.0480, 0.010),
        ("B", 0.022, "", 0.0332, 0.0470, 0.010),
        ("C", 0.045, "pinch", 0.0325, 0.0462, 0.010),
        ("D", 0.068, "short side", 0.0345, 0.0470, 0.012),
        ("E", 0.088, "bowl", 0.0452, 0.0452, 0.0226),
        ("F", 0.104, "throat", 0.0440, 0.0440, 0.0220),
    ];

    /// <summary>What a station is said to be; null: not asked, its name decides.</summary>
    public Func<string, StationRole?> Role { get; set; } = _ => null;

    public ValveData Valve { get; set; } = new(0.050, Math.PI / 4, 0.0015, 0.044, 0.008);

    public PortKind Kind { get; set; } = PortKind.Intake;

    public bool Mirrored { get; set; }

    /// <summary>Day of the bench's check; the sweep is of 3 March.</summary>
    public DateOnly CheckedOn { get; set; } = new(2025, 3, 3);

    /// <summary>The check made on that day before the sweep; null: leak and plate, both sound.</summary>
    public Func<SimulatedBench, MorningCheck>? Check { get; set; }

    /// <summary>Effective area over the healthy one at a cut before this one; null: this is the port as received.</summary>
    public Func<double, double>? FlowBefore { get; set; }

    /// <summary>Cuts before this one, each of them flowing so; none without <see cref="FlowBefore"/>.</summary>
    public int CutsBefore { get; set; } = 1;

    public string Material { get; set; } = "aluminium";

    /// <summary>Effective area (m2) of the port without its valve.</summary>
    public double PortArea { get; set; } = 0.00130;

    /// <summary>An engine the healthy port suits: cams, bore and stroke for four cylinders at 6000 rpm.</summary>
    public EnginePlan Plan { get; set; } = new(
        0.086, 0.086, Cylinders: 4, IntakeCam: new CamLift(0.0085, 1.5, 0.00025), ExhaustCam: new CamLift(0.0080, 1.5, 0.0003), HighestSpeed: 6000);

    /// <summary>Effective area of the same cylinder's exhaust over the intake's, each at its cam's lift; null: no exhaust port.</summary>
    public double? ExhaustShare { get; set; } = 0.71;

    /// <summary>
    /// The bench's range. A plate on a tube shows a leak poorly, which leaves some 3 percent in every flow; <c>Ranges.OfEachKind[3]</c>, which shows
    /// flow itself, leaves a tenth of that.
    /// </summary>
    public RangeCard Range { get; set; } = Ranges.OfEachKind[1] with { Resolution = 0.005 };

    /// <summary>Readings at each lift.</summary>
    public int Repeats { get; set; } = 2;

    /// <summary>Scatter of the repeats at a lift over the healthy one.</summary>
    public Func<double, double> Scatter { get; set; } = _ => 1;

    /// <summary>Lifts swept, m.</summary>
    public IReadOnlyList<double> Lifts { get; set; } = [0.0025, 0.005, 0.0075, 0.010, 0.0125];

    /// <summary>Share by which the true effective area at a lift is off the healthy one.</summary>
    public Func<double, double> FlowFactor { get; set; } = _ => 1;

    /// <summary>Air speed over the healthy one at a place of a section: station, x and y over half its width and height.</summary>
    public Func<string, double, double, double> SpeedFactor { get; set; } = (_, _, _) => 1;

    /// <summary>The probe reads this many times the true speed.</summary>
    public double ProbeError { get; set; } = 1;

    /// <summary>Loss of the ball over what attached air at the true speed would cost.</summary>
    public Func<string, double, double> BallFactor { get; set; } = (_, _) => 1;

    public Func<string, double, Steadiness> Flag { get; set; } = (_, _) => Steadiness.Still;

    /// <summary>Thickness, m.</summary>
    public Func<string, double, double> Wall { get; set; } = (_, _) => 0.0254 * 0.200;

    /// <summary>Burette over the true volume.</summary>
    public double VolumeFactor { get; set; } = 1;

    public Func<double, string> Sound { get; set; } = _ => "steady";

    /// <summary>Places of balls and flags: nine, three stations.</summary>
    public IReadOnlyList<(string Letter, double Bearing)> Places { get; set; } =
        [("C", 12), ("C", 6), ("C", 3), ("C", 9), ("D", 12), ("D", 6), ("D", 3), ("D", 9), ("E", 6)];

    public IReadOnlyList<string> RingsAt { get; set; } = ["B", "C", "D"];

    /// <summary>Other ports of the head, each of a cylinder of its own: of them the port's own facts count, not bench, plan or material.</summary>
    public IReadOnlyList<MadePort> Sisters { get; set; } = [];

    /// <summary>Further facts, by the bench and the cut: a second port, a plan, a morning check.</summary>
    public Action<SimulatedBench, Guid>? Also { get; set; }

    public BenchDoubt Doubt { get; set; } = BenchDoubt.Unknown with { RepeatScatter = 0.002, RepeatDegrees = 20, SetUpScatter = 0.003, SetUpDegrees = 15, Drift = 0.001 };

    public PortSurvey Survey()
    {
        var bench = Bench(out var port, out _);
        return PortSurvey.Of(bench.Ledger, port);
    }

    /// <summary>The record with everything in it.</summary>
    public SimulatedBench Bench(out Guid port, out Guid cut)
    {
        var plate = new CheckPlate("number one", 0.00100, 0.00100 * 0.002, "certificate 12, invented");
        var bench = new SimulatedBench(Range, Doubt, [plate]) { LeakArea = 3e-6 };
        bench.Add(new Calibration(bench.BenchId, bench.Range.Name, new DateOnly(2025, 3, 3), [.. Enumerable.Repeat(bench.ReadPlate("number one", 0.001), 3)], bench.Air(), Leak: bench.ReadPlate("", 0)));
        bench.Add(Check?.Invoke(bench) ?? new MorningCheck(bench.BenchId, CheckedOn, bench.Air(), bench.ReadPlate("", 0), [bench.ReadPlate("number one", 0.001)]));
        bench.Put(Entry.About(bench.JobId, bench.JobId, new Job("a job", "", Plan), SimulatedBench.Morning));
        var head = bench.Add(new Head("head made", Material));
        Observe(bench, head, 1, out port, out cut);
        for (var i = 0; i < Sisters.Count; i++)
        {
            Sisters[i].Observe(bench, head, 2 + i, out _, out _);
        }

        Also?.Invoke(bench, cut);
        return bench;
    }

    /// <summary>The same cut swept once more, in a set-up of its own; change <see cref="FlowFactor"/> before.</summary>
    public void SweepAgain(SimulatedBench bench, Guid cut) => Sweep(bench, cut);

    /// <summary>All a porter takes of one port.</summary>
    private void Observe(SimulatedBench bench, Guid head, int number, out Guid port, out Guid cut)
    {
        port = bench.Add(new Port(head, Kind, number, Mirrored, Valve));
        bench.Add(new Centreline(port, 0.110, 65 * Math.PI / 180, 0.060));
        cut = bench.Add(new Cut(port, 0, "as received", new DateOnly(2025, 3, 3)));
        if (FlowBefore is { } before)
        {
            var now = FlowFactor;
            for (var next = 1; next <= CutsBefore; next++)
            {
                FlowFactor = before;
                Sweep(bench, cut);
                FlowFactor = now;
                cut = bench.Add(new Cut(port, next, "roof raised", new DateOnly(2025, 3, 3)));
            }
        }

        Sweep(bench, cut);
        if (Kind == PortKind.Intake && ExhaustShare is { } share)
        {
            Exhaust(bench, head, share);
        }

        var stations = new Dictionary<string, Guid>();
        foreach (var s in Stations)
        {
            stations[s.Letter] = bench.Add(new Station(port, s.Letter, s.Distance, s.Mark, Role(s.Letter)));
            bench.Add(new Section(cut, stations[s.Letter], SectionForm.Rectangle, [Mm(s.Width), Mm(s.Height), Mm(s.Corner)]));
        }

        foreach (var letter in RingsAt)
        {
            Ring(bench, cut, stations[letter], letter);
        }

        Balls(bench, cut, stations);
        foreach (var (letter, bearing) in Places)
        {
            bench.Add(new FlagReading(cut, stations[letter], bearing, Typed.Of(RingLift, "m"), Typed.Of(28, "inH2O"), Flag(letter, bearing)));
        }

        foreach (var s in Stations)
        {
            foreach (var bearing in (double[])[12, 3, 6, 9])
            {
                bench.Add(new WallPoint(cut, stations[s.Letter], bearing, Mm(Wall(s.Letter, bearing)), Behind.Water, "sound"));
            }
        }

        bench.Add(new VolumeReading(cut, Typed.Of(1e6 * VolumeFactor * TrueVolume() + 0.3 * Normal(), "cc")));
    }

    /// <summary>m2.</summary>
    public double EffectiveArea(double lift)
    {
        var window = 0.92 * ValveWindow.At(Valve.Seat(), lift).Area;
        return FlowFactor(lift) / Math.Sqrt(1 / (window * window) + 1 / (PortArea * PortArea));
    }

    public Outline OutlineOf(string letter)
    {
        var s = Stations.First(x => x.Letter == letter);
        var shape = SectionShape.Of(new Section(Guid.Empty, Guid.Empty, SectionForm.Rectangle, [Mm(s.Width), Mm(s.Height), Mm(s.Corner)]), out _)!.Outline();
        return shape.Moved(-shape.Centroid.X, -shape.Centroid.Y);
    }

    /// <summary>The next cut of the port, swept in a set-up of its own; change <see cref="FlowFactor"/> before.</summary>
    public Guid NextCut(SimulatedBench bench, Guid port, int number)
    {
        bench.NextDay();
        var cut = bench.Add(new Cut(port, number, "cut", new DateOnly(2025, 3, 3).AddDays(number)));
        Sweep(bench, cut);
        return cut;
    }

    private void Exhaust(SimulatedBench bench, Guid head, double share)
    {
        var port = bench.Add(new Port(head, PortKind.Exhaust, 1, false, new ValveData(0.040, Math.PI / 4, 0.0018, 0.035, 0.008)));
        var cut = bench.Add(new Cut(port, 0, "as received", new DateOnly(2025, 3, 3)));
        var sweep = bench.Sweep(cut, FlowDirection.Blow);
        bench.ReadLeak(sweep);
        var (cam, intake) = (Plan.ExhaustCam?.NetLift() ?? 0.0117, EffectiveArea(Plan.IntakeCam?.NetLift() ?? 0.0125));
        foreach (var lift in (double[])[0.2 * cam, 0.4 * cam, 0.6 * cam, 0.8 * cam, cam])
        {
            bench.Read(sweep, lift, share * intake * Math.Sin(Math.PI / 2 * lift / cam), r => r * (1 + 2 * 0.002 * Normal()));
        }
    }

    private void Sweep(SimulatedBench bench, Guid cut)
    {
        var sweep = bench.Sweep(cut, Direction);
        bench.ReadLeak(sweep);
        foreach (var lift in Lifts)
        {
            for (var repeat = 0; repeat < Repeats; repeat++)
            {
                var reading = bench.Read(sweep, lift, EffectiveArea(lift), r => r * (1 + 2 * 0.002 * Scatter(lift) * Normal()));
                if (Sound(lift) is { Length: > 0 } sound)
                {
                    var kept = bench.Ledger.Get<FlowReading>(reading);
                    bench.Put(Amend.Correct(kept, kept.Fact with { Sound = sound }, SimulatedBench.Morning, "", "heard"));
                }
            }
        }
    }

    private FlowDirection Direction => Kind == PortKind.Intake ? FlowDirection.Draw : FlowDirection.Blow;

    private BenchSetting Setting(SimulatedBench bench) =>
        new(bench.BenchId, Direction, Typed.Of(RingLift, "m"), Typed.Of(28, "inH2O"), bench.Range.Name);

    private void Ring(SimulatedBench bench, Guid cut, Guid station, string letter)
    {
        var outline = OutlineOf(letter);
        var area = EffectiveArea(RingLift);
        var ring = bench.Add(new Ring(cut, station, Setting(bench), bench.Shows(area, Direction), 1, bench.Air()));
        var speed = Field(letter, outline);
        var mean = Stream(bench, outline, area).Speed;
        // Where a ball helps the flow the air is off the wall, and a probe finds it slow.
        double Off(double? bearing) => bearing is { } hours && BallFactor(letter, hours) < 0 ? 0.55 : 1;
        void Read(double? bearing, double? depth, PlanePoint at) => bench.Add(new ProbeReading(
            ring, bearing, depth is { } d ? Mm(d) : null, Typed.Of(mean * speed(at) * Off(bearing) * ProbeError * (1 + 0.01 * Normal()), "m/s")));
        Read(null, null, outline.Centroid);
        foreach (var bearing in (double[])[12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5])
        {
            Read(bearing, 0.006, outline.PointAt(bearing, 0.006));
        }
    }

    private void Balls(SimulatedBench bench, Guid cut, Dictionary<string, Guid> stations)
    {
        var area = EffectiveArea(RingLift);
        var check = bench.Add(new BallCheck(cut, Setting(bench), Mm(BallDiameter), bench.Air()));
        Typed Shows(double effective) => bench.Shows(effective * (1 + 0.001 * Normal()), Direction);
        bench.Add(new BallReading(check, null, null, Shows(area)));
        foreach (var (letter, bearing) in Places)
        {
            var outline = OutlineOf(letter);
            var stream = Stream(bench, outline, area);
            var point = outline.PointAt(bearing, BallDiameter / 2);
            var work = BallLoss.Work(
                BallDiameter, stream.Speed * Field(letter, outline)(point), outline.Area, stream.Density, bench.Room.DynamicViscosity,
                stream.Speed * outline.Area, 28 * UnitFactors.InchOfWater);
            bench.Add(new BallReading(check, stations[letter], bearing, Shows(area * (1 - work.Fall * BallFactor(letter, bearing)))));
            bench.Add(new BallReading(check, stations[letter], bearing, Shows(area * (1 - work.Fall * BallFactor(letter, bearing)))));
        }

        bench.Add(new BallReading(check, null, null, Shows(area)));
    }

    private static SectionStream Stream(SimulatedBench bench, Outline outline, double effectiveArea)
    {
        var conditions = new TestConditions(bench.Room, 28 * UnitFactors.InchOfWater, FlowDirection.Draw);
        return SectionStream.Of(
            effectiveArea * Nozzle.MassFlux(conditions.TestPieceUpstream, conditions.TestPieceDownstreamPressure), outline.Area, bench.Room)!.Value;
    }

    /// <summary>Speed over the section's mean at a place: a seventh-power wall and what the fault does, carrying the same flow.</summary>
    private Func<PlanePoint, double> Field(string letter, Outline outline)
    {
        var bounds = outline.Bounds;
        var deepest = Math.Min(bounds.Width, bounds.Height) / 2;
        double Raw(PlanePoint p) => Math.Pow(Math.Min(1, outline.DistanceToWall(p) / deepest), 1 / 7.0)
            * SpeedFactor(letter, 2 * p.X / bounds.Width, 2 * p.Y / bounds.Height);
        var (sum, count) = (0.0, 0);
        const int steps = 40;
        for (var i = 0; i < steps; i++)
        {
            for (var j = 0; j < steps; j++)
            {
                var p = new PlanePoint(bounds.Left + (i + 0.5) / steps * bounds.Width, bounds.Bottom + (j + 0.5) / steps * bounds.Height);
                if (outline.Contains(p))
                {
                    sum += Raw(p);
                    count++;
                }
            }
        }

        return p => Raw(p) * count / sum;
    }

    private double TrueVolume()
    {
        var stations = Stations.Select(s => (s.Distance, OutlineOf(s.Letter).Area)).Append((Distance: 0.110, OutlineOf(Stations[^1].Letter).Area)).ToList();
        return stations.Zip(stations.Skip(1), (a, b) => (b.Distance - a.Distance) * (a.Area + b.Area + Math.Sqrt(a.Area * b.Area)) / 3).Sum();
    }

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    private static Typed Mm(double metres) => Typed.Of(Math.Round(metres * 1e3, 3), "mm");
}
