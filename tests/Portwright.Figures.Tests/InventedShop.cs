using Portwright.Engine.Runs;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests;

/// <summary>An invented job on a simulated bench: one head of four cylinders, three cuts of one intake, the rest less far.</summary>
internal sealed class InventedShop
{
    private const double Inch = 0.0254;
    private readonly Random _random;

    public InventedShop(int seed = 1, string words = "", int lifts = 12, int cuts = 4, double testPressure = 28, bool valve = true, bool mornings = true)
    {
        _random = new Random(seed);
        var plates = new[] { new CheckPlate("P-38", 0.00068, 0.0000012, "invented certificate 12") };
        Bench = new SimulatedBench(Ranges.OfEachKind.First(r => r.Name == "laminar") with { Name = "large" }, plates: plates) { LeakArea = 4e-6, TrueFactor = 1.004 };
        Restate(Bench.BenchId, null, Bench.Card with { Doubt = BenchDoubt.Unknown with { SetUpScatter = 0.0035, SetUpDegrees = 12 } });
        Restate(Bench.JobId, Bench.JobId, new Job($"Tamarack eight{words}", "", new EnginePlan(Cylinders: 8, IntakeCam: new CamLift(0.0087, 1.5, 0), ExhaustCam: new CamLift(0.0083, 1.5, 0), Fuel: "petrol")));
        Restate(Bench.HeadId, Bench.JobId, new Head($"head B{words}"));
        var data = valve ? new ValveData(0.0504, Math.PI / 4, 0.0016, 0.0447, 0.0084) : null;
        Restate(Bench.PortId, Bench.JobId, new Port(Bench.HeadId, PortKind.Intake, 2, false, data));
        if (mornings) Mornings(26);
        for (var c = 0; c < cuts; c++) Sweep(Bench.PortId, c, 1 + 0.035 * c - (c == 2 ? 0.02 : 0), lifts, testPressure, $"{(c == 0 ? "as received" : "bowl blended, short side laid back .030")}{words}");
        foreach (var cylinder in new[] { 1, 3, 4 })
        {
            var port = Bench.Add(new Port(Bench.HeadId, PortKind.Intake, cylinder, false, data));
            if (cylinder == 1) Sweep(port, 0, 1.01, lifts, testPressure, "as received");
        }

        foreach (var cylinder in new[] { 1, 2, 3, 4 })
        {
            var port = Bench.Add(new Port(Bench.HeadId, PortKind.Exhaust, cylinder, false, null));
            if (cylinder == 1) Sweep(port, 0, 0.7, 5, testPressure, "as received", FlowDirection.Blow, planned: 10);
        }
    }

    public SimulatedBench Bench { get; }

    public PortAtCut AtCut(Guid? cut = null) => PortAtCut.Of(new Reductions(Bench.Ledger), Bench.PortId, cut, new NoRuns());

    public PortSheet Sheet() => PortSheet.Of(Bench.Ledger, Bench.PortId);

    public PortSurvey Survey() => PortSurvey.Of(Bench.Ledger, Bench.PortId);

    public JobBoard Board() => JobBoard.Of(Bench.Ledger, Bench.JobId);

    private void Restate(Guid subject, Guid? job, Fact fact) => Bench.Put(Entry.About(subject, job, fact, SimulatedBench.Morning.AddHours(1), "A.W."));

    private static double Area(double lift) => 0.00118 * Math.Tanh(lift / 0.0115);

    private void Sweep(Guid port, int number, double gain, int lifts, double pressure, string done, FlowDirection direction = FlowDirection.Draw, int? planned = null)
    {
        Bench.NextDay();
        var cut = Bench.Add(new Cut(port, number, done, new DateOnly(2025, 4, 1).AddDays(number)));
        var sweep = Bench.Add(new Sweep(
            cut, Bench.BenchId, direction, "large", Typed.Of(pressure, "inH2O"),
            [.. Enumerable.Range(1, planned ?? lifts).Select(i => Typed.Of(Math.Round(0.05 * i, 3), "in"))], Fitted: "entry radius"));
        Bench.Add(new WeatherReading(sweep, Typed.Of(Bench.Room.Pressure, "Pa"), PressureKind.Station, null, Typed.Of(Bench.Room.Temperature, "K"), Typed.Of(45, "%")));
        Bench.ReadLeak(sweep, pressure);
        var setUp = 1 + 0.002 * (_random.NextDouble() - 0.5);
        for (var i = 1; i <= lifts; i++)
        {
            for (var repeat = 0; repeat < (i % 4 == 0 ? 2 : 1); repeat++)
                Bench.Read(sweep, 0.05 * i * Inch, Area(0.05 * i * Inch) * gain * setUp, r => Math.Round(r / UnitFactors.InchOfWater * (1 + 0.002 * (_random.NextDouble() - 0.5)), 2) * UnitFactors.InchOfWater, testPressure: pressure);
        }
    }

    private void Mornings(int days)
    {
        for (var day = 0; day < days; day++)
        {
            var drift = day > days - 3 ? 1.006 : 1;
            var plate = Bench.ReadPlate("P-38", 0.00068 * drift * (1 + 0.004 * (_random.NextDouble() - 0.5)));
            Bench.Add(new MorningCheck(Bench.BenchId, new DateOnly(2025, 2, 1).AddDays(day), Bench.Air(), Bench.ReadPlate("P-38", 4e-7), [plate]), null);
        }
    }
}

/// <summary>No engine was run.</summary>
internal sealed class NoRuns : IKeptPoints
{
    public OperatingPoint? Find(string key) => null;

    public void Keep(string key, OperatingPoint point) => throw new InvalidOperationException("Nothing is run here.");
}
