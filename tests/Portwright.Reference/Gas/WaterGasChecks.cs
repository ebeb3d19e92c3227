using Portwright.Engine.Charge;

namespace Portwright.Reference.Gas;

/// <summary>The frozen constant of CO2 + H2 = CO + H2O against the Gibbs energies of GRI-Mech 3.0 (1999).</summary>
public sealed class WaterGasChecks
{
    [Theory]
    [InlineData(1721, 0.001)]
    [InlineData(1740, 0.025)] // the temperature Heywood is said to give for 3.5
    public void A_rich_mixture_freezes_at_the_constant_of_about_1730_kelvin(double kelvin, double within)
    {
        double Gibbs(Species s) => OverRt(s.High, kelvin);
        var constant = Math.Exp(Gibbs(Species.CarbonDioxide) + Gibbs(Species.Hydrogen) - Gibbs(Species.CarbonMonoxide) - Gibbs(Species.WaterVapour));
        Assert.Equal(Composition.WaterGas, constant, Composition.WaterGas * within);
    }

    /// <summary>h/(R T) - s/R, with a7 the constant of the entropy.</summary>
    private static double OverRt(IReadOnlyList<double> a, double t) =>
        a[0] * (1 - Math.Log(t)) - t * (a[1] / 2 + t * (a[2] / 6 + t * (a[3] / 12 + t * a[4] / 20))) + a[5] / t - a[6];
}
