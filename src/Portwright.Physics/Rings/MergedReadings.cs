using System.Collections.Immutable;
using Portwright.Geometry;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Rings;

/// <summary>Readings by place: those of one place enter the map as their mean.</summary>
internal sealed class MergedReadings
{
    private readonly ProbeReading[][] _places;

    public MergedReadings(Outline outline, IEnumerable<ProbeReading> readings)
    {
        _places = [.. readings.GroupBy(r => r.Place, r => r).Select(g => g.ToArray())];
        X = [.. _places.Select(p => p[0].Place.X)];
        Y = [.. _places.Select(p => p[0].Place.Y)];
        Speeds = [.. _places.Select(p => p.Average(r => r.Speed))];
        Distances = [.. _places.Select(p => outline.DistanceToWall(p[0].Place))];
    }

    public double[] X { get; }

    public double[] Y { get; }

    public double[] Speeds { get; }

    public double[] Distances { get; }

    /// <summary>What each reading puts in doubt about a figure with these sensitivities to the places.</summary>
    public ImmutableArray<Contribution>.Builder Contributions(double[] sensitivities)
    {
        var doubts = ImmutableArray.CreateBuilder<Contribution>();
        for (var i = 0; i < _places.Length; i++)
        {
            foreach (var r in _places[i])
                doubts.Add(new(r.Source, sensitivities[i] * r.StandardUncertainty / _places[i].Length, r.DegreesOfFreedom, ContributionKind.Repeat));
        }
        return doubts;
    }
}
