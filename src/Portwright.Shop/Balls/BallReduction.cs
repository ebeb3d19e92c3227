using Portwright.Geometry;
using Portwright.Physics.Drag;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sections;

namespace Portwright.Shop.Balls;

/// <summary>Reduces a ball check: each place against the reference readings around it and against even air.</summary>
internal static class BallReduction
{
    public static ReducedBallCheck Reduce(
        Reductions reductions,
        Kept<BallCheck> check,
        IReadOnlyDictionary<Guid, ReducedSection> sections)
    {
        var ledger = reductions.Ledger;
        var readings = ledger.All<BallReading>().Where(r => r.Fact.Check == check.Id).ToList();
        HeldReading held;
        List<(Kept<BallReading> Reading, Estimate Area)> areas;
        var remarks = new List<string>();
        try
        {
            held = new HeldReading(reductions, check.Fact.Cut, check.Fact.Setting, check.Fact.Air, BenchMoment.Of(ledger, check));
        }
        catch (ArgumentException trouble)
        {
            return new ReducedBallCheck(check, [], null, [Refusal.Sentence(trouble)]);
        }

        remarks.AddRange(held.Remarks);
        areas = [];
        foreach (var reading in readings)
        {
            try
            {
                areas.Add((reading, held.EffectiveArea(reading.Fact.Reading, Sources.ReadingName(reading.Id))));
            }
            catch (ArgumentException trouble)
            {
                remarks.Add($"The ball reading {reading.Fact.Reading.Text} does not count: {Refusal.Sentence(trouble)}");
            }
        }

        foreach (var none in areas.Where(a => a.Reading.Fact.Station is null && a.Area.Value <= 0))
        {
            remarks.Add($"The reading {none.Reading.Fact.Reading.Text} without the ball is no flow and does not count.");
        }

        areas.RemoveAll(a => a.Reading.Fact.Station is null && a.Area.Value <= 0);
        if (!areas.Exists(a => a.Reading.Fact.Station is null))
        {
            if (areas.Count > 0)
            {
                remarks.Add("No reading without the ball: nothing to compare with. Take the ball out and read once before and once after.");
            }

            return new ReducedBallCheck(check, [], null, remarks);
        }

        var bench = new BenchAir(reductions, check, held, Calibration(reductions, check));
        var places = areas
            .Select((a, i) => (a.Reading, Order: i))
            .Where(r => r.Reading.Fact.Station is not null && ledger.Find<Station>(r.Reading.Fact.Station.Value) is not null)
            .GroupBy(r => (Station: r.Reading.Fact.Station!.Value, r.Reading.Fact.Bearing))
            .Select(g => Place(bench, ledger.Get<Station>(g.Key.Station), g.Key.Bearing, [.. g.Select(r => r.Order)], areas, sections.GetValueOrDefault(g.Key.Station)))
            .ToList();
        var references = areas.Where(a => a.Reading.Fact.Station is null).Select(a => a.Area).ToList();
        if (references.Count == 1)
        {
            remarks.Add("Only one reading without the ball: a drift of the bench would look like a ball's loss. Read once more without it.");
        }

        return new ReducedBallCheck(
            check, places, references.Count > 1 ? BallResponse.Drift(references[0], references[^1]) : null, remarks, AfterPipe: bench.Calibration is not null);
    }

    private static BallPlace Place(
        BenchAir bench, Kept<Station> station, double? bearing, int[] orders, List<(Kept<BallReading> Reading, Estimate Area)> areas, ReducedSection? section)
    {
        var name = FormattableString.Invariant($"ball at {station.Fact.Letter} {bearing:0.##}");
        var falls = orders.Select(o => FallAt(o, areas, name)).ToArray();
        var fall = Estimate.Mean([.. falls.Select(f => f.Fall)]);
        var reference = falls.Average(f => f.Reference);
        var restated = bench.Restated(reference);
        var place = new BallPlace(
            bench.Check, station, bearing, [.. orders.Select(o => areas[o].Reading)], null, fall, fall.Scale(restated), null, null, "")
        { ReferenceFlow = restated };
        if (section is null)
        {
            return place with { Problem = $"Station {station.Fact.Letter} has no section yet: how fast the air should be there is not known. Measure it." };
        }

        var point = Middle(section.Outline, bearing, bench.Diameter.Value);
        if (bench.Held.StreamIn(section.Area.Value, reference) is not { } stream)
        {
            return place with { Point = point, Problem = $"Section {station.Fact.Letter} would be sonic at this flow: look at its area." };
        }

        var air = bench.AirAt(name, stream, section.Area, reference);
        return air.Problem is { } problem
            ? place with { Point = point, Problem = problem }
            : place with { Point = point, Air = air, PublishedDue = BallLoss.Expected(air, bench.Calibration) };
    }

    /// <summary>Fall of one reading against the references around it: all that were read in a row without the ball, before and after.</summary>
    private static (Estimate Fall, double Reference) FallAt(int order, List<(Kept<BallReading> Reading, Estimate Area)> areas, string name)
    {
        var before = InARow(areas, areas.FindLastIndex(order, a => a.Reading.Fact.Station is null), -1);
        var after = InARow(areas, areas.FindIndex(order, a => a.Reading.Fact.Station is null), 1);
        return before is { } b && after is { } a
            ? (BallResponse.MeasuredFall(b.Area, a.Area, areas[order].Area, name, (order - b.Middle) / (a.Middle - b.Middle)), (b.Area.Value + a.Area.Value) / 2)
            : ((before ?? after) is { } one ? BallResponse.MeasuredFall(one.Area, null, areas[order].Area, name) : throw new InvalidOperationException("A check has a reading without the ball."),
                (before ?? after)!.Value.Area.Value);
    }

    /// <summary>The readings without the ball from one on, their mean and where they stand on the mean; null where there is none.</summary>
    private static (Estimate Area, double Middle)? InARow(List<(Kept<BallReading> Reading, Estimate Area)> areas, int from, int way)
    {
        List<int> row = [];
        for (var i = from; i >= 0 && i < areas.Count && areas[i].Reading.Fact.Station is null; i += way)
        {
            row.Add(i);
        }

        return row.Count == 0 ? null : (Estimate.Mean([.. row.Select(i => areas[i].Area)]), row.Average());
    }

    /// <summary>A ball held at a bearing touches the wall there.</summary>
    private static PlanePoint Middle(Outline outline, double? bearing, double diameter) =>
        bearing is { } hours && outline.DepthOfCentre(hours) > diameter / 2
            ? outline.PointAt(hours, diameter / 2)
            : outline.Centroid;

    private static Physics.Drag.BallCalibration? Calibration(Reductions reductions, Kept<BallCheck> check)
    {
        var ledger = reductions.Ledger;
        var ball = check.Fact.Ball.Si(Units.Dimension.Length);
        return ledger.All<Record.BallCalibration>()
            .Where(c => c.Fact.Bench == check.Fact.Setting.Bench && Math.Abs(c.Fact.Ball.Si(Units.Dimension.Length) - ball) < 0.02 * ball)
            .Select(c => BallInPipe.Factor(reductions, c))
            .LastOrDefault(c => c is not null);
    }
}
