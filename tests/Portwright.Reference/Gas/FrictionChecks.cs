using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Reference.Gas;

/// <summary>Darcy friction factor: Haaland, J. Fluids Eng. 105 (1983) 89-90, beside Colebrook and White.</summary>
public sealed class FrictionChecks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("geometry-and-flow", "friction-").Where(c => c.Expected.ContainsKey("haaland"))];

    [Theory, MemberData(nameof(Cases))]
    public void Haaland_s_factor_is_as_published_and_near_colebrook_s(PublishedCase c)
    {
        const double temperature = 300, density = 1.2, diameter = 0.04;
        var speed = c.In("reynolds") * Physics.Air.Sutherland.Viscosity(temperature) / (density * diameter);
        double factor = WallFriction<OneLane>.Factor(
            density, speed, temperature, diameter, WallFriction<OneLane>.RoughnessTerm(c.In("relative_roughness") * diameter, diameter));
        c.Check("haaland", factor, 1e-9);
        // Haaland states 2 percent.
        c.Check("colebrook", factor, 0.02);
    }
}
