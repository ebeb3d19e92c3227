using Portwright.Engine.Runs;
using Portwright.Physics.Valves;

namespace Portwright.Engine.Tests.Runs;

/// <summary>What theory and old engines say of filling, found again in the run.</summary>
public sealed class BreathingTests(ITestOutputHelper output)
{
    // C. F. Taylor, The Internal Combustion Engine in Theory and Practice, vol. 1, ch. 6; J. C. Livengood, J. D. Stanitz, NACA TN 915 (1943); both from memory (docs/theory/sources.md): volumetric efficiency over
    // the inlet Mach index is one curve for engines of different size, level to 0.5 or 0.6 and falling beyond.
    [Fact]
    public void Filling_falls_past_an_inlet_Mach_index_of_0_6_on_one_curve_for_three_sizes_of_engine()
    {
        double[] indices = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0, 1.2];
        (double Bore, double Stroke, double Area)[] sizes = [(0.06, 0.05, 2.2e-4), (0.10, 0.09, 6.5e-4), (0.13, 0.15, 9e-4)];
        var curves = sizes.Select(s =>
        {
            var design = MadeEngines.Untuned(s.Bore, s.Stroke, s.Area);
            var lift = ValveOpening.LiftOf(design.Intake.Timing, true);
            var valve = new ValveOpening(lift, design.Intake.Areas);
            const int parts = 1000;
            var mean = Enumerable.Range(0, parts).Average(i => valve.At((lift.Opens + (lift.Closes - lift.Opens) * i / parts + 4 * Math.PI) % (4 * Math.PI)).With);
            var sound = Math.Sqrt(1.4 * 287.05 * 293.15);
            return indices.Select(z => EngineRun.At(design, z / InletMachIndex.Of(s.Bore, s.Stroke, 1, mean, sound)).VolumetricEfficiency).ToArray();
        }).ToArray();
        foreach (var c in curves) output.WriteLine(string.Join("  ", c.Select((v, i) => $"{indices[i]}: {v:0.000}")));

        foreach (var curve in curves)
        {
            var level = curve[3];
            for (var i = 0; i <= 4; i++) Assert.InRange(curve[i] / level, 0.97, 1.02);
            Assert.InRange(curve[6] / level, 0.88, 0.95);
            Assert.InRange(curve[7] / level, 0.70, 0.82);
            Assert.True(curve[8] < curve[7] && curve[7] < curve[6] && curve[6] < curve[5] && curve[5] < curve[4]);
        }

        for (var i = 0; i < indices.Length; i++)
            Assert.InRange(curves.Max(c => c[i]) / curves.Min(c => c[i]), 1, i < 8 ? 1.03 : 1.1);
    }

    // The runner sounds at its quarter wave a/(4 L) between two intakes; it helps when a pressure crest meets the opening valve, that is once for every whole beat in a cycle more: D. E. Winterbone, R. J. Pearson,
    // Theory of Engine Manifold Design (2000), from memory. So the peaks of filling stand where beats a cycle make whole steps, and move with 1/L.
    [Fact]
    public void Peaks_of_filling_stand_a_whole_beat_of_the_runner_apart_and_move_with_its_length()
    {
        double sound = Math.Sqrt(1.4 * 287.05 * 293.15), effectiveBeyond = 0.09; // fitted to the three lengths: port and cylinder behind the valve while it is open
        List<(double Length, double Order, double Rpm)> peaks = [];
        foreach (var length in new[] { 0.7, 1.0, 1.4 })
        {
            var design = MadeEngines.Street(runner: length, primary: 0.05).WithCells(0.02);
            // Beats of the still runner a cycle, round 4 and 5.
            var beat = sound / 4 / (length + effectiveBeyond);
            var orders = Enumerable.Range(0, 21).Select(i => 3.5 + 0.1 * i).ToArray();
            var filling = new EngineBatch().Run([.. orders.Select(q => new EngineTask(design, 2 * beat / q, Settling.Usual))]).Select(p => p.VolumetricEfficiency).ToArray();
            for (var i = 1; i + 1 < orders.Length; i++)
            {
                if (!(filling[i] > filling[i - 1] && filling[i] >= filling[i + 1])) continue;
                var vertex = orders[i] + 0.05 * (filling[i - 1] - filling[i + 1]) / (filling[i - 1] - 2 * filling[i] + filling[i + 1]);
                peaks.Add((length, vertex, 120 * beat / vertex));
            }
        }

        foreach (var p in peaks) output.WriteLine($"{p.Length} m: {p.Rpm:0} rpm at {p.Order:0.00} beats a cycle");
        foreach (var beats in new[] { 4, 5 })
        {
            var same = peaks.Where(p => Math.Abs(p.Order - beats) < 0.5).ToArray();
            Assert.Equal([0.7, 1.0, 1.4], same.Select(p => p.Length));
            Assert.All(same, p => Assert.Equal(beats, p.Order, 0.15));
            // Speed times length is one number.
            var products = same.Select(p => p.Rpm * (p.Length + effectiveBeyond)).ToArray();
            Assert.InRange(products.Max() / products.Min(), 1, 1.05);
        }
    }

    [Fact]
    public void A_bigger_port_fills_more_where_the_valve_is_the_limit()
    {
        var design = MadeEngines.Street();
        var bigger = design with { Intake = design.Intake with { Areas = design.Intake.Areas.Scaled(_ => 1.05) } };
        Assert.True(bigger.At(6500).VolumetricEfficiency > 1.02 * design.At(6500).VolumetricEfficiency);
    }
}
