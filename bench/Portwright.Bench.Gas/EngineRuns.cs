using System.Diagnostics;
using Portwright.Engine.Runs;

namespace Portwright.Bench.Gas;

/// <summary>Whole engines: one operating point, sweeps, slopes, and one core against two.</summary>
internal static class EngineRuns
{
    private const double Degree = Math.PI / 180;

    /// <summary>A made-up cylinder of 0.7 l. Pipes of 60 cells where the cells of the usual length would give that many.</summary>
    public static EngineDesign One(double runner = 0.35, double primary = 0.8, int cells = 0)
    {
        var lifts = Enumerable.Range(1, 9).Select(i => i * 1.5e-3).ToArray();
        MeasuredAreas Areas(double top) => new(lifts, [.. lifts.Select(l => top * Math.Tanh(1.3 * l / 9e-3))]);
        Tract Pipe(double length, double diameter, double cell) => Tract.Straight(length, diameter, cells > 0 ? length / cells : cell) with { WallTemperature = 400, Roughness = 25e-6 };
        return new(
            new(0.1, 0.09, 0.153, 10),
            new(new() { Card = new(8.2e-3, 275 * Degree, 226 * Degree, 108 * Degree) { RockerRatio = 1.5 } }, Areas(6.5e-4), Pipe(runner, 0.041, 0.01)),
            new(new() { Card = new(8.0e-3, 280 * Degree, 230 * Degree, 112 * Degree) { RockerRatio = 1.5 } }, Areas(4.9e-4), Pipe(primary, 0.035, 0.02)));
    }

    /// <summary>Four cylinders, eight pipes and a collector.</summary>
    public static EngineDesign Four(int cells = 0) => One(0.6, 1.2, cells) with { Cylinders = 4, FiringOrder = [1, 3, 4, 2], Manifold = new(0.004, 14e-4), Collector = new(4, 0.5, 0.06) };

    public static void Print()
    {
        var eightPipes = Four(60) with { Manifold = null, Collector = null };
        foreach (var rpm in new[] { 3000, 4500, 6000 })
        {
            var point = EngineRun.At(eightPipes, rpm / 60.0);
            var best = Best(12, () => EngineRun.At(eightPipes, rpm / 60.0));
            Console.WriteLine($"operating point at {rpm} rpm, 4 cylinders, 8 pipes of 60 cells, settled to {point.LastChange:E1} in {point.Cycles} cycles: {best:F0} ms on one core, {best * 1e6 / point.Steps:F0} ns a step of {point.Steps}");
        }

        var range = SpeedRange.Even(2500 / 60.0, 6500 / 60.0, 20);
        foreach (var (name, design) in new[] { ("one cylinder, two pipes", One()), ("four cylinders, manifold and collector", Four()) })
        {
            EngineTask[] tasks = [.. range.Tasks(design, Settling.Usual)];
            var (one, two) = (Best(3, () => new EngineBatch { AtATime = 1 }.Run(tasks)), Best(3, () => new EngineBatch { AtATime = 2 }.Run(tasks)));
            Console.WriteLine($"sweep of 20 speeds, {name}: {one:F0} ms one at a time, {two:F0} ms two at a time ({one / two:F2} x)");
        }

        var worth = WorthCurve.Tasks(One(), SpeedRange.Even(2500 / 60.0, 6500 / 60.0, 5));
        var (single, both) = (Best(1, () => new EngineBatch { AtATime = 1 }.Run(worth)), Best(1, () => new EngineBatch { AtATime = 2 }.Run(worth)));
        Console.WriteLine($"worth curve, {worth.Count} runs settled to 1e-6: {single:F0} ms one at a time, {both:F0} ms two at a time ({single / both:F2} x)");
    }

    private static double Best(int times, Action run)
    {
        var best = double.MaxValue;
        for (var i = 0; i < times; i++)
        {
            var start = Stopwatch.GetTimestamp();
            run();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }
}
