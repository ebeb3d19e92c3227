using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Metering;

/// <summary>Which reading a meter shows at a mass flow: the meter backwards, to about 1e-14 relative.</summary>
public static class MeterReading
{
    /// <summary>
    /// Past a differential of this share of the upstream pressure the expansibility formula makes flow fall again: no reading is looked for there.
    /// </summary>
    private const double LargestDifferentialShare = 0.6;

    /// <summary>The reading, in the unit each meter states.</summary>
    /// <param name="massFlow">kg/s; below zero gives a reading below zero.</param>
    /// <param name="upstream">Air at the meter's inlet, whatever the reading.</param>
    /// <exception cref="ArgumentOutOfRangeException">The meter cannot pass that flow from that state.</exception>
    public static double For(IMeter meter, double massFlow, in AirState upstream)
    {
        var state = upstream;
        return Solve(meter, massFlow, _ => state);
    }

    /// <summary>The same on a bench, where the meter's inlet pressure may hold the meter's own differential, in the unit each meter states.</summary>
    /// <param name="massFlow">kg/s; below zero gives a reading below zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The meter cannot pass that flow from that state.</exception>
    public static double For(IMeter meter, double massFlow, in TestConditions conditions)
    {
        var bench = conditions;
        return Solve(meter, massFlow, reading => bench.MeterUpstream(meter.Differential(reading)));
    }

    private static double Solve(IMeter meter, double massFlow, Func<double, AirState> upstream)
    {
        if (!double.IsFinite(massFlow)) Require.Refuse(massFlow, nameof(massFlow), "a finite number, in kg/s");
        if (massFlow == 0) return 0;
        var target = Math.Abs(massFlow);

        var pressureAtRest = upstream(0).Pressure;
        double low = 1e-3, past = double.PositiveInfinity;
        while (PastTheFormula(low) || Excess(low) > 0) low /= 16;
        var high = low;
        while (Excess(high) < 0)
        {
            var next = 16 * high < past ? 16 * high : Math.Sqrt(high * past);
            if (!PastTheFormula(next)) (low, high) = (high, next);
            else if ((past = next) / high - 1 < 1e-12)
                Require.Refuse(massFlow, nameof(massFlow), "within what the meter can pass from that state, in kg/s");
        }

        // ln(flow) over ln(reading) is nearly a straight line for every meter (slope 1/2 or 1).
        return Math.CopySign(Math.Exp(Root.Between(x => Excess(Math.Exp(x)), Math.Log(low), Math.Log(high))), massFlow);

        double Excess(double r) => Math.Log(meter.Flow(r, upstream(r)).MassFlow / target);

        bool PastTheFormula(double r)
        {
            var differential = meter.Differential(r);
            return differential > pressureAtRest / LargestDifferentialShare
                || differential > LargestDifferentialShare * upstream(r).Pressure;
        }
    }
}
