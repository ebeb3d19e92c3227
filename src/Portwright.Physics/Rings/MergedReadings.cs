using System.Collections.Immutable;
using Portwright.Geometry;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Rings;

/// <summary>Readings by place: those of one place enter the map as their mean.</summary>
internal sealed class MergedReadings
{
    private readonly ProbeReading[][] places;

    public MergedReadings(Outline outline, IEnumerable<ProbeReading> readings)
    {
        places = [.. readings.GroupBy(r => r.Place, r => r).Select(g => g.ToArray())];
        X = [.. places.Select(p => p[0].Place.X)];
        Y = [.. places.Select(p => p[0].Place.Y)];
        Speeds = [.. places.Select(p => p.Average(r => r.Speed))];
        Distances = [.. places.Select(p => outline.DistanceToWall(p[0].Place))];
    }

    public double[] X { get; }

    public double[] Y { get; }

    public double[] Speeds { get; }

    public double[] Distances { get; }

    /// <summary>What each reading puts in doubt about a figure with these sensitivities to the places.</summary>
    public ImmutableArray<Contribution>.Builder Contributions(double[] sensitivities)
    {
        var doubts = ImmutableArray.CreateBuilder<Contribution>();
        for (var i = 0; i < places.Length; i++)
        {
            foreach (var r in places[i])
                doubts.Add(new(r.Source, sensitivities[i] * r.StandardUncertainty / places[i].Length, r.DegreesOfFreedom, ContributionKind.Repeat));
        }
        return doubts;
    }
}
