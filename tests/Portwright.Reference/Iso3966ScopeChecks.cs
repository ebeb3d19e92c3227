using Portwright.Physics.Pitot;

namespace Portwright.Reference;

/// <summary>ISO 3966, scope (2020 and 2025 editions): Mach number not exceeding 0.25.</summary>
public sealed class Iso3966ScopeChecks
{
    private static readonly PublishedCase Scope = PublishedCases.Read("geometry-and-flow", "iso-3966-scope").Single();

    [Fact]
    public void Scope_ends_at_the_published_mach_number_and_speed()
    {
        double k = Scope.In("gamma"), r = Scope.In("gas_constant_j_kg_k"), t = Scope.In("temperature_k"), p = 101_325;
        Scope.Check("mach_max", PitotSpeed.Iso3966LargestMach);
        var dp = p * (Math.Pow(1 + (k - 1) / 2 * PitotSpeed.Iso3966LargestMach * PitotSpeed.Iso3966LargestMach, k / (k - 1)) - 1);
        var speed = PitotSpeed.FromStaticTemperature(dp, p, t, k, r);
        Scope.Check("speed_m_s", speed);
        Scope.Check("speed_ft_s", speed / 0.3048);
    }

    [Fact]
    public void A_reading_past_the_scope_says_so()
    {
        var room = Physics.Air.AirState.Dry(101_325, 293.15);
        Assert.False(new PitotProbe().Read(4300, 101_325, room).LeavesIso3966);
        Assert.True(new PitotProbe().Read(4700, 101_325, room).LeavesIso3966);
    }
}
