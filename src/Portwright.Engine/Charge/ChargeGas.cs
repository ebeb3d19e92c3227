namespace Portwright.Engine.Charge;

/// <summary>Fresh and burnt gas mixed, by the mass fraction of burnt gas.</summary>
/// <param name="Fresh">Usually air: the vapour of the fuel is counted as air.</param>
public sealed record ChargeGas(HeatCurve Fresh, HeatCurve Burnt)
{
    /// <summary>Air, and what a fuel leaves at a richness.</summary>
    /// <param name="richness">Ratio of the fuel to the fuel that just burns, 0.3 to 1.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">Richness is not 0.3 to 1.5.</exception>
    public static ChargeGas Of(Fuel fuel, double richness = 1) => new(HeatCurve.Air, Composition.Burnt(fuel, richness).Heat());

    /// <summary>One gas with constant heat capacity, fresh or burnt.</summary>
    /// <param name="heatCapacityRatio">k, no unit, above 1 and below 2.</param>
    /// <param name="gasConstant">J/(kg K), above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range of <see cref="HeatCurve.Constant"/>.</exception>
    public static ChargeGas Constant(double heatCapacityRatio, double gasConstant)
    {
        var one = HeatCurve.Constant(heatCapacityRatio, gasConstant);
        return new(one, one);
    }

    /// <summary>R, J/(kg K).</summary>
    /// <param name="burnt">Mass fraction, 0 to 1.</param>
    public double GasConstant(double burnt) => (1 - burnt) * Fresh.GasConstant + burnt * Burnt.GasConstant;

    /// <summary>cp, J/(kg K).</summary>
    /// <param name="temperature">K.</param>
    /// <param name="burnt">Mass fraction of burnt gas, 0 to 1.</param>
    public double HeatCapacity(double temperature, double burnt) => (1 - burnt) * Fresh.HeatCapacity(temperature) + burnt * Burnt.HeatCapacity(temperature);

    /// <summary>h above 298.15 K, J/kg.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="burnt">Mass fraction of burnt gas, 0 to 1.</param>
    public double Enthalpy(double temperature, double burnt) => (1 - burnt) * Fresh.Enthalpy(temperature) + burnt * Burnt.Enthalpy(temperature);

    /// <summary>h - R T, J/kg.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="burnt">Mass fraction of burnt gas, 0 to 1.</param>
    public double InternalEnergy(double temperature, double burnt) => Enthalpy(temperature, burnt) - GasConstant(burnt) * temperature;

    /// <summary>cp/(cp - R), no unit.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="burnt">Mass fraction of burnt gas, 0 to 1.</param>
    public double HeatCapacityRatio(double temperature, double burnt)
    {
        var cp = HeatCapacity(temperature, burnt);
        return cp / (cp - GasConstant(burnt));
    }

    /// <summary>m/s.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="burnt">Mass fraction of burnt gas, 0 to 1.</param>
    public double SoundSpeed(double temperature, double burnt) => Math.Sqrt(HeatCapacityRatio(temperature, burnt) * GasConstant(burnt) * temperature);

    /// <summary>Temperature of gas with an internal energy, K, by Newton's rule to about 1e-11 of itself; no allocation.</summary>
    /// <param name="energy">J/kg.</param>
    /// <param name="burnt">Mass fraction, 0 to 1.</param>
    /// <param name="guess">K, above zero; the closer, the fewer rounds.</param>
    /// <exception cref="ArithmeticException">There is no temperature between 50 and 6000 K.</exception>
    public double Temperature(double energy, double burnt, double guess)
    {
        var t = guess;
        var r = GasConstant(burnt);
        // A loop of its own, not Root: measured five times as fast (half a microsecond), and asked at every step of every cylinder.
        for (var i = 0; i < 40; i++)
        {
            // Both curves blended once a round: enthalpy and heat capacity then come from one row of coefficients.
            ReadOnlySpan<double> f = Fresh.Row(t), b = Burnt.Row(t);
            double c5 = f[5] + burnt * (b[5] - f[5]), c4 = f[4] + burnt * (b[4] - f[4]), c3 = f[3] + burnt * (b[3] - f[3]);
            double c2 = f[2] + burnt * (b[2] - f[2]), c1 = f[1] + burnt * (b[1] - f[1]), c0 = f[0] + burnt * (b[0] - f[0]) - r;
            var u = t * (c0 + t * (c1 + t * (c2 + t * (c3 + t * c4)))) + c5;
            var cv = c0 + t * (2 * c1 + t * (3 * c2 + t * (4 * c3 + t * 5 * c4)));
            var off = (u - energy) / cv;
            t = Math.Clamp(t - off, 50, 6000);
            // Newton's error goes by its square, times the bend of u, about 1e-4/K: a move of 1e-5 leaves 1e-11.
            if (Math.Abs(off) < 1e-5 * t) return t;
        }

        throw new ArithmeticException($"No temperature between 50 and 6000 K has {energy} J/kg with {burnt} burnt.");
    }
}
