using CsCheck;
using Portwright.Physics.Crank;
using Portwright.Physics.Targets;
using Portwright.Physics.Valves;

namespace Portwright.Physics.Tests.Targets;

public sealed class SectionTargetTests
{
    private const double Bore = 0.1016, Sound = 340, Inch = 0.0254, Foot = 0.3048;

    private static readonly SliderCrank Crank = new(0.0884, 0.1448);

    private static readonly Gen<(double Bore, SliderCrank Crank, double Speed)> AnyEngine = Gen.Select(
        Gen.Double[0.04, 0.12], Gen.Double[0.03, 0.12], Gen.Double[1.3, 2.2], Gen.Double[5, 300],
        (bore, stroke, rod, speed) => (bore, new SliderCrank(stroke, rod * stroke), speed));

    [Fact]
    public void Demand_over_the_way_down_is_the_displacement_and_its_mean_the_mean_piston_speed() => AnyEngine.Sample(engine =>
    {
        var (bore, crank, speed) = engine;
        const int parts = 2000;
        double filled = 0, step = crank.BottomAngle / parts;
        for (var i = 0; i < parts; i++) filled += PistonDemand.At(bore, crank, speed, (i + 0.5) * step) * step / (2 * Math.PI * speed);
        Assert.Equal(1, filled / (PistonDemand.PistonArea(bore) * crank.Travel), 1e-6);
        Assert.Equal(1, PistonDemand.Mean(bore, crank.Stroke, speed) * (0.5 / speed) / (PistonDemand.PistonArea(bore) * crank.Travel), 1e-12);
    });

    /// <summary>Common practice, no source: peak speed in ft/s = 0.00353 bore^2 stroke rpm/section in inches; it is the peak of a rod of 1.9 strokes, and within 2 percent that of usual ones.</summary>
    [Theory, InlineData(1.6), InlineData(1.7), InlineData(1.8), InlineData(2)]
    public void Peak_speed_agrees_with_the_shops_rule(double rod)
    {
        double bore = 4, stroke = 3.48, rpm = 6500, section = 2.4;
        var crank = new SliderCrank(stroke * Inch, rod * stroke * Inch);
        var peak = SectionSpeed.Peak(bore * Inch, crank, rpm / 60, section * Inch * Inch) / Foot;
        Assert.Equal(0.00353 * bore * bore * stroke * rpm / section, peak, 0.02 * peak);
        Assert.Equal(Math.PI / 4 / 360 * bore * bore * stroke * rpm / section, SectionSpeed.Mean(bore * Inch, stroke * Inch, rpm / 60, section * Inch * Inch) / Foot, 1e-9);
    }

    [Fact]
    public void Section_speed_and_engine_speed_are_one_relation() => Gen.Select(AnyEngine, Gen.Double[20, 200]).Sample((engine, air) =>
    {
        var (bore, crank, speed) = engine;
        var mean = SectionSpeed.AreaForMean(bore, crank.Stroke, speed, air);
        Assert.Equal(1, SectionSpeed.Mean(bore, crank.Stroke, speed, mean) / air, 1e-12);
        Assert.Equal(1, SectionSpeed.RevolutionsASecondForMean(bore, crank.Stroke, mean, air) / speed, 1e-12);
        var peak = SectionSpeed.AreaForPeak(bore, crank, speed, NamedLimits.SectionMach.Limits.Middle * Sound);
        Assert.Equal(1, SectionSpeed.LimitRevolutionsASecond(bore, crank, peak, Sound, NamedLimits.SectionMach.Limits.Middle) / speed, 1e-12);
        Assert.InRange(SectionSpeed.Peak(bore, crank, speed, mean) / SectionSpeed.Mean(bore, crank.Stroke, speed, mean), Math.PI / 2, 1.75);
    });

    [Fact]
    public void Area_and_speed_at_the_knee_give_back_the_index() => Gen.Select(AnyEngine, Gen.Double[0.2, 1]).Sample((engine, index) =>
    {
        var (bore, crank, speed) = engine;
        var area = MachTargets.MeanArea(bore, crank.Stroke, speed, Sound, index);
        Assert.Equal(index, InletMachIndex.Of(bore, crank.Stroke, speed, area, Sound), 1e-12);
        Assert.Equal(1, MachTargets.RevolutionsASecond(bore, crank.Stroke, area, Sound, index) / speed, 1e-12);
    });
}
