using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Reduction;

/// <summary>How a list of lifts is gone through.</summary>
public enum PassPattern
{
    /// <summary>As it is listed. A list in which a lift comes again has its passes in it.</summary>
    AsListed,

    /// <summary>There and back.</summary>
    UpAndDown,

    UpDownUp,

    /// <summary>From the first lift again.</summary>
    UpAndUp,
}

/// <summary>Which way the valve goes from lift to lift.</summary>
public enum PassWay
{
    Opening,
    Closing,
}

/// <summary>Some lifts to be read once more at another pressure.</summary>
public sealed record LiftsAgain(IReadOnlyList<Typed> Lifts, Typed TestPressure);

/// <summary>A test as what is set, one setting after another.</summary>
public sealed record TestRun(IReadOnlyList<RunStep> Steps)
{
    /// <summary>The run of a sweep; one that states no steps goes through its lifts as they are listed.</summary>
    public static TestRun Of(Sweep sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return sweep.Steps is { Count: > 0 } steps ? new(steps) : Of(sweep.Lifts);
    }

    /// <summary>Lifts as they are listed. Where one comes again, a pass ends at each lift where the valve turns round and before one it already holds.</summary>
    public static TestRun Of(IReadOnlyList<Typed> lifts)
    {
        ArgumentNullException.ThrowIfNull(lifts);
        var comesAgain = lifts.Select((l, i) => lifts.Take(i).Any(o => Same(o, l))).Any(again => again);
        var steps = new List<RunStep>(lifts.Count);
        var (pass, way) = (1, 0);
        for (var i = 0; i < lifts.Count; i++)
        {
            var turn = i == 0 || Same(lifts[i - 1], lifts[i]) ? 0 : Math.Sign(Si(lifts[i]) - Si(lifts[i - 1]));
            if (comesAgain && (turn * way < 0 || steps.Any(s => s.Pass == pass && Same(s.Lift, lifts[i]))))
            {
                // Back to the first lift is a turn of the screw and no reading: the second lift of a pass says which way it goes.
                (pass, way) = (pass + 1, 0);
            }
            else if (turn != 0)
            {
                way = turn;
            }

            steps.Add(new RunStep(lifts[i], pass));
        }

        return new(steps);
    }

    /// <summary>The lifts gone through by a pattern, then some again at other pressures. The lift at which the valve turns round is read once.</summary>
    public static TestRun Of(IReadOnlyList<Typed> lifts, PassPattern pattern, IEnumerable<LiftsAgain> again)
    {
        ArgumentNullException.ThrowIfNull(lifts);
        ArgumentNullException.ThrowIfNull(again);
        Typed[] back = [.. lifts.Reverse().Skip(1)], forth = [.. lifts.Skip(1)];
        IReadOnlyList<IReadOnlyList<Typed>> passes = pattern switch
        {
            PassPattern.UpAndDown => [lifts, back],
            PassPattern.UpDownUp => [lifts, back, forth],
            PassPattern.UpAndUp => [lifts, lifts],
            _ => [],
        };
        List<RunStep> steps = passes.Count == 0 ? [.. Of(lifts).Steps] : [.. passes.SelectMany((p, i) => p.Select(l => new RunStep(l, i + 1)))];
        foreach (var group in again)
        {
            // A list that holds a lift twice is so many passes.
            var after = steps.Count == 0 ? 0 : steps.Max(s => s.Pass);
            steps.AddRange(Of(group.Lifts).Steps.Select(s => new RunStep(s.Lift, after + s.Pass, group.TestPressure)));
        }

        return new(steps);
    }

    /// <summary>The sweep with this run.</summary>
    public Sweep On(Sweep sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        var lifts = Lifts;
        return sweep with { Lifts = lifts, Steps = lifts.Count == Steps.Count && Steps.All(s => s is { Pass: 1, TestPressure: null }) ? null : Steps };
    }

    /// <summary>Each lift once, in the order first set.</summary>
    public IReadOnlyList<Typed> Lifts => [.. Steps.Select(s => s.Lift).Where((l, i) => !Steps.Take(i).Any(s => Same(s.Lift, l)))];

    /// <summary>How many passes are made at the sweep's own pressure.</summary>
    public int Passes => Steps.Where(s => s.TestPressure is null).Select(s => s.Pass).Distinct().Count();

    /// <summary>Which of those it is, from 1.</summary>
    public int PlaceOf(RunStep step) => Steps.Where(s => s.TestPressure is null).Select(s => s.Pass).Distinct().TakeWhile(p => p != step.Pass).Count() + 1;

    /// <summary>Which way the valve goes in the pass of a step; a pass of one lift goes the way that led to it.</summary>
    public PassWay WayOf(RunStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        var first = Steps.TakeWhile(s => s.Pass != step.Pass).Count();
        var last = Steps.LastOrDefault(s => s.Pass == step.Pass) ?? step;
        if (first >= Steps.Count) return PassWay.Opening;
        var from = ReferenceEquals(Steps[first], last) && first > 0 ? Steps[first - 1] : Steps[first];
        return Si(last.Lift) < Si(from.Lift) ? PassWay.Closing : PassWay.Opening;
    }

    internal static double Si(Typed lift) => lift.Si(Dimension.Lift);

    internal static bool Same(Typed lift, Typed other) => LiftGroups.Same(Si(lift), Si(other));
}
