using Portwright.Engine.Runs;

namespace Portwright.Engine.Tests.Runs;

/// <summary>Invented engines for the tests.</summary>
internal static class MadeEngines
{
    public const double Degree = Math.PI / 180;

    /// <summary>A two-valve cylinder with areas that grow with lift and level off.</summary>
    public static EngineDesign Street(double bore = 0.1, double stroke = 0.09, double intakeArea = 6.5e-4, double runner = 0.35, double primary = 0.8)
    {
        var lifts = Enumerable.Range(1, 9).Select(i => i * 1.5e-3).ToArray();
        MeasuredAreas Areas(double top) => new(lifts, [.. lifts.Select(l => top * Math.Tanh(1.3 * l / 9e-3))]);
        double d = Math.Sqrt(4 / Math.PI * intakeArea * 2), e = Math.Sqrt(4 / Math.PI * intakeArea * 1.5);
        return new(
            new(bore, stroke, 1.7 * stroke, 10),
            new(new() { Card = new(8.2e-3, 275 * Degree, 226 * Degree, 108 * Degree) { RockerRatio = 1.5 } }, Areas(intakeArea), Tract.Straight(runner, d, 0.01)),
            new(new() { Card = new(8.0e-3, 280 * Degree, 230 * Degree, 112 * Degree) { RockerRatio = 1.5 } }, Areas(0.75 * intakeArea), Tract.Straight(primary, e, 0.02) with { WallTemperature = 600 }));
    }

    /// <summary>Timing of an old-fashioned engine and pipes too short to be tuned: valves alone decide.</summary>
    public static EngineDesign Untuned(double bore, double stroke, double intakeArea)
    {
        var design = Street(bore, stroke, intakeArea, 0.06, 0.06);
        ValveTiming Timing(double seat, double centre) => new() { Card = new(8.2e-3, seat * Degree, (seat - 40) * Degree, centre * Degree) { RockerRatio = 1.5 } };
        return design with { Intake = design.Intake with { Timing = Timing(230, 105) }, Exhaust = design.Exhaust with { Timing = Timing(240, 112) } };
    }

    public static EngineDesign Four() => Street() with
    {
        Cylinders = 4,
        FiringOrder = [1, 3, 4, 2],
        Manifold = new(0.004, 14e-4),
        Collector = new(4, 0.5, 0.06),
    };

    public static OperatingPoint At(this EngineDesign design, double rpm, double tolerance = 2e-4) => EngineRun.At(design, rpm / 60, new(tolerance, 100));

    public static EngineDesign WithCells(this EngineDesign design, double length) => design with
    {
        Intake = design.Intake with { Tract = design.Intake.Tract with { CellLength = length } },
        Exhaust = design.Exhaust with { Tract = design.Exhaust.Tract with { CellLength = 2 * length } },
    };
}
