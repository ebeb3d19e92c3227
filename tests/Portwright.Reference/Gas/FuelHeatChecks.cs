using Portwright.Engine.Charge;

namespace Portwright.Reference.Gas;

/// <summary>
/// Lower heating values in the Hydrogen Analysis Resource Center's table (Lower and Higher Heating Values of Hydrogen and Fuels):
/// conventional gasoline 43.438, methanol 20.089, ethanol 26.945 MJ/kg. Another source than the program's own; a petrol differs from the next by a percent.
/// </summary>
public sealed class FuelHeatChecks
{
    [Fact]
    public void A_fuel_gives_the_heat_another_table_has()
    {
        Near(43.438e6, Fuel.Petrol, 0.015);
        Near(20.089e6, Fuel.Methanol, 0.005);
        Near(26.945e6, Fuel.Ethanol, 0.002);
    }

    private static void Near(double heat, Fuel fuel, double within) => Assert.Equal(heat, fuel.HeatingValue, heat * within);
}
