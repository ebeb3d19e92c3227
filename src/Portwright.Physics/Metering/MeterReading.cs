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

    /// <param name="massFlow">kg/s; below zero gives a reading below zero.</param>
    /// <param name="upstream">Air at the meter's inlet, whatever the reading.</param>
    /// <exception cref="ArgumentOutOfRangeException">The meter cannot pass that flow from that state.</exception>
    public static double For(IMeter meter, double massFlow, in AirState upstream)
    {
        var state = upstream;
        return Solve(meter, massFlow, _ => state);
    }

    /// <summary>The same on a bench, where the meter's inlet pressure may hold the meter's own differential.</summary>
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

        // ln(flow) over ln(reading) is nearly a straight line for every meter (slope 1/2 or 1): a secant in logarithms, kept inside a bracket.
        var pressureAtRest = upstream(0).Pressure;
        double low = 0, high = double.PositiveInfinity, reading = 1e-3, lastX = double.NaN, lastY = double.NaN;
        for (var i = 0; i < 400; i++)
        {
            if (PastTheFormula(reading))
            {
                high = Math.Min(high, reading);
                if (low > 0 && high / low - 1 < 1e-12)
                    Require.Refuse(massFlow, nameof(massFlow), "within what the meter can pass from that state, in kg/s");
                reading = low > 0 ? Math.Sqrt(low * high) : reading / 16;
                continue;
            }
            double x = Math.Log(reading), y = Math.Log(meter.Flow(reading, upstream(reading)).MassFlow / target);
            if (Math.Abs(y) < 1e-15) break;
            if (y < 0) low = Math.Max(low, reading);
            else high = Math.Min(high, reading);

            var slope = (y - lastY) / (x - lastX);
            if (!(slope is > 0.05 and < 20)) slope = 0.7;
            (lastX, lastY) = (x, y);
            var next = reading * Math.Exp(Math.Clamp(-y / slope, -12, 12));
            if (!(next > low && next < high))
                next = low > 0 && !double.IsInfinity(high) ? Math.Sqrt(low * high) : low > 0 ? low * 16 : high / 16;
            // Rounding of the flow itself is the floor: a last step of one unit in the last place changes nothing.
            if (Math.Abs(y) < 4e-15 || next == reading) break;
            reading = next;
        }
        return Math.CopySign(reading, massFlow);

        bool PastTheFormula(double r)
        {
            var differential = meter.Differential(r);
            return differential > pressureAtRest / LargestDifferentialShare
                || differential > LargestDifferentialShare * upstream(r).Pressure;
        }
    }
}
