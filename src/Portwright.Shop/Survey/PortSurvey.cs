using Portwright.Geometry.LongView;
using Portwright.Geometry.Schedules;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Balls;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sections;
using Portwright.Shop.Sheets;
using Portwright.Shop.Words;

namespace Portwright.Shop.Survey;

/// <summary>Everything observed in one port at one cut, put on the metal it belongs to: what findings, drawings and pages read.</summary>
/// <param name="Sheet">Flow, window, comparison and morning of the same cut.</param>
/// <param name="Centreline">The port's own, else the generic one.</param>
/// <param name="CentrelineIsOwn">False where the generic centreline stands in.</param>
/// <param name="Profile">Floor and roof in the long view; generic where not measured.</param>
/// <param name="Stations">By distance from the flange.</param>
/// <param name="Schedule">Areas along the centreline; null with fewer than two sections.</param>
/// <param name="PortVolume">By burette, m3, at the burette's standard temperature; null where it was not filled.</param>
/// <param name="Volume">Burette against sections; null where one is missing.</param>
/// <param name="BallChecks">In the order taken.</param>
/// <param name="Remarks">In sentences.</param>
/// <param name="Mates">The other ports of the same cylinder of this head.</param>
public sealed record PortSurvey(
    PortSheet Sheet,
    Geometry.LongView.Centreline Centreline,
    bool CentrelineIsOwn,
    PortProfile Profile,
    IReadOnlyList<SurveyedStation> Stations,
    AreaSchedule? Schedule,
    VolumeGap? Volume,
    Estimate? PortVolume,
    IReadOnlyList<ReducedBallCheck> BallChecks,
    IReadOnlyList<Sentence> Remarks,
    IReadOnlyList<CylinderMate> Mates)
{
    /// <summary>The job's plan in full, what was assumed marked.</summary>
    public PlanReading Engine { get; init; } = new(null, []);

    /// <summary>The lift findings look at first: the cam's where tested, else the highest tested, m; null before a sweep.</summary>
    public double? LiftThatCounts => Sheet.Cam is { Flow: not null } cam ? cam.Lift : Sheet.Flow?.Curve.HighestLift;

    /// <summary>Flow (m3/s restated) at <see cref="LiftThatCounts"/>.</summary>
    public Estimate? FlowThatCounts => LiftThatCounts is { } lift ? Sheet.Flow?.Curve.At(lift) : null;

    /// <summary>The mean stream in a section at <see cref="LiftThatCounts"/>, the port tested in standard air as its flow is restated; null before a sweep, or where it would be sonic.</summary>
    public SectionStream? StreamAt(ReducedSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        if (FlowThatCounts is not { Value: > 0 } flow || Sheet.Flow is not { Curve: var curve })
        {
            return null;
        }

        var conditions = new TestConditions(curve.Air.State, curve.RestatedAt, curve.Direction);
        return SectionStream.Of(flow.Value * curve.Air.Density, section.Area.Value, conditions.TestPieceUpstream);
    }

    /// <summary>
    /// Mean air speed of the intake stroke in a section at the plan's highest engine speed, m/s, by continuity: mean piston speed times
    /// piston area over the section, two intakes of a cylinder taken alike. Null for an exhaust, where the plan does not say, or where it would
    /// be faster than sound (<see cref="OutrunsSound"/>).
    /// </summary>
    public double? DemandSpeedIn(ReducedSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return OutrunsSound(section) ? null : DemandFlow / section.Area.Value;
    }

    /// <summary>True where the plan asks for more air through a section than sound is fast: by continuity no air can.</summary>
    public bool OutrunsSound(ReducedSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return DemandFlow / section.Area.Value >= (Sheet.Bench?.Fact.StandardAir ?? new AirCard()).Air().State.SpeedOfSound;
    }

    /// <summary>
    /// Section area at which the air of the intake stroke moves at the speeds the plan wants, m2, least and most. Null for an exhaust, or
    /// where the plan does not say.
    /// </summary>
    public (double Least, double Most)? AreaWanted =>
        DemandFlow is { } flow && Sheet.Job.Fact.Plan.PortSpeed is { From: > 0, To: > 0 } band ? (flow / band.To, flow / band.From) : null;

    /// <summary>Mean volume flow of this intake over its stroke at the plan's highest engine speed, m3/s.</summary>
    private double? DemandFlow => Sheet.Port.Fact.Kind == PortKind.Intake
        && Sheet.Job.Fact.Plan is { Bore: > 0 and var bore, Stroke: > 0 and var stroke, HighestSpeed: > 0 and var speed }
        ? InletMachIndex.MeanPistonSpeed(stroke, speed / 60) * Math.PI / 4 * bore * bore / Intakes
        : null;

    /// <summary>Intakes the cylinder breathes through.</summary>
    public int Intakes => 1 + Mates.Count(m => m.Port.Fact.Kind == PortKind.Intake);

    public IEnumerable<BallPlace> Balls => BallChecks.SelectMany(c => c.Places);

    public IEnumerable<ReducedSection> Sections => Stations.Select(s => s.Section).OfType<ReducedSection>();

    /// <summary>The station that is this to the port; null where none is known to be.</summary>
    public SurveyedStation? At(StationRole role) => Stations.FirstOrDefault(s => s.Role == role);

    /// <summary>
    /// Stations that are the throat or the bowl, or may be: in or past the bend, and nothing says what they are. A guard over metal counts
    /// them in.
    /// </summary>
    public IEnumerable<SurveyedStation> PerhapsThroatOrBowl => Stations.Where(s => s.Role is StationRole.Throat or StationRole.Bowl || IsUnsure(s));

    /// <summary>True where neither the station's role nor its name says what it is, and it lies where throat and bowl do.</summary>
    public bool IsUnsure(SurveyedStation station)
    {
        ArgumentNullException.ThrowIfNull(station);
        return station.Role is null && (station.Distance >= Centreline.Length || Centreline.CurvatureAt(station.Distance) > 0);
    }

    /// <summary>Stations of the bend, where the air turns down to the seat: the last part of the centreline, by its curvature.</summary>
    public IEnumerable<SurveyedStation> InTheBend => Stations.Where(s => s.Distance <= Centreline.Length && Centreline.CurvatureAt(s.Distance) > 0);

    /// <summary>The survey of a cut; the port's latest cut where none is named.</summary>
    /// <exception cref="KeyNotFoundException">No such port, or it has no cut.</exception>
    public static PortSurvey Of(Ledger ledger, Guid port, Guid? cut = null) => Of(new Reductions(ledger), port, cut);

    /// <inheritdoc cref="Of(Ledger, Guid, Guid?)"/>
    public static PortSurvey Of(Reductions reductions, Guid port, Guid? cut = null)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        PortSurvey Make() => SurveyReduction.Reduce(reductions, PortSheet.Of(reductions, port, cut)) with { SistersRead = new(() => SisterPorts.Of(reductions, port, cut)) };
        // One port's sheet asks for its sisters, and theirs for it: each is surveyed once.
        return (cut ?? reductions.Ledger.CutsOf(port).LastOrDefault()?.Id) is { } named ? reductions.Once(named, Make) : Make();
    }

    /// <summary>
    /// The other ports of this kind in the job, as far on as this one: as received where it is as received, at their latest tested cut where it was cut. Made when
    /// first asked for.
    /// </summary>
    public IReadOnlyList<PortSurvey> Sisters => SistersRead.Value;

    private readonly System.Collections.Concurrent.ConcurrentDictionary<Type, object> _remembered = [];

    /// <summary>What is worked out from this survey alone and asked for by several rules: made once a type.</summary>
    internal T Remembered<T>(Func<T> make)
        where T : class => (T)_remembered.GetOrAdd(typeof(T), static (_, make) => make(), make);

    internal Lazy<IReadOnlyList<PortSurvey>> SistersRead { get; init; } = new(() => []);
}
