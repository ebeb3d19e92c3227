using Portwright.Physics.Statistics;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Rings;

/// <summary>Flow of a map against flow of the bench. A closure outside its doubt says something about the measurement, not about the port.</summary>
/// <param name="MapFlow">Mean speed x area x density, kg/s.</param>
/// <param name="BenchFlow">kg/s.</param>
/// <param name="Difference">Map less bench, kg/s; causes they share have cancelled.</param>
/// <param name="PValue">Two-sided chance of a difference this large when both are right; 1 where nothing is in doubt and nothing differs.</param>
/// <param name="Level">Of the verdict, no unit.</param>
public sealed record MapClosure(Estimate MapFlow, Estimate BenchFlow, Estimate Difference, double PValue, double Level)
{
    /// <summary>True where the difference is within its expanded uncertainty at the level.</summary>
    public bool IsInside => PValue > 1 - Level;

    /// <summary>Difference over the bench's flow, no unit.</summary>
    public double Relative => Difference.Value / BenchFlow.Value;

    /// <summary>Standard uncertainty of the difference over the bench's flow, no unit.</summary>
    public double RelativeStandard => Difference.StandardUncertainty / BenchFlow.Value;

    /// <summary>Expanded uncertainty of the difference over the bench's flow, no unit.</summary>
    public double RelativeExpanded => Difference.Expanded(Level) / BenchFlow.Value;

    /// <param name="meanSpeed">Area-weighted mean normal to the section, m/s.</param>
    /// <param name="area">Normal to the air, m2.</param>
    /// <param name="density">Of the air in the section (static), kg/m3.</param>
    /// <param name="benchFlow">Mass flow through the port while the ring was read, leak taken off, kg/s.</param>
    /// <param name="level">Above 0 and below 1, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above zero, or the level not between 0 and 1.</exception>
    public static MapClosure Of(Estimate meanSpeed, Estimate area, Estimate density, Estimate benchFlow, double level = 0.95)
    {
        Require.Positive(meanSpeed.Value, nameof(meanSpeed), "m/s");
        Require.Positive(area.Value, nameof(area), "m2");
        Require.Positive(density.Value, nameof(density), "kg/m3");
        Require.Positive(benchFlow.Value, nameof(benchFlow), "kg/s");
        if (!(level > 0 && level < 1)) Require.Refuse(level, nameof(level), "above 0 and below 1");
        var map = meanSpeed.Multiply(area).Multiply(density);
        var difference = map.Subtract(benchFlow);
        var u = difference.StandardUncertainty;
        var p = u > 0 ? Student.TwoSidedP(difference.Value / u, difference.EffectiveDegreesOfFreedom) : difference.Value == 0 ? 1 : 0;
        return new(map, benchFlow, difference, p, level);
    }
}
