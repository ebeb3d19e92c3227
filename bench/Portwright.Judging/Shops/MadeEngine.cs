using Portwright.Judging.Chance;
using Portwright.Judging.Ports;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>The engine a job's heads must suit, and the ports that do suit it: drawn together, since a healthy head is one whose ports fit its plan.</summary>
public sealed class MadeEngine
{
    /// <summary>m/s, in the air of a warm room.</summary>
    private const double SpeedOfSound = 345;

    private MadeEngine(double bore, double stroke, double speed, double camIntake, double camExhaust, HeadDesign intake, HeadDesign exhaust)
    {
        (Bore, Stroke, HighestSpeed, Intake, Exhaust) = (bore, stroke, speed, intake, exhaust);
        (IntakeLift, ExhaustLift) = (camIntake, camExhaust);
    }

    public double Bore { get; }

    public double Stroke { get; }

    /// <summary>rpm.</summary>
    public double HighestSpeed { get; set; }

    public HeadDesign Intake { get; }

    public HeadDesign Exhaust { get; }

    /// <summary>Highest lift the cam gives, m.</summary>
    public double IntakeLift { get; }

    public double ExhaustLift { get; }

    /// <summary>Mean piston speed, m/s.</summary>
    public double PistonSpeed => 2 * Stroke * HighestSpeed / 60;

    /// <summary>Piston area, m2.</summary>
    public double Piston => Math.PI / 4 * Bore * Bore;

    public static MadeEngine Drawn(Draw draw)
    {
        while (true)
        {
            var bore = draw.Between(0.080, 0.110);
            var stroke = bore * draw.Between(0.78, 1.05);
            var intake = bore * draw.Between(0.45, 0.55);
            // Flow at the highest lift as a share of the valve's area: 0.44 is a casting as it comes, 0.54 a port that was worked on (common practice, no source).
            var (topIntake, topExhaust) = (intake * draw.Between(0.26, 0.33), draw.Between(0.27, 0.35));
            var most = Math.PI / 4 * intake * intake * draw.Between(0.44, 0.54);
            var exhaust = intake * draw.Between(0.76, 0.88);
            var mostExhaust = most * draw.Between(0.63, 0.87);
            // What the port of one valve cannot pass belongs to no engine.
            if (!Fits(intake, topIntake, most) || !Fits(exhaust, topExhaust * exhaust, mostExhaust)) continue;
            var pinch = most / draw.Between(0.62, 0.76);
            var pinchExhaust = mostExhaust / draw.Between(0.62, 0.76);
            // The pinch is the narrowest place: narrower than the smallest throat.
            if (!Narrowest(pinch, intake) || !Narrowest(pinchExhaust, exhaust)) continue;
            var camIntake = topIntake * draw.Between(0.90, 1.0);
            var inDesign = new HeadDesign(PortKind.Intake, intake, most, topIntake, pinch, draw);
            var outDesign = new HeadDesign(PortKind.Exhaust, exhaust, mostExhaust, topExhaust * exhaust, pinchExhaust, draw);
            var index = draw.Between(0.36, 0.58);
            var speed = index * SpeedOfSound * MeanArea(inDesign.Law.At, camIntake) / (Math.PI / 4 * bore * bore) / (2 * stroke) * 60;
            var engine = new MadeEngine(bore, stroke, Math.Round(speed / 100) * 100, camIntake, topExhaust * exhaust * draw.Between(0.90, 1.0), inDesign, outDesign);
            // Piston area times mean piston speed over the narrowest section: 60 to 110 m/s is what ports that suit their plan have (common practice, no source).
            var flow = engine.Piston * engine.PistonSpeed / pinch;
            if (flow is > 60 and < 110 && engine.PistonSpeed is > 11 and < 26) return engine;
        }
    }

    /// <summary>Piston area times mean piston speed over mean effective area times the speed of sound, of an intake's area (m2) over lift (m).</summary>
    public double InletMach(Func<double, double> area) => Piston * PistonSpeed / (MeanArea(area, IntakeLift) * SpeedOfSound);

    /// <summary>The plan as it is typed.</summary>
    public EnginePlan Plan(int cylinders, Draw draw)
    {
        var rocker = draw.Of(1.0, 1.5, 1.6, 1.7);
        CamLift Cam(double lift)
        {
            var lash = draw.Of(0, 0.00010, 0.00025);
            return new CamLift((lift + lash) / rocker, rocker, lash);
        }

        // A table of the lift itself, as whoever has measured a cam keeps it: the wave that the mean area is reckoned with.
        CamTiming Timing(double lift, double opens, double open) => new(Table: [.. Enumerable.Range(0, 41).Select(i => new LiftAtAngle(
            (opens + open * i / 40) * Math.PI / 180, Math.Round(lift * Math.Pow(Math.Sin(Math.PI * i / 40), 1.6), 6)))]);
        return new EnginePlan(
            Bore, Stroke, Stroke * draw.Between(1.5, 1.85), cylinders, Math.Round(draw.Between(9, 13), 1), Cam(IntakeLift), Cam(ExhaustLift),
            LowestSpeed: Math.Round(HighestSpeed * draw.Between(0.3, 0.6) / 100) * 100, HighestSpeed: HighestSpeed, Fuel: "petrol",
            IntakeTiming: Timing(IntakeLift, -draw.Between(20, 40), draw.Between(260, 290)), ExhaustTiming: Timing(ExhaustLift, -draw.Between(225, 245), draw.Between(260, 280)));
    }

    /// <summary>Effective area (m2) on the mean while a cam of that lift holds the valve open; the lift goes as a half wave to the power 1.6.</summary>
    private static double MeanArea(Func<double, double> area, double lift) =>
        Enumerable.Range(0, 60).Average(i => area(lift * Math.Pow(Math.Sin(Math.PI * (i + 0.5) / 60), 1.6)));

    private static bool Narrowest(double pinch, double head) => pinch < 0.72 * Math.PI / 4 * head * head;

    private static bool Fits(double head, double top, double most) => most < 0.84 * 0.50 * Math.PI * head * top && most < 0.62 * Math.PI / 4 * head * head;
}
