using Portwright.Engine.Runs;
using Portwright.Shop.Units;

namespace Portwright.Shop.Runs;

/// <summary>One thing of the engine a porter may vary, in the terms the plan states it.</summary>
/// <param name="Key">Short name for an address.</param>
/// <param name="Name">As a porter says it.</param>
/// <param name="Dimension">In which its values are typed and printed.</param>
/// <param name="Now">The value the engine has, SI.</param>
/// <param name="By">What the study's axis takes for a value.</param>
public sealed record StudyWay(StudyAxis Axis, string Key, string Name, Dimension Dimension, Func<EngineQuestion, double> Now, Func<EngineQuestion, double, double> By)
{
    public static readonly IReadOnlyList<StudyWay> All =
    [
        Added(StudyAxis.IntakeLength, "runner", "intake runner length", Dimension.Length, q => q.Plan.Intake.RunnerLength.Value),
        Added(StudyAxis.ExhaustLength, "primary", "exhaust primary length", Dimension.Length, q => q.Plan.Exhaust.PrimaryLength.Value),
        new(StudyAxis.IntakeSection, "intake-section", "all intake sections, of now", Dimension.Fraction, _ => 1, (_, v) => v),
        new(StudyAxis.ExhaustSection, "exhaust-section", "all exhaust sections, of now", Dimension.Fraction, _ => 1, (_, v) => v),
        new(StudyAxis.IntakeLater, "intake-later", "intake cam later by", Dimension.Angle, _ => 0, (_, v) => v),
        new(StudyAxis.ExhaustLater, "exhaust-later", "exhaust cam later by", Dimension.Angle, _ => 0, (_, v) => v),
        Times(StudyAxis.IntakeValve, "intake-valve", "intake valve, port alike", q => q.Plan.IntakeValve.Value),
        Times(StudyAxis.ExhaustValve, "exhaust-valve", "exhaust valve, port alike", q => q.Plan.ExhaustValve.Value),
        Added(StudyAxis.Compression, "compression", "compression ratio", Dimension.Ratio, q => q.Plan.CompressionRatio.Value),
    ];

    public static StudyWay? Find(string? key) => All.FirstOrDefault(w => w.Key == key);

    private static StudyWay Added(StudyAxis axis, string key, string name, Dimension dimension, Func<EngineQuestion, double> now) => new(axis, key, name, dimension, now, (q, v) => v - now(q));

    private static StudyWay Times(StudyAxis axis, string key, string name, Func<EngineQuestion, double> now) => new(axis, key, name, Dimension.Length, now, (q, v) => v / now(q));
}

/// <summary>One thing varied evenly between two values.</summary>
/// <param name="Steps">Values it takes, 2 to <see cref="MostSteps"/>.</param>
public sealed record StudySpan(StudyWay Way, double From, double To, int Steps)
{
    public const int MostSteps = 9;

    public IReadOnlyList<double> Values => [.. Enumerable.Range(0, Steps).Select(i => From + (To - From) * i / (Steps - 1))];
}
