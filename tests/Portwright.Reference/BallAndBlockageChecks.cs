using Portwright.Physics.Drag;

namespace Portwright.Reference;

/// <summary>Sphere drag by eight published correlations with their spread (fluids 1.0.22), and what the walls of a tube do to it.</summary>
public sealed class BallAndBlockageChecks
{
    public static TheoryData<PublishedCase> Many => [.. PublishedCases.Read("geometry-and-flow", "sphere-many-")];

    public static TheoryData<PublishedCase> Solid => [.. PublishedCases.Read("geometry-and-flow", "ball-solid-blockage-")];

    public static TheoryData<PublishedCase> Wake => [.. PublishedCases.Read("geometry-and-flow", "ball-wake-blockage-")];

    public static TheoryData<PublishedCase> Wall => [.. PublishedCases.Read("geometry-and-flow", "ball-wall-factor-")];

    [Theory, MemberData(nameof(Many))]
    public void Each_correlation_drags_as_published_and_speaks_only_in_its_range(PublishedCase c)
    {
        var re = c.In("reynolds");
        var spread = SphereDragSpread.At(re);
        Assert.Equal(c.Expected.Count - 1, spread.Correlations);
        foreach (var (name, correlation) in Correlations)
        {
            if (c.Expected.ContainsKey(name)) c.Check(name, correlation(re));
        }
        c.Check("spread_relative", spread.SpreadRelative);
    }

    private static readonly (string, Func<double, double>)[] Correlations =
    [
        ("clift", SphereDrag.StandardCurve), ("haider_levenspiel", SphereDrag.HaiderLevenspiel), ("cheng", SphereDrag.Cheng),
        ("almedeij", SphereDrag.Almedeij), ("mikhailov_freire", SphereDrag.MikhailovFreire), ("barati_high", SphereDrag.Barati),
        ("morrison", SphereDrag.Morrison), ("terfous", SphereDrag.Terfous),
    ];

    [Theory, MemberData(nameof(Solid))]
    public void A_tube_speeds_the_air_at_a_ball_as_published(PublishedCase c)
    {
        var b = c.In("ball_diameter_mm") / c.In("tube_diameter_mm");
        c.Check("tau", Blockage.Tau);
        c.Check("diameter_ratio", b);
        c.Check("speed_increase", Blockage.SolidSpeedIncrease(b));
        c.Check("dynamic_pressure_factor", Math.Pow(1 + Blockage.SolidSpeedIncrease(b), 2));
        c.Check("gap_speed_over_approach", Blockage.GapSpeed(b));
    }

    [Theory, MemberData(nameof(Wake))]
    public void A_wake_in_a_closed_section_drags_as_Maskell_has_it(PublishedCase c)
    {
        double b = c.In("ball_diameter_mm") / c.In("tube_diameter_mm"), confined = c.In("cd_measured");
        c.Check("area_ratio", b * b);
        c.Check("cd_ratio", Blockage.MaskellDragRatio(confined, b));
        var free = confined / Blockage.MaskellDragRatio(confined, b);
        c.Check("cd_corrected", free);
        // And back: the free coefficient becomes the confined one.
        Assert.Equal(confined, Blockage.MaskellConfinedDrag(free, b), 1e-12);
    }

    [Theory, MemberData(nameof(Wall))]
    public void A_ball_in_a_tube_falls_as_slowly_as_Munroe_and_Newton_have_it(PublishedCase c)
    {
        var b = c.In("diameter_ratio");
        c.Check("munroe_speed_factor", Blockage.MunroeSpeedFactor(b));
        c.Check("munroe_drag_factor", Math.Pow(Blockage.MunroeSpeedFactor(b), -2));
        c.Check("newton_speed_factor", Blockage.NewtonSpeedFactor(b));
        c.Check("newton_drag_factor", Math.Pow(Blockage.NewtonSpeedFactor(b), -2));
    }
}
