using Portwright.Geometry.Schedules;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Walls;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>The port's shape: its sections with the air in them, its volume, the metal left.</summary>
internal static class ShapeSaid
{
    public static Part? Of(PortAtCut port)
    {
        var survey = port.Survey;
        if (survey.Stations.Count == 0) return null;
        List<Block> blocks = [new Figure("long-view", FigureKind.LongView, Drawn(survey))];
        var measured = survey.Stations.Where(s => s.Section is not null).ToList();
        if (measured.Count > 0) blocks.Add(Sections(survey, measured));
        if (survey.Schedule is { } schedule)
            blocks.Add(new Figure("area-along-port", FigureKind.AreaSchedule, $"Area along the port, flange to seat: smallest at {schedule.Smallest.Name}, {Quantity.Area(schedule.Smallest.Area)}."));
        if (survey.Volume is { } gap)
            blocks.Add(new Values("volumes", [new("burette-less-sections", $"burette less sections", $"{new Quantity(gap.Difference, Dimension.Volume, 2 * gap.Standard, Signed: true)}")]));
        if (survey.Stations.Any(s => s.Walls.Count > 0)) blocks.Add(Thinnest(survey));
        return new Part("shape", $"The port's shape and the air in it", blocks);
    }

    /// <summary>How much of what is drawn was measured.</summary>
    private static Sentence Drawn(PortSurvey survey)
    {
        var sections = survey.Sections.Count();
        Sentence line = survey.CentrelineIsOwn ? (Sentence)$"On its own middle line, {Quantity.Length(survey.Centreline.Length)} long" : $"On the usual middle line, not measured";
        return sections == 0
            ? (Sentence)$"{line}; no section was measured yet, the outline is the usual one."
            : $"{line}; {FlowSaid.Count(sections, "section")} measured, between them the usual outline.";
    }

    private static Table Sections(PortSurvey survey, List<SurveyedStation> measured)
    {
        var valve = survey.Sheet.Port.Fact.Valve;
        return new Table(
            "sections",
            survey.LiftThatCounts is { } lift ? $"Sections; mean speed at lift {Quantity.Lift(lift)} in standard air" : (Sentence)$"Sections",
            [
                new("station", $"section"), new("distance", $"from flange", Dimension.Length), new("area", $"area", Dimension.Area, Strong: true), new("share", $"of the valve, by area", Dimension.Fraction),
                new("speed", $"speed", Dimension.Speed), new("evenness", $"evenness"), new("closure", $"ring less bench", Dimension.Fraction),
            ],
            [.. measured.Select(s => (IReadOnlyList<Cell>)
            [
                new(Sentence.Plain(s.Name)),
                new($"{Quantity.Length(s.Distance)}"),
                new($"{Quantity.Of(s.Section!.Area, Dimension.Area).By(PortNumber.SectionKey(s))}"),
                valve is null ? Cell.Empty : new($"{Quantity.Share(AreaSchedule.ShareOfValve(s.Section.Area.Value, valve.HeadDiameter)).About(2)}"),
                survey.StreamAt(s.Section) is { } stream ? new($"{Quantity.Speed(stream.Speed).About(3)}") : Cell.Empty,
                s.Ring?.Map is { } map ? new($"{map.UniformityIndex:0.00}") : Cell.Empty,
                s.Ring?.Closure is { } closure
                    ? new($"{new Quantity(closure.Relative, Dimension.Fraction, closure.RelativeExpanded, Signed: true)}{(closure.IsInside ? "" : ", outside its doubt")}")
                    : Cell.Empty,
            ])],
            TakenOff(measured));
    }

    /// <summary>What stands in the sections and was taken off, each with its area; and what is left for the air to rub on.</summary>
    private static Sentence TakenOff(List<SurveyedStation> measured)
    {
        List<Sentence> said = [.. measured.Where(s => s.Section!.InAir.Count > 0).Select(s => (Sentence)
            $"In {s.Name} {Sentence.Join(" and ", s.Section!.InAir.Select(i => (Sentence)$"{i.Name} ({Quantity.Area(i.Area)})"))} {(s.Section.InAir.Count == 1 ? "stands" : "stand")} in the air, taken off its area; hydraulic diameter {Quantity.Length(s.Section.HydraulicDiameter)}.")];
        return said.Count == 0 ? Sentence.Empty : Sentence.Join(" ", said);
    }

    /// <summary><c>stem and guide boss</c>.</summary>
    internal static string And(IEnumerable<string> names) => string.Join(" and ", names);

    /// <summary>The thinnest place of each section, and every place that stops a cut or soon will.</summary>
    private static Table Thinnest(PortSurvey survey) => Walls("walls", $"Metal left where it is least", survey,
        s => s.Walls.Where(w => w.Stops || w.IsNearlyAtLimit || w == s.Walls.MinBy(v => v.Left)));

    /// <summary>Each section drawn with what was seen round it, and every wall point.</summary>
    public static Part RoundEach(PortAtCut port)
    {
        var survey = port.Survey;
        // Sound metal stands in the table; it needs no drawing of its own.
        List<Block> blocks = [.. survey.Stations.Where(s => s.Ring is not null || s.Balls.Count > 0 || s.Flags.Count > 0 || s.Walls.Any(w => w.Stops))
            .Select(s => new Figure($"section-{s.Letter.ToLowerInvariant()}", FigureKind.Section, StationSaid.Of(s, survey), s.Station.Id))];
        if (survey.Stations.Any(s => s.Walls.Count > 0)) blocks.Add(Walls("wall-points", $"Every wall point", survey, s => s.Walls));
        return new Part("round-each-section", $"Round each section", blocks, Reader.Engineer);
    }

    private static Table Walls(string key, Sentence caption, PortSurvey survey, Func<SurveyedStation, IEnumerable<WallState>> of) => new(
        key,
        caption,
        [new("place", $"place"), new("thickness", $"metal", Dimension.Length, Strong: true), new("limit", $"limit", Dimension.Length), new("behind", $"behind it"), new("measured", $"measured"), new("answer", $"")],
        [.. survey.Stations.SelectMany(s => of(s).Select(w => (IReadOnlyList<Cell>)
        [
            new($"{s.Letter}, {Bearings.Words(w.Point.Fact.Bearing)}"),
            new($"{new Quantity(w.Thickness, Dimension.Length, 2 * WallState.ThicknessDoubt)}"),
            new($"{Quantity.Length(w.Limit)}"),
            new(Sentence.Plain(WallLimit.Short(w.Point.Fact.Behind))),
            new($"at cut {w.MeasuredAt}"),
            new(w.Stops ? (Sentence)$"leave it" : w.IsNearlyAtLimit ? (Sentence)$"nearly at its limit" : Sentence.Empty),
        ]))],
        $"A limit is the shop's own where it states one, else common practice. Metal cut since it was measured is not taken off.");
}
