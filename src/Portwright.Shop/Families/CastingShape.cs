using Portwright.Shop.Judgement;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Families;

/// <summary>What all sister ports of a job share: the casting's shape. It is told once for all of them, without a chance, and is no port's fault.</summary>
public static class CastingShape
{
    /// <summary>Ports that must share a thing before it is the casting's; our own choice.</summary>
    public const int FewestPorts = 3;

    /// <summary>A shared fall from the peak, as a logarithm, from which it is worth telling; judgement.</summary>
    public const double FallWorthTelling = 0.01;

    /// <summary>A shared local speed over even air's, as a logarithm either way, from which it is worth telling; judgement.</summary>
    public const double AirWorthTelling = 0.2;

    /// <summary>In sentences; empty where nothing is shared that is worth telling.</summary>
    /// <param name="ports">Of a job, each at one cut.</param>
    public static IReadOnlyList<Sentence> Of(IReadOnlyList<PortSurvey> ports)
    {
        ArgumentNullException.ThrowIfNull(ports);
        return [.. ports.GroupBy(p => (p.Sheet.Port.Fact.Kind, Received: p.Sheet.Cut.Fact.Number == 0))
            .Where(g => g.Count() >= FewestPorts)
            .SelectMany(g => Fall([.. g], Who(g.Key.Kind, g.Key.Received)).Concat(Air([.. g], Who(g.Key.Kind, g.Key.Received))))];
    }

    private static string Who(PortKind kind, bool received) => $"{(kind == PortKind.Intake ? "intakes" : "exhausts")} {(received ? "as received" : "as cut")}";

    private static IEnumerable<Sentence> Fall(IReadOnlyList<PortSurvey> ports, string who)
    {
        var falls = ports.Select(p => p.Sheet.Flow?.Curve).OfType<FlowCurve>().Select(FallOf).OfType<(double Peak, double Last, double Log)>().ToList();
        if (falls.Count >= FewestPorts && Family.Median([.. falls.Select(f => f.Log)]) is < -FallWorthTelling and var fall)
        {
            yield return $"The {falls.Count} {who} all fall off at high lift, past {Quantity.Lift(Family.Median([.. falls.Select(f => f.Peak)]))} by {Quantity.Share(1 - Math.Exp(fall)).About(2)} to {Quantity.Lift(Family.Median([.. falls.Select(f => f.Last)]))} on the middle: the casting's shape.";
        }
    }

    private static (double Peak, double Last, double Log)? FallOf(FlowCurve curve)
    {
        var points = curve.Flowing.ToList();
        return points.Count < FlowAgainstSisters.FewestLifts || points.MaxBy(p => p.EffectiveArea.Value) is not { } peak ? null
            : (peak.Lift, points[^1].Lift, Math.Log(points[^1].EffectiveArea.Value / peak.EffectiveArea.Value));
    }

    private static IEnumerable<Sentence> Air(IReadOnlyList<PortSurvey> ports, string who)
    {
        var read = ports.SelectMany((p, i) => PlaceRead.AllOf(p).Select(place => (Port: i, Place: place, Best: place.Said.Best)))
            .Where(r => r.Best is not null)
            .GroupBy(r => (r.Place.Station.Letter, Bearing: Math.Round(r.Place.Bearing * 2) / 2));
        foreach (var place in read)
        {
            double[] logs = [.. place.GroupBy(r => r.Port).Select(g => g.Last().Best!.Value.Mean)];
            if (logs.Length >= FewestPorts && Math.Abs(Family.Median(logs)) > AirWorthTelling)
            {
                var middle = Family.Median(logs);
                yield return $"At {place.Key.Letter}, {Bearings.Words(place.Key.Bearing)}, the air is {(middle < 0 ? "slow" : "fast")} in all {logs.Length} {who} read there, {Quantity.Share(Math.Exp(middle)).About(2)} of even air: the casting's shape.";
            }
        }
    }
}
