using Portwright.Engine.Charge;
using Portwright.Engine.Cylinder;
using Portwright.Physics.Crank;

namespace Portwright.Reference.Engines;

/// <summary>Efficiency of the cycle whose heat all comes at top dead centre: Heywood (1988), equation 5.31.</summary>
public sealed class IdealCycleChecks
{
    public static TheoryData<PublishedCase> Cycles => [.. PublishedCases.Read("valve-port-engine", "otto-")];

    /// <summary>The cylinder itself, burning for one and for two degrees: what is short goes by the square of the angle, which leaves the limit.</summary>
    [Theory, MemberData(nameof(Cycles))]
    public void Cylinder_that_burns_ever_faster_tends_to_the_published_efficiency(PublishedCase c)
    {
        double Efficiency(double degrees)
        {
            const int steps = 18_000;
            var plan = new CylinderPlan(new(0.09, new SliderCrank(0.08, 0.135), c.In("compression_ratio")), ChargeGas.Constant(1.4, 287.05), 0, 4 * Math.PI)
            {
                Burn = WiebeBurn.About(2 * Math.PI, degrees * Math.PI / 180),
                HeatOfFresh = 2.5e6,
            };
            CylinderGas gas = new(plan, 50, Math.PI, 1e5, 320);
            for (var i = 0; i < steps; i++) gas.Step(1 / (50.0 * steps), ValveFlow.None);
            return gas.Totals.Work / gas.Totals.HeatSetFree;
        }

        double one = Efficiency(1), two = Efficiency(2);
        c.Check("efficiency", one, 1e-4);
        c.Check("efficiency", one + (one - two) / 3, 1e-5);
    }
}
