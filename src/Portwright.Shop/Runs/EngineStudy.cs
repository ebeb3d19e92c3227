using Portwright.Engine.Runs;

namespace Portwright.Shop.Runs;

/// <summary>One or two things of an engine varied over its plan's speeds, against the engine as it is.</summary>
public sealed record EngineStudy(EngineQuestion Question, IReadOnlyList<StudySpan> Spans)
{
    private Study InAxes => new(Question.Design, Question.Range, [.. Spans.Select(s => new Variation(s.Way.Axis, [.. s.Values.Select(v => s.Way.By(Question, v))]))]);

    /// <summary>The engine as it is, then every combination.</summary>
    /// <param name="problem">Why there are none, in a sentence; empty where there are.</param>
    public IReadOnlyList<EngineTask> Tasks(out string problem)
    {
        problem = "";
        try
        {
            return [.. Question.Range.Tasks(Question.Design, Settling.Usual), .. InAxes.Tasks()];
        }
        catch (ArgumentException fault)
        {
            problem = $"A value of the study makes no engine: {fault.Message}";
            return [];
        }
    }

    /// <summary>What those runs gave, in the order of <see cref="Tasks"/>.</summary>
    public StudyAnswer Answer(IReadOnlyList<OperatingPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var speeds = Question.Range.TurnsASecond.Count;
        var now = Question.Range.Mean([.. points.Take(speeds).Select(p => p.Torque)]);
        return new(this, now, [.. InAxes.From([.. points.Skip(speeds)]).Zip(Study.Combine(Spans.Select(s => s.Values)), (r, typed) => new StudyPlace(typed, r.Torque, r.Torque - now, r.BestPower))]);
    }
}

/// <param name="Now">Mean torque over the range of the engine as it is, N m.</param>
/// <param name="Places">Every combination, the last span fastest.</param>
public sealed record StudyAnswer(EngineStudy Study, double Now, IReadOnlyList<StudyPlace> Places)
{
    public StudyPlace Best => Places.MaxBy(p => p.Torque)!;

    /// <summary>What was not varied far enough: the best lies at its first or last value.</summary>
    public IEnumerable<StudySpan> AtTheEnd => Study.Spans.Where((s, i) => Best.Values[i] == s.Values[0] || Best.Values[i] == s.Values[^1]);

    /// <summary>How far a place lies from the worst (0) to the best (1).</summary>
    public double Share(StudyPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        var (low, high) = (Places.Min(p => p.Torque), Best.Torque);
        return high > low ? (place.Torque - low) / (high - low) : 1;
    }
}

/// <param name="Values">As typed, SI, one a span.</param>
/// <param name="Torque">Mean over the range, N m.</param>
/// <param name="Less">Less that of the engine as it is, N m.</param>
/// <param name="BestPower">W.</param>
public sealed record StudyPlace(IReadOnlyList<double> Values, double Torque, double Less, double BestPower);
