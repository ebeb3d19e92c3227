using Portwright.Engine.Gas;

namespace Portwright.Reference.Gas;

/// <summary>Exact Riemann solutions: Toro (3rd ed. 2009) chapters 4 and 6; Sod, J. Comput. Phys. 27 (1978); two gases.</summary>
public sealed class RiemannChecks
{
    public static TheoryData<PublishedCase> Sampled =>
    [
        .. PublishedCases.Read("gas-dynamics", "toro-sampled-"),
        .. PublishedCases.Read("gas-dynamics", "sod-"),
        .. PublishedCases.Read("gas-dynamics", "two-gas-"),
    ];

    public static TheoryData<PublishedCase> Stars => [.. PublishedCases.Read("valve-port-engine", "riemann-")];

    [Theory, MemberData(nameof(Sampled))]
    public void Exact_solution_is_as_published(PublishedCase c)
    {
        var exact = Of(c);
        CheckStar(c, exact);
        var x = c.List("x");
        for (var i = 0; i < x.Length; i++)
        {
            var state = exact.At((x[i] - c.In("x0")) / c.In("time"));
            Near(c, "rho", i, state.Density);
            Near(c, "u", i, state.Velocity);
            Near(c, "p", i, state.Pressure);
        }
    }

    [Theory, MemberData(nameof(Stars))]
    public void Star_region_is_as_published(PublishedCase c) => CheckStar(c, Of(c));

    private static ExactRiemann Of(PublishedCase c)
    {
        double K(string side) => c.Inputs.ContainsKey("gamma" + side) ? c.In("gamma" + side) : 1.4;
        return new(
            new(c.In("rho_l"), c.In("u_l"), c.In("p_l")),
            new(c.In("rho_r"), c.In("u_r"), c.In("p_r")),
            K("_l"), K("_r"));
    }

    private static void CheckStar(PublishedCase c, ExactRiemann exact)
    {
        c.Check("p_star", exact.StarPressure);
        c.Check("u_star", exact.StarVelocity);
        c.Check("rho_star_left", exact.StarDensityLeft);
        c.Check("rho_star_right", exact.StarDensityRight);
    }

    private static void Near(PublishedCase c, string key, int i, double got)
    {
        var expected = c.Expected[key]!.AsArray()[i]!.GetValue<double>();
        var off = expected == 0 ? Math.Abs(got) : Math.Abs(got / expected - 1);
        Assert.True(off <= c.Tolerance, $"{c.Id} ({c.Source}): {key}[{i}] expected {expected:R}, got {got:R}, off by {off:E2}");
    }
}
