using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>A step of a run with what was read for it: the first reading, and those that read it again.</summary>
public sealed record StepRead(RunStep Step, IReadOnlyList<Kept<FlowReading>> Readings);

/// <summary>How far a run has come: which step each reading belongs to, and which is next.</summary>
/// <param name="Steps">In the order asked.</param>
/// <param name="Readings">All that stand, in the order taken.</param>
/// <param name="Outside">Those of lifts the run does not ask for.</param>
public sealed record RunWalk(Kept<Sweep> Sweep, TestRun Run, IReadOnlyList<StepRead> Steps, IReadOnlyList<Kept<FlowReading>> Readings, IReadOnlyList<Kept<FlowReading>> Outside)
{
    public static RunWalk Of(Ledger ledger, Kept<Sweep> sweep)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(sweep);
        var run = TestRun.Of(sweep.Fact);
        var readings = ledger.ReadingsOf(sweep.Id);
        var places = Places(run.Steps, [.. readings.Select(r => r.Fact)]);
        return new RunWalk(
            sweep,
            run,
            [.. run.Steps.Select((s, i) => new StepRead(s, [.. readings.Where((_, k) => places[k] == i)]))],
            readings,
            [.. readings.Where((_, k) => places[k] is null)]);
    }

    /// <summary>Steps without a reading, in the order asked.</summary>
    public IEnumerable<RunStep> Left => Steps.Where(s => s.Readings.Count == 0).Select(s => s.Step);

    /// <summary>What is to be set now; null when the run is done.</summary>
    public RunStep? Next => Left.FirstOrDefault();

    /// <summary>
    /// The step each reading belongs to; null for a lift the run does not ask for. One that states its pass belongs to that pass. For the others: the lift just read, read again without being
    /// asked for again, is the step just read; else the first step of the lift that is still open, one of another pressure only where the reading states one; else the last step of the lift.
    /// </summary>
    /// <param name="readings">Those that stand, in the order taken.</param>
    public static IReadOnlyList<int?> Places(IReadOnlyList<RunStep> steps, IReadOnlyList<FlowReading> readings)
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(readings);
        var read = new bool[steps.Count];
        var places = new List<int?>(readings.Count);
        int? just = null;
        foreach (var reading in readings)
        {
            int[] ofLift = [.. Enumerable.Range(0, steps.Count).Where(i => TestRun.Same(steps[i].Lift, reading.Lift))];
            int[] ofPass = [.. ofLift.Where(i => steps[i].Pass == reading.Pass)];
            var place = ofPass.Length > 0 ? First(ofPass.Where(i => !read[i])) ?? ofPass[^1] : ByOrder(ofLift, reading);
            places.Add(place);
            if (place is not { } at) continue;
            read[at] = true;
            just = at;
        }

        return places;

        int? ByOrder(int[] ofLift, FlowReading reading)
        {
            var next = Array.IndexOf(read, false);
            if (just is { } last && ofLift.Contains(last) && !ofLift.Contains(next)) return last;
            return First(ofLift.Where(i => !read[i] && (steps[i].TestPressure is null || reading.TestPressure is not null)))
                ?? (ofLift.LastOrDefault(i => read[i], -1) is >= 0 and var again ? again : null);
        }

        static int? First(IEnumerable<int> of) => of.Cast<int?>().FirstOrDefault();
    }
}
