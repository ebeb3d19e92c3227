using System.Collections.Immutable;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Rings;

public sealed partial class VelocityMap
{
    /// <summary>
    /// Speed at some of the readings over what they would show if the air were even: the same mean, the same law at the wall, one core speed.
    /// Above 1 the place carries more than its area. The probe's factor cancels, and so do the readings' own doubts as far as the mean has them.
    /// </summary>
    /// <param name="readings">Indices into <see cref="Readings"/>, at least one, none on the wall.</param>
    /// <exception cref="ArgumentException">No reading is named.</exception>
    public Estimate OverEven(IReadOnlyList<int> readings)
    {
        if (readings.Count == 0) throw new ArgumentException("Speed over even air needs at least one reading.", nameof(readings));
        double[] depths = [.. readings.Select(i => Outline.DistanceToWall(Readings[i].Place))];
        double Share(int k, double exponent) => WallLayer.Share(depths[k], _cells.Deepest, exponent);
        double Core(double exponent) => readings.Select((i, k) => Readings[i].Speed / Share(k, exponent)).Average();
        const double step = 0.01;
        double Slope(Func<double, double> of) => (of(Wall.Exponent + step) - of(Wall.Exponent - step)) / (2 * step) * Wall.ExponentUncertainty;
        var core = Core(Wall.Exponent);
        var doubts = ImmutableArray.CreateBuilder<Contribution>();
        for (var k = 0; k < readings.Count; k++)
        {
            var r = Readings[readings[k]];
            doubts.Add(new(r.Source, r.StandardUncertainty / Share(k, Wall.Exponent) / readings.Count, r.DegreesOfFreedom, ContributionKind.Repeat));
        }
        doubts.Add(new(_factor.Source, core * _factor.RelativeUncertainty, _factor.DegreesOfFreedom, ContributionKind.Calibration));
        doubts.Add(new(ExponentSource, Slope(Core), Shape: InputShape.Rectangular));
        var part = new Estimate(EvenShare(Wall.Exponent), [new(ExponentSource, Slope(EvenShare), Shape: InputShape.Rectangular)]);
        return Estimate.Ratio(new Estimate(core, doubts.DrainToImmutable()).Multiply(part), Mean);
    }

    /// <summary>Mean speed over core speed of even air.</summary>
    private double EvenShare(double exponent) => SumOf(_cells.Area, _cells.WallShares(exponent));
}
