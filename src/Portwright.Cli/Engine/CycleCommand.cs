using System.CommandLine;
using System.Globalization;
using Portwright.Cli.Record;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Cli.Engine;

/// <summary><c>portwright engine cycle</c>: one cycle at one speed, by crank angle.</summary>
internal static class CycleCommand
{
    /// <summary>Speeds taken, rad/s: below and above nothing an engine of this kind does is calculated.</summary>
    private const double Slowest = 300 * Math.PI / 30, Fastest = 20_000 * Math.PI / 30;

    public static Command Make()
    {
        var options = new EngineOptions();
        var rpm = new Option<string?>("--rpm") { Description = "engine speed", HelpName = "SPEED" };
        var every = new Option<int>("--every") { Description = "degrees of crank between two lines (usual: 20)", HelpName = "N", DefaultValueFactory = _ => 20 };
        var command = options.On(new Command("cycle", "one cycle at one speed: pressures, flows and air speeds by crank angle"), rpm, every);
        return command.Does(parsed =>
        {
            var (typed, step) = (parsed.GetValue(rpm), parsed.GetValue(every));
            if (typed is null) throw new Refusal("--rpm is missing: the engine speed of the cycle. Example: portwright engine cycle --rpm 4500");
            if (!TypedNumber.TryParse(typed, Dimension.RotationalSpeed, UnitSystem.UsCustomary, "--rpm", out var speed, out var problem)) throw new Refusal(problem);
            if (speed.Si(Dimension.RotationalSpeed) is < Slowest or > Fastest) throw new Refusal($"--rpm \"{typed}\" lies outside 300 to 20,000 rpm. Type a speed this engine runs at.");
            if (step < 1 || CycleTrace.Rows % step != 0) throw new Refusal($"--every {step} does not divide 720 degrees. Type 1, 5, 10, 20 or 30.");
            using var record = options.Open(parsed);
            var asked = options.Read(parsed, record);
            var trace = Trace(asked.Question.Design, speed.Si(Dimension.RotationalSpeed) / (2 * Math.PI));
            var output = parsed.InvocationConfiguration.Output;
            if (options.Json(parsed)) Json(output, asked, trace);
            else Text(new Page(output), asked, trace, step);
            return ExitCode.Done;
        }).Example("portwright engine cycle --rpm 4500", "portwright engine cycle \"head B intake 2\" --cut 0 --rpm 6000 --every 10");
    }

    private static CycleTrace Trace(EngineDesign design, double turnsASecond)
    {
        try
        {
            return CycleTrace.At(design, turnsASecond);
        }
        catch (ArgumentException problem)
        {
            throw EngineRunning.Cannot(problem);
        }
    }

    private static void Text(Page page, EngineAsked asked, CycleTrace trace, int step)
    {
        var (units, point) = (asked.Units, trace.Point);
        var pressure = Unit.Find(units == UnitSystem.Si ? "kPa" : "psi", Dimension.Pressure)!;
        string Pressure(double si, int decimals = 0) => pressure.FromSi(si).ToString("F" + decimals, CultureInfo.InvariantCulture);
        page.Title($"One cycle of {asked.Job.Fact.Name} at {EngineSentences.Rpm(point.TurnsASecond)}");
        page.Paragraph($"{Print.Number(point.Torque, Dimension.Torque, units)}, {Print.Number(point.Power, Dimension.Power, units)}, filling {100 * point.VolumetricEfficiency:F1} percent, residual {100 * point.Residual:F1} percent, highest pressure {Pressure(point.PeakPressure)} {pressure.Name}. Calculated, not measured.");
        if (!point.IsSettled) page.Paragraph("The cycles had not come to repeat: read it with caution.");
        page.Line();
        page.Line($"  {"crank",5}{"cylinder",10}{"behind intake",15}{"behind exhaust",16}{"intake",9}{"exhaust",9}{"into",7}{"out",6}");
        page.Line($"  {"deg",5}{pressure.Name,10}{pressure.Name,15}{pressure.Name,16}{"lift",9}{"lift",9}{"g/s",7}{"g/s",6}");
        for (var row = 0; row < CycleTrace.Rows; row += step)
        {
            page.Line(string.Create(CultureInfo.InvariantCulture,
                $"  {row,5}{Pressure(trace.CylinderPressure[row], 1),10}{Pressure(trace.Intake.ValvePressure[row], 1),15}{Pressure(trace.Exhaust.ValvePressure[row], 1),16}{Print.Bare(trace.IntakeLift[row], Dimension.Lift, units),9}{Print.Bare(trace.ExhaustLift[row], Dimension.Lift, units),9}{Grams(trace.IntakeFlow[row]),7}{Grams(trace.ExhaustFlow[row]),6}"));
        }

        page.Paragraph("(Crank from top dead centre of gas exchange. Pressures are absolute, cylinder 1. A flow below zero runs backwards.)", 2);
        Quickest(page, "intake", trace.Intake, units);
        Quickest(page, "exhaust", trace.Exhaust, units);
    }

    /// <summary>g/s, whole; what rounds to nothing has no sign.</summary>
    private static string Grams(double flow) => ((int)Math.Round(1e3 * flow)).ToString(CultureInfo.InvariantCulture);

    private static void Quickest(Page page, string name, PipeTrace pipe, UnitSystem units)
    {
        var at = Array.IndexOf(pipe.HighestMach, pipe.HighestMach.Max());
        page.Paragraph($"Highest Mach number in the {name}: {pipe.HighestMach[at].ToString("F2", CultureInfo.InvariantCulture)}, {Print.Number(pipe.Distances[at], Dimension.Length, units, units == UnitSystem.Si ? 0 : 2)} from the seat.", 2);
    }

    private static void Json(TextWriter output, EngineAsked asked, CycleTrace trace) => JsonText.Write(output, json =>
    {
        void Row(string key, IEnumerable<double> values)
        {
            json.WriteStartArray(key);
            foreach (var v in values) json.WriteNumberValue(v);
            json.WriteEndArray();
        }

        json.WriteStartObject();
        EngineJson.Ports(json, asked.Job, asked.Question);
        EngineJson.Point(json, trace.Point);
        json.WriteNumber("degrees_a_row", 1);
        Row("cylinder_pressure_pa", trace.CylinderPressure);
        Row("cylinder_temperature_k", trace.CylinderTemperature);
        Row("intake_flow_kg_s", trace.IntakeFlow);
        Row("exhaust_flow_kg_s", trace.ExhaustFlow);
        Row("intake_lift_m", trace.IntakeLift);
        Row("exhaust_lift_m", trace.ExhaustLift);
        foreach (var (name, pipe) in new[] { ("intake", trace.Intake), ("exhaust", trace.Exhaust) })
        {
            Row(name + "_valve_pressure_pa", pipe.ValvePressure);
            Row(name + "_valve_mach", pipe.ValveMach);
            Row(name + "_distance_from_seat_m", pipe.Distances);
            Row(name + "_highest_mach", pipe.HighestMach);
        }

        json.WriteEndObject();
    });
}
