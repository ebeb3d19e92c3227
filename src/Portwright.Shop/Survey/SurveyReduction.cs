using Portwright.Geometry.LongView;
using Portwright.Geometry.Schedules;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Balls;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Rings;
using Portwright.Shop.Sections;
using Portwright.Shop.Sheets;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Survey;

/// <summary>Gathers a survey: the latest section of each station, the rings and balls of the cut, the metal that is left.</summary>
internal static class SurveyReduction
{
    public static PortSurvey Reduce(Reductions reductions, PortSheet sheet)
    {
        var ledger = reductions.Ledger;
        var remarks = new List<Sentence>();
        var stations = ledger.All<Station>().Where(s => s.Fact.Port == sheet.Port.Id).OrderBy(s => s.Fact.Distance).ToList();
        var sections = new Dictionary<Guid, ReducedSection>();
        var problems = new Dictionary<Guid, string>();
        foreach (var station in stations)
        {
            if (ReducedSection.Latest(ledger, station, sheet.Cut, out var problem) is { } section)
            {
                sections[station.Id] = section;
            }
            else if (problem.Length > 0)
            {
                problems[station.Id] = problem;
                remarks.Add($"Section {station.Fact.Letter}: {problem}");
            }
        }

        foreach (var old in sections.Values.Where(s => s.Of.Id != sheet.Cut.Id))
        {
            remarks.Add($"Section {old.Station.Fact.Letter} was last measured at cut {old.Of.Fact.Number}; metal cut there since does not show.");
        }

        var rings = ledger.All<Ring>().Where(r => r.Fact.Cut == sheet.Cut.Id && sections.ContainsKey(r.Fact.Station))
            .Select(r => RingReduction.Reduce(reductions, r, sections[r.Fact.Station])).ToList();
        var checks = BallsTogether.Judge([.. ledger.All<BallCheck>().Where(b => b.Fact.Cut == sheet.Cut.Id)
            .Select(b => BallReduction.Reduce(reductions, b, sections))]);
        var flags = ledger.All<FlagReading>().Where(f => f.Fact.Cut == sheet.Cut.Id).ToList();
        var walls = WallState.Of(ledger, sheet.Cut, sheet.Head.Fact.Material);
        var surveyed = stations.Select(s => new SurveyedStation(
            s,
            sections.GetValueOrDefault(s.Id),
            problems.GetValueOrDefault(s.Id, ""),
            [.. rings.Where(r => r.Station.Id == s.Id)],
            [.. checks.SelectMany(c => c.Places).Where(p => p.Station.Id == s.Id)],
            [.. flags.Where(f => f.Fact.Station == s.Id)],
            [.. walls.Where(w => w.Station.Id == s.Id)])).ToList();
        var (centreline, own) = CentrelineOf(ledger, sheet);
        if (ProfileOf(sheet, centreline, sections.Values) is not { } profile)
        {
            remarks.Add($"The middle line bends more tightly than the port is high: the usual one is drawn. Look at its length, its straight and its angle.");
            (centreline, own) = (Usual(sheet), false);
            profile = ProfileOf(sheet, centreline, []) ?? throw new InvalidOperationException("The usual port always makes a profile.");
        }

        var schedule = ScheduleOf(sections.Values, remarks);
        var volume = VolumeOf(ledger, sheet);
        remarks.AddRange(rings.Where(r => r.Problem.Length > 0).Select(r => (Sentence)$"Ring {r.Station.Fact.Letter}: {r.Problem}"));
        remarks.AddRange(checks.SelectMany(c => c.Remarks).Select(Sentence.Plain));
        var survey = new PortSurvey(
            sheet,
            centreline,
            own,
            profile,
            surveyed,
            schedule,
            volume is null || schedule is null ? null : GapOf(volume, schedule, own ? centreline.Length : null, remarks),
            volume,
            checks,
            [.. remarks.Distinct()],
            CylinderMate.Of(reductions, sheet.Port))
        {
            Engine = PlanReading.Of(reductions, sheet.Job.Id),
        };
        survey = survey with { Remarks = [.. survey.Remarks, .. PastSound(survey)] };
        var unsure = surveyed.Where(survey.IsUnsure).Select(s => s.Name).ToList();
        return unsure.Count == 0 ? survey : survey with
        {
            Remarks = [.. survey.Remarks, $"Say what {string.Join(" and ", unsure)} {(unsure.Count == 1 ? "is" : "are")}: throat, bowl, short side, guide or another place. Until then any thin metal found there stops every cut of throat and bowl."],
        };
    }

    /// <summary>Sections that could not pass what the bench measured, or the plan asks, below the speed of sound: the smallest of each.</summary>
    private static IEnumerable<Sentence> PastSound(PortSurvey survey)
    {
        if (survey is { LiftThatCounts: { } lift, FlowThatCounts: { Value: > 0 } flow }
            && survey.Sections.Where(s => survey.StreamAt(s) is null).MinBy(s => s.Area.Value) is { } swept)
        {
            yield return $"Section {swept.Station.Fact.Letter}, {Quantity.Area(swept.Area.Value)}, cannot pass the {Quantity.Flow(flow.Value)} read at lift {Quantity.Lift(lift)} below the speed of sound. Look at the section's numbers and their unit, and at the range of the sweep.";
        }

        if (survey.Sections.Where(survey.OutrunsSound).MinBy(s => s.Area.Value) is { } asked)
        {
            yield return $"The plan's engine would draw air through section {asked.Station.Fact.Letter}, {Quantity.Area(asked.Area.Value)}, faster than sound: that cannot be. Look at the section's numbers, and at bore, stroke and highest speed of the plan.";
        }
    }

