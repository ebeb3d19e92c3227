namespace Portwright.Engine.Runs;

/// <summary>What a study may vary.</summary>
public enum StudyAxis
{
    /// <summary>From the flange out, m added to the pipe's length.</summary>
    IntakeLength,

    /// <summary>Factor on all sections of the intake.</summary>
    IntakeSection,

    /// <summary>m added.</summary>
    ExhaustLength,

    /// <summary>Factor on all sections of the exhaust.</summary>
    ExhaustSection,

    /// <summary>rad of crank, later.</summary>
    IntakeLater,

    /// <summary>rad of crank, later.</summary>
    ExhaustLater,

    /// <summary>Factor on the intake valve's diameter, port alike: area s^2 A(L/s).</summary>
    IntakeValve,

    /// <summary>The same for the exhaust.</summary>
    ExhaustValve,

    /// <summary>Added to the compression ratio.</summary>
    Compression,
}

/// <summary>One thing varied, and the values it takes.</summary>
/// <param name="Values">One a variation, in the unit of what is varied.</param>
public sealed record Variation(StudyAxis Axis, IReadOnlyList<double> Values);

/// <summary>One combination: the value on each axis, and what came of it.</summary>
/// <param name="Values">One a variation, in the unit of what is varied.</param>
/// <param name="Torque">Weighted mean over the range, N m.</param>
/// <param name="Power">Weighted mean over the range, W.</param>
/// <param name="BestPower">W.</param>
public sealed record StudyResult(IReadOnlyList<double> Values, IReadOnlyList<OperatingPoint> Points, double Torque, double Power, double BestPower);

/// <summary>Every combination of a few variations of one design, run over a speed range.</summary>
/// <remarks>Run as one batch (<see cref="EngineBatch"/>): cancelled and begun again with kept points it goes on where it stopped.</remarks>
public sealed record Study(EngineDesign Design, SpeedRange Range, IReadOnlyList<Variation> Variations)
{
    /// <summary>Number of combinations.</summary>
    public int Count => Variations.Aggregate(1, (n, v) => n * v.Values.Count);

    /// <summary>Combinations in order, the last variation fastest, in the unit of what each varies.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Combinations() => Combine(Variations.Select(v => v.Values));

    /// <summary>Every combination of one value of each row, the last row fastest, in the unit of what each varies.</summary>
    /// <param name="rows">One a variation, in the unit of what is varied.</param>
    public static IReadOnlyList<IReadOnlyList<double>> Combine(IEnumerable<IReadOnlyList<double>> rows) =>
        [.. rows.Aggregate<IReadOnlyList<double>, IEnumerable<double[]>>([[]], (all, row) => all.SelectMany(c => row.Select(v => (double[])[.. c, v])))];

    /// <summary>The design with one value on each axis.</summary>
    /// <param name="values">One a variation, in the unit of what is varied.</param>
    /// <exception cref="ArgumentException">Not one value a variation.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public EngineDesign Variant(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count != Variations.Count) throw new ArgumentException($"{Variations.Count} variations need as many values.", nameof(values));
        return Variations.Select((v, i) => (v.Axis, Value: values[i])).Aggregate(Design, (d, v) => Vary(d, v.Axis, v.Value));
    }

    /// <summary>Every combination over the range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value makes no engine.</exception>
    public IReadOnlyList<EngineTask> Tasks() => [.. Combinations().SelectMany(c => Range.Tasks(Variant(c), Settling.Usual))];

    /// <summary>What those runs gave, in the order of <see cref="Tasks"/>.</summary>
    public IReadOnlyList<StudyResult> From(IReadOnlyList<OperatingPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var speeds = Range.TurnsASecond.Count;
        return
        [
            .. Combinations().Select((c, i) =>
            {
                OperatingPoint[] own = [.. points.Skip(i * speeds).Take(speeds)];
                return new StudyResult(c, own, Range.Mean([.. own.Select(p => p.Torque)]), Range.Mean([.. own.Select(p => p.Power)]), own.Max(p => p.Power));
            }),
        ];
    }

    private static EngineDesign Vary(EngineDesign d, StudyAxis axis, double by) => axis switch
    {
        StudyAxis.IntakeLength => d with { Intake = d.Intake with { Tract = Longer(d.Intake.Tract, by) } },
        StudyAxis.ExhaustLength => d with { Exhaust = d.Exhaust with { Tract = Longer(d.Exhaust.Tract, by) } },
        StudyAxis.IntakeSection => d with { Intake = d.Intake with { Tract = Wider(d.Intake.Tract, by) } },
        StudyAxis.ExhaustSection => d with { Exhaust = d.Exhaust with { Tract = Wider(d.Exhaust.Tract, by) } },
        StudyAxis.IntakeLater => d with { Intake = Turned(d.Intake, by) },
        StudyAxis.ExhaustLater => d with { Exhaust = Turned(d.Exhaust, by) },
        StudyAxis.IntakeValve => d with { Intake = Larger(d.Intake, by) },
        StudyAxis.ExhaustValve => d with { Exhaust = Larger(d.Exhaust, by) },
        StudyAxis.Compression => d with { Size = d.Size with { CompressionRatio = d.Size.CompressionRatio + by } },
        _ => throw new ArgumentOutOfRangeException(nameof(axis), axis, "There is no such variation."),
    };

    private static ValveSide Turned(ValveSide side, double by) => side with { Timing = side.Timing with { Later = side.Timing.Later + by } };

    private static Tract Longer(Tract tract, double by)
    {
        var last = tract.Stations[^1];
        var before = tract.Stations[^2];
        if (!(last.Distance + by > before.Distance)) Require.Refuse(by, nameof(by), $"above {before.Distance - last.Distance} m: the port itself is not shortened");
        return tract with { Stations = [.. tract.Stations.SkipLast(1), last with { Distance = last.Distance + by }] };
    }

    private static Tract Wider(Tract tract, double by) => tract with { Stations = [.. tract.Stations.Select(s => s with { Area = s.Area * by })] };

    private static ValveSide Larger(ValveSide side, double by)
    {
        var areas = side.Areas;
        return side with
        {
            Areas = new(
                [.. areas.Lifts.Select(l => l * by)], [.. areas.WithTheStream.Select(a => a * by * by)], areas.Backwards is { } back ? [.. back.Select(a => a * by * by)] : null),
        };
    }
}
