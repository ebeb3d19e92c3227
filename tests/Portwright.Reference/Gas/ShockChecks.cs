using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;
using Portwright.Engine.Gas.Lanes;
using Portwright.Physics.TestPiece;

namespace Portwright.Reference.Gas;

/// <summary>Normal shocks: NACA Report 1135 (1953), equations 93 to 100 and table II.</summary>
public sealed class ShockChecks
{
    public static TheoryData<PublishedCase> Shocks =>
        [.. PublishedCases.Read("gas-dynamics", "shock-").Where(c => !c.Id.StartsWith("shock-reflection", StringComparison.Ordinal))];

    public static TheoryData<PublishedCase> Reflections => [.. PublishedCases.Read("gas-dynamics", "shock-reflection-")];

    /// <summary>From the published rise of pressure alone: how fast the shock runs and what gas it leaves.</summary>
    [Theory, MemberData(nameof(Shocks))]
    public void Rise_of_pressure_makes_the_published_shock(PublishedCase c)
    {
        double k = c.In("gamma"), sound = Math.Sqrt(k), pressure = c.Expected["p_ratio"]!.GetValue<double>();
        var gas = WaveCurve<OneLane>.Across(1, 1, sound, k, pressure);
        // Mass kept: the shock overtakes still gas at s and leaves it behind at s less the speed it gave the gas.
        double shock = gas.Change * gas.Density / (gas.Density - 1), soundAfter = Math.Sqrt(k * pressure / gas.Density);
        Assert.Equal(1, shock / sound / c.In("mach"), 1e-10);
        c.Check("rho_ratio", gas.Density);
        c.Check("T_ratio", pressure / gas.Density);
        var after = (shock - gas.Change) / soundAfter;
        c.Check("mach_after", after);
        c.Check("p0_ratio", pressure * IsentropicFlow.PressureRatio(c.In("mach"), k) / IsentropicFlow.PressureRatio(after, k));
    }

    [Theory, MemberData(nameof(Reflections))]
    public void Reflected_shock_runs_back_as_fast_as_published(PublishedCase c)
    {
        double k = c.In("gamma"), sound = Math.Sqrt(k), p2 = c.Expected["p2_over_p1"]!.GetValue<double>();
        var gas = WaveCurve<OneLane>.Across(1, 1, sound, k, p2);
        var p5 = ClosedEnd.Pressure(gas.Density, gas.Change, p2, k);
        var behind = WaveCurve<OneLane>.Across(gas.Density, p2, Math.Sqrt(k * p2 / gas.Density), k, p5);
        // The wall stops the gas: all the speed it came with is taken off, and mass is kept over the shock that does it.
        Assert.Equal(gas.Change, behind.Change, 1e-9);
        c.Check("reflected_shock_speed_over_c1", gas.Change * gas.Density / (behind.Density - gas.Density) / sound, 1e-8);
        Assert.Equal(1, gas.Change * gas.Density / (gas.Density - 1) / sound / c.In("shock_mach"), 1e-10);
    }
}
