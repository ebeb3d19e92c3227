using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Words;

namespace Portwright.Shop.Runs;

/// <summary>What the engine run says of a pair of ports.</summary>
/// <param name="Points">At the drawn speeds.</param>
/// <param name="TorqueDoubt">Standard uncertainty that the bench's doubts leave in each point's torque, N m: what the model does not know is not in it.</param>
/// <param name="Worth">Of areas and sections, one cylinder breathing alone.</param>
/// <param name="MeanTorque">Over the plan's range with its weights, N m, with the bench's doubts.</param>
public sealed record EngineAnswer(
    EngineQuestion Question, IReadOnlyList<OperatingPoint> Points, IReadOnlyList<double> TorqueDoubt, WorthCurve Worth, Estimate MeanTorque)
{
    /// <summary>Said beside every result.</summary>
    public static readonly IReadOnlyList<Sentence> NotKnown =
    [
        $"A calculation, not a dynamometer: combustion, mixture, ignition and the state of the engine are put in, not measured.",
        $"The difference between two ports in the same engine is firmer than the power itself.",
        $"The doubt shown is the bench's alone.",
    ];

    /// <summary>Speeds, rpm, at which a run's cycles did not come to repeat: what rests on them is no more than a hint.</summary>
    public IReadOnlyList<double> Unsettled { get; init; } = [];

    /// <summary>What the reader must know of this answer before using it; empty where all is well.</summary>
    public Sentence Warning => Unsettled.Count == 0 ? Sentence.Empty
        : $"At {string.Join(", ", Unsettled.Select(n => n.ToString("0", System.Globalization.CultureInfo.InvariantCulture)))} rpm the cycles did not come to repeat: take torque and worth there as a hint. Check lengths and sections of the pipes.";

    public OperatingPoint BestTorque => Points.MaxBy(p => p.Torque)!;

    public OperatingPoint BestPower => Points.MaxBy(p => p.Power)!;

    /// <summary>This answer less an earlier one of the same engine with other ports: what a cut brought.</summary>
    public Difference Less(EngineAnswer before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return Comparison.Compare(before.MeanTorque, MeanTorque);
    }

    /// <summary>Mean torque a suggested cut should bring, N m: its gain of flow, as a share, at each lift it acts on.</summary>
    /// <param name="kind">Of the port the cut is made in; all cylinders are cut alike.</param>
    /// <returns>Null where no lift of the run lies in its range.</returns>
    public Estimate? TorqueOf(CutSuggestion suggestion, Record.PortKind kind)
    {
        ArgumentNullException.ThrowIfNull(suggestion);
        var curve = Question.Pair.Of(kind)?.Sheet.Flow?.Curve;
        var worth = (kind == Record.PortKind.Intake ? Worth.Intake : Worth.Exhaust).Where(w => w.Lift >= suggestion.FromLift - 1e-6 && w.Lift <= suggestion.ToLift + 1e-6).ToList();
        if (curve is null || worth.Count == 0) return null;
        var flow = worth.Average(w => curve.PointAt(w.Lift)?.Flow.Value ?? 0);
        return flow > 0 ? suggestion.Gain * (worth.Sum(w => w.Torque) / flow) : null;
    }
}
