using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Store;
using Portwright.Web.Upkeep;

namespace Portwright.Web.Tests;

/// <summary>An invented shop with one job, written straight into a record.</summary>
public sealed record Seed(Guid Bench, Guid Job, Guid Head, Guid Intake, Guid Cut0, Guid Sweep)
{
    public static DateTimeOffset Now => DateTimeOffset.Now;

    /// <summary>A job with one head of two cylinders, and a sweep of intake 1 waiting to be read.</summary>
    public static Seed Put(string data, int lifts = 12, bool asked = true, double step = 0.05, double? elevation = null)
    {
        using var journal = Journal.Open(data);
        var bench = Entry.About(Guid.CreateVersion7(), null, Card() with { Elevation = elevation }, Now);
        var job = Guid.CreateVersion7();
        var plan = new EnginePlan(Bore: 0.1016, Stroke: 0.0889, Cylinders: 8, IntakeCam: new CamLift(0.32 * 0.0254, 1.6), ExhaustCam: new CamLift(0.31 * 0.0254, 1.6));
        var head = NewHead.Entries(job, "head A", 2, "aluminium", 0, Now, "t");
        journal.Append([bench, Entry.About(job, job, new Job("Tamarack eight", "", plan), Now), .. head]);
        var port = head.First(e => e.Fact is Port { Kind: PortKind.Intake, Cylinder: 1 });
        var cut = head.First(e => e.Fact is Cut c && c.Port == port.Subject);
        var valve = new ValveData(0.0515, Math.PI / 4, 0.0015, 0.046, 0.008);
        journal.Append(Entry.About(port.Subject, job, (Port)port.Fact with { Valve = valve }, Now));
        var sweep = NewSweep(journal, job, bench.Subject, cut.Subject, lifts, asked, step);
        return new Seed(bench.Subject, job, head[0].Subject, port.Subject, cut.Subject, sweep);
    }

    public static Guid NewSweep(Journal journal, Guid job, Guid bench, Guid cut, int lifts, bool asked = true, double step = 0.05)
    {
        var sweep = Guid.CreateVersion7();
        journal.Append(Entry.About(
            sweep,
            job,
            new Sweep(cut, bench, FlowDirection.Draw, "large", Typed.Of(28, "inH2O"), [.. Enumerable.Range(1, lifts).Select(i => Typed.Of(Math.Round(i * step, 4), "in"))]),
            Now));
        if (asked)
        {
            journal.Append(Entry.About(
                Guid.CreateVersion7(),
                job,
                new WeatherReading(sweep, Typed.Of(29.3, "inHg"), PressureKind.Station, null, Typed.Of(70, "°F"), Typed.Of(45, "%")),
                Now));
            journal.Append(Entry.About(Guid.CreateVersion7(), job, new LeakReading(sweep, "large", Typed.Of(0.6, "%"), Typed.Of(28, "inH2O")), Now));
        }

        return sweep;
    }

    /// <summary>As <see cref="NewSweep"/>, at these lifts, in, on any range of the card.</summary>
    public Guid SweepAt(string data, string range, params double[] lifts)
    {
        using var journal = Journal.Open(data);
        var sweep = NewSweep(journal, Job, Bench, Cut0, 0);
        journal.Append(Entry.About(sweep, Job, new Sweep(Cut0, Bench, FlowDirection.Draw, range, Typed.Of(28, "inH2O"), [.. lifts.Select(l => Typed.Of(l, "in"))]), Now));
        return sweep;
    }

    /// <summary>The next cut of the intake with a sweep waiting, as the one named was swept.</summary>
    public Guid NextCut(string data, Guid like)
    {
        using var journal = Journal.Open(data);
        var cut = Entry.About(Guid.CreateVersion7(), Job, new Cut(Intake, 1, "bowl blended", DateOnly.FromDateTime(Now.DateTime)), Now);
        journal.Append(cut);
        var pattern = Ledger.Of(journal.ReadJob(Job)).Get<Sweep>(like).Fact;
        var sweep = NewSweep(journal, Job, Bench, cut.Subject, 0);
        journal.Append(Entry.About(sweep, Job, pattern with { Cut = cut.Subject }, Now));
        return sweep;
    }

    /// <summary>Readings of a sweep as a port would give them: a curve that flattens.</summary>
    public static void Readings(Journal journal, Guid job, Guid sweep, int lifts, double full = 78, double step = 0.05)
    {
        for (var i = 1; i <= lifts; i++)
        {
            journal.Append(Entry.About(Guid.CreateVersion7(), job, new FlowReading(sweep, Typed.Of(Math.Round(i * step, 4), "in"), Typed.Of(Value(i, lifts, full), "%")), Now));
        }
    }

    public static double Value(int i, int lifts, double full = 78) => Math.Round(full * Math.Sin(Math.PI / 2.2 * i / lifts), 1);

    public static BenchCard Card() => new(
        "Back bench",
        [
            new RangeCard("large", new PercentCard(0.1416, 6974.5, RangeScale.SquareRoot, 1500), "%", 0.2, 0.008),
            new RangeCard("readout", new DirectCard(ReadoutBasis.ActualAtMeter, new AirCard()), "cfm", 0.1, 0.015),
        ],
        [new CheckPlate("plate 2", 0.0008, 0.000002, "certificate 12")],
        new AirCard(),
        28 * 249.08891,
        BenchDoubt.Unknown);
}