    private static (Geometry.LongView.Centreline Line, bool Own) CentrelineOf(Ledger ledger, PortSheet sheet)
    {
        if (ledger.All<Record.Centreline>().LastOrDefault(c => c.Fact.Port == sheet.Port.Id) is { Fact: { Length: > 0 } own })
        {
            var straight = Math.Clamp(own.Straight, 0, own.Length);
            // A port without a bend is a line whose arc is too short to see.
            return own.Turn > 0.01 && straight < own.Length
                ? (new Geometry.LongView.Centreline(straight, (own.Length - straight) / own.Turn, own.Turn), true)
                : (new Geometry.LongView.Centreline(own.Length, own.Length, 0), true);
        }

        return (Usual(sheet), false);
    }

    private static Geometry.LongView.Centreline Usual(PortSheet sheet) =>
        GenericPort.Centreline(UsualShape.Side(sheet.Port.Fact), UsualShape.ValveDiameter(sheet.Port.Fact));

    /// <summary>Null where the line bends so tightly that the floor would lie past the middle of its arc.</summary>
    private static PortProfile? ProfileOf(PortSheet sheet, Geometry.LongView.Centreline line, IEnumerable<ReducedSection> sections)
    {
        ProfileStation[] measured = [.. sections
            .Where(s => s.Station.Fact.Distance >= 0 && s.Station.Fact.Distance <= line.Length)
            .Select(s => ProfileStation.Of(s.Station.Fact.Distance, s.Shape, s.Station.Fact.Letter))];
        var filled = GenericPort.Fill(UsualShape.Side(sheet.Port.Fact), UsualShape.ValveDiameter(sheet.Port.Fact), line, measured);
        return PortProfile.TryCreate(line, filled, out var profile, out _) || PortProfile.TryCreate(
            line, GenericPort.Stations(UsualShape.Side(sheet.Port.Fact), UsualShape.ValveDiameter(sheet.Port.Fact), line), out profile, out _)
            ? profile
            : null;
    }

    private static AreaSchedule? ScheduleOf(IEnumerable<ReducedSection> sections, List<Sentence> remarks)
    {
        AreaStation[] areas = [.. sections.Select(s => new AreaStation(
            s.Station.Fact.Distance,
            s.Area.Value,
            Math.Sqrt(s.Area.Contributions.Where(c => c.Source != Sources.Caliper).Sum(c => c.Amount * c.Amount)),
            s.Station.Fact.Letter))];
        if (areas.Length < 2)
        {
            return null;
        }

        if (AreaSchedule.TryCreate(areas, out var schedule, out var problem))
        {
            return schedule;
        }

        remarks.Add(Sentence.Plain(problem));
        return null;
    }

    /// <summary>What the burette gave at this cut, brought to its standard temperature.</summary>
    private static Estimate? VolumeOf(Ledger ledger, PortSheet sheet)
    {
        if (ledger.All<VolumeReading>().LastOrDefault(v => v.Fact.Cut == sheet.Cut.Id) is not { } reading || reading.Fact.Volume.Si(Units.Dimension.Volume) is not (> 0 and var volume))
        {
            return null;
        }

        var metal = sheet.Head.Fact.Material.Contains("iron", StringComparison.OrdinalIgnoreCase) ? BuretteVolume.CastIron : BuretteVolume.CastAluminium;
        var celsius = reading.Fact.Liquid?.Si(Units.Dimension.Temperature) - 273.15 ?? BuretteVolume.StandardTemperature;
        return Estimate.Exact(BuretteVolume.FromReading(volume, Math.Clamp(celsius, 0, 60), BuretteVolume.Borosilicate, metal))
            .With(new Contribution(Sources.Burette(reading.Id), BuretteDoubt, double.PositiveInfinity, ContributionKind.Geometry));
    }

    /// <summary>
    /// The burette fills from flange to seat: the end sections are carried that far where they lie within a tenth of the port of it.
    /// </summary>
    private static VolumeGap? GapOf(Estimate volume, AreaSchedule schedule, double? own, List<Sentence> remarks)
    {
        if (own is not { } length)
        {
            remarks.Add($"The burette's volume is not held against the sections before the middle line is the port's own: give its length.");
            return null;
        }

        var (first, last) = (schedule.Stations[0], schedule.Stations[^1]);
        if (first.Distance > length / 10 || last.Distance < length * 0.9)
        {
            remarks.Add($"The sections do not reach from flange to seat: their volume is not held against the burette's. Measure one near each end.");
            return null;
        }

        AreaStation[] ends = [.. first.Distance > 0 ? [first with { Distance = 0, Name = "flange" }] : Array.Empty<AreaStation>(), .. last.Distance < length ? [last with { Distance = length, Name = "seat" }] : Array.Empty<AreaStation>()];
        var whole = new AreaSchedule([.. schedule.Stations, .. ends]);
        return new VolumeGap(SectionVolume.Of(whole, ReducedSection.CaliperScale), volume.Value, Math.Sqrt(volume.Variance + Math.Pow(volume.Value / length * DistanceDoubt, 2)));
    }

    /// <summary>Standard uncertainty of a burette's volume, m3 (half a cc: plate sealed with grease, a bubble, the meniscus); common practice, no source.</summary>
    internal const double BuretteDoubt = 0.5e-6;

    /// <summary>Standard uncertainty of the length along the middle line, m: a bent wire laid in the port; common practice, no source.</summary>
    private const double DistanceDoubt = 0.001;
}
