namespace Portwright.Engine.Charge;

/// <summary>A gas of fixed composition: its gas constant and its heat capacity over temperature, for each kilogram.</summary>
/// <remarks>
/// Ideal gas. Enthalpy is counted from 298.15 K; internal energy is h - R T, so that it is -R 298.15 K there and a mass carried in with its enthalpy needs no correction.
/// Valid from 200 to 3500 K.
/// </remarks>
public sealed class HeatCurve
{
    // h = T (c0 + c1 T + c2 T^2 + c3 T^3 + c4 T^4) + c5: the coefficients of cp, each divided by its place, so that one row gives both without a division.
    private readonly double[] _low, _high;

    private HeatCurve(double gasConstant, double[] low, double[] high)
    {
        GasConstant = gasConstant;
        (this._low, this._high) = (low, high);
        for (var i = 1; i < 5; i++)
        {
            low[i] /= i + 1;
            high[i] /= i + 1;
        }

        // The last place turns the enthalpy from the elements into the one above the datum.
        EnthalpyAtDatum = Enthalpy(Species.Datum);
        low[5] -= EnthalpyAtDatum;
        high[5] -= EnthalpyAtDatum;
    }

    /// <summary>Dry air as 78.12 percent nitrogen, 20.95 oxygen and 0.93 argon by volume.</summary>
    public static HeatCurve Air { get; } = Of((Species.Nitrogen, Composition.NitrogenInAir), (Species.Oxygen, Composition.OxygenInAir), (Species.Argon, Composition.ArgonInAir));

    /// <summary>J/(kg K).</summary>
    public double GasConstant { get; }

    /// <summary>Enthalpy from the elements at 298.15 K, J/kg.</summary>
    public double EnthalpyAtDatum { get; }

    /// <summary>A mixture by amount (mol, any scale).</summary>
    /// <param name="parts">Moles of each gas: only their ratio counts, so in any unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is below zero, or all are zero.</exception>
    public static HeatCurve Of(params ReadOnlySpan<(Species Gas, double Amount)> parts)
    {
        double mass = 0, amount = 0;
        double[] low = new double[6], high = new double[6];
        foreach (var (gas, n) in parts)
        {
            Require.NotNegative(n, nameof(parts), "mol");
            mass += n * gas.MolarMass;
            amount += n;
            for (var i = 0; i < 6; i++)
            {
                low[i] += n * gas.Low[i];
                high[i] += n * gas.High[i];
            }
        }

        var perMass = Species.GasConstant / Require.Positive(mass, nameof(parts), "mol in all");
        for (var i = 0; i < 6; i++) (low[i], high[i]) = (low[i] * perMass, high[i] * perMass);
        return new(amount * perMass, low, high);
    }

    /// <summary>A gas whose heat capacity does not change with temperature.</summary>
    /// <param name="heatCapacityRatio">k, above 1 and below 2, no unit.</param>
    /// <param name="gasConstant">J/(kg K), above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static HeatCurve Constant(double heatCapacityRatio, double gasConstant)
    {
        if (!(heatCapacityRatio > 1 && heatCapacityRatio < 2)) Require.Refuse(heatCapacityRatio, nameof(heatCapacityRatio), "above 1 and below 2");
        var cp = Require.Positive(gasConstant, nameof(gasConstant), "J/(kg K)") * heatCapacityRatio / (heatCapacityRatio - 1);
        return new(gasConstant, [cp, 0, 0, 0, 0, 0], [cp, 0, 0, 0, 0, 0]);
    }

    /// <summary>cp, J/(kg K).</summary>
    /// <param name="temperature">K.</param>
    public double HeatCapacity(double temperature)
    {
        var a = Row(temperature);
        return a[0] + temperature * (2 * a[1] + temperature * (3 * a[2] + temperature * (4 * a[3] + temperature * 5 * a[4])));
    }

    /// <summary>h above 298.15 K, J/kg.</summary>
    /// <param name="temperature">K.</param>
    public double Enthalpy(double temperature)
    {
        var a = Row(temperature);
        return temperature * (a[0] + temperature * (a[1] + temperature * (a[2] + temperature * (a[3] + temperature * a[4])))) + a[5];
    }

    /// <summary>h - R T, J/kg.</summary>
    /// <param name="temperature">K.</param>
    public double InternalEnergy(double temperature) => Enthalpy(temperature) - GasConstant * temperature;

    /// <summary>cp/(cp - R), no unit.</summary>
    /// <param name="temperature">K.</param>
    public double HeatCapacityRatio(double temperature)
    {
        var cp = HeatCapacity(temperature);
        return cp / (cp - GasConstant);
    }

    /// <summary>The six coefficients of enthalpy that hold at a temperature.</summary>
    internal ReadOnlySpan<double> Row(double temperature) => temperature <= Species.Middle ? _low : _high;
}
