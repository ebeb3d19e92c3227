namespace Portwright.Engine.Runs;

/// <summary>What effective area at one measured lift is worth.</summary>
/// <param name="Lift">m.</param>
/// <param name="Area">As measured, m2.</param>
/// <param name="Torque">Mean torque over the range gained for a relative gain in area at this lift alone: dT/d ln A, N m for the whole engine. A percent gives a hundredth of it.</param>
public readonly record struct LiftWorth(double Lift, double Area, double Torque)
{
    /// <summary>N m for each m2 at this lift.</summary>
    public double PerArea => Area > 0 ? Torque / Area : 0;
}

/// <summary>What the section at one station is worth.</summary>
/// <param name="Distance">From the valve seat, m.</param>
/// <param name="Area">m2.</param>
/// <param name="Torque">dT/d ln(section), N m for the whole engine; the sections between neighbours change along.</param>
public readonly record struct SectionWorth(double Distance, double Area, double Torque);

/// <summary>What a gain here or there is worth to this engine: slopes of the weighted mean torque.</summary>
/// <remarks>
/// Central differences of whole runs, each settled far closer than the change looked at. The area at one measured lift is changed alone, the curve between lifts follows. Slopes hold for small
/// changes: up to about a tenth of the area they foretell a real run closely, beyond it run the engine.
/// </remarks>
/// <param name="Torque">Weighted mean over the range, N m, whole engine.</param>
/// <param name="Power">Weighted mean over the range, W.</param>
public sealed record WorthCurve(
    SpeedRange Range, double Torque, double Power, IReadOnlyList<LiftWorth> Intake, IReadOnlyList<LiftWorth> Exhaust, IReadOnlyList<SectionWorth> IntakeSections, IReadOnlyList<SectionWorth> ExhaustSections)
{
    /// <summary>Half the change in the logarithm of an area between the two runs of a slope.</summary>
    private const double Nudge = 0.01;

    /// <summary>Runs are settled until no more than a ten-thousandth of a nudge is left.</summary>
    public static readonly Settling Close = new(1e-6, 100);

    /// <summary>The runs the slopes are taken from: the design as it is over the range, then each change down and up.</summary>
    public static IReadOnlyList<EngineTask> Tasks(EngineDesign design, SpeedRange range)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(range);
        List<EngineTask> tasks = [.. range.Tasks(design, Close)];
        foreach (var nudge in Nudges(design))
        {
            tasks.AddRange(range.Tasks(nudge(Math.Exp(-Nudge)), Close));
            tasks.AddRange(range.Tasks(nudge(Math.Exp(Nudge)), Close));
        }

        return tasks;
    }

    /// <summary>The slopes from what those runs gave, in the order of <see cref="Tasks"/>.</summary>
    public static WorthCurve From(EngineDesign design, SpeedRange range, IReadOnlyList<OperatingPoint> points)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(range);
        ArgumentNullException.ThrowIfNull(points);
        var speeds = range.TurnsASecond.Count;
        double Torque(int run) => range.Mean([.. points.Skip(run * speeds).Take(speeds).Select(p => p.Torque)]);
        var nudge = 0;
        double NextSlope() => (Torque(2 * ++nudge) - Torque(2 * nudge - 1)) / (2 * Nudge);
        LiftWorth[] Lifts(MeasuredAreas areas) => [.. areas.Lifts.Select((l, i) => new LiftWorth(l, areas.WithTheStream[i], NextSlope()))];
        SectionWorth[] Sections(Tract tract) => [.. tract.Stations.Select(s => new SectionWorth(s.Distance, s.Area, NextSlope()))];
        LiftWorth[] intake = Lifts(design.Intake.Areas), exhaust = Lifts(design.Exhaust.Areas);
        return new(
            range, Torque(0), range.Mean([.. points.Take(speeds).Select(p => p.Power)]), intake, exhaust, Sections(design.Intake.Tract), Sections(design.Exhaust.Tract));
    }

    /// <summary>Change in mean torque foretold for new areas at the same lifts, N m.</summary>
    /// <param name="newAreas">m2, one a lift.</param>
    /// <exception cref="ArgumentException">A row has another length than the curve.</exception>
    public static double Foretold(IReadOnlyList<LiftWorth> worth, IReadOnlyList<double> newAreas)
    {
        ArgumentNullException.ThrowIfNull(worth);
        ArgumentNullException.ThrowIfNull(newAreas);
        if (worth.Count != newAreas.Count) throw new ArgumentException($"{worth.Count} lifts need as many areas.", nameof(newAreas));
        return worth.Select((w, i) => w.Torque * Math.Log(newAreas[i] / w.Area)).Sum();
    }

    private static IEnumerable<Func<double, EngineDesign>> Nudges(EngineDesign design)
    {
        foreach (var lift in design.Intake.Areas.Lifts)
            yield return by => design with { Intake = design.Intake with { Areas = design.Intake.Areas.Scaled(l => l == lift ? by : 1) } };
        foreach (var lift in design.Exhaust.Areas.Lifts)
            yield return by => design with { Exhaust = design.Exhaust with { Areas = design.Exhaust.Areas.Scaled(l => l == lift ? by : 1) } };
        for (var i = 0; i < design.Intake.Tract.Stations.Count; i++)
        {
            var at = i;
            yield return by => design with { Intake = design.Intake with { Tract = Section(design.Intake.Tract, at, by) } };
        }

        for (var i = 0; i < design.Exhaust.Tract.Stations.Count; i++)
        {
            var at = i;
            yield return by => design with { Exhaust = design.Exhaust with { Tract = Section(design.Exhaust.Tract, at, by) } };
        }
    }

    private static Tract Section(Tract tract, int at, double by) =>
        tract with { Stations = [.. tract.Stations.Select((s, i) => i == at ? s with { Area = s.Area * by } : s)] };
}
