using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Trials;

/// <summary>What was made of lifts typed with the pressure they are read at again.</summary>
/// <param name="Problem">Why it can't be taken; null where it can.</param>
/// <param name="Question">What is asked about the first value in question; null where none is.</param>
/// <param name="Likely">The whole text with that value put right.</param>
public sealed record AgainTyped(IReadOnlyList<LiftsAgain> Again, string? Problem = null, Sentence? Question = null, IReadOnlyList<string>? Likely = null, bool MayKeep = true);

/// <summary>A run as it is typed: lifts, a pattern, and <c>.300 .500 @ 15</c> for lifts to be read again at another pressure.</summary>
public static class RunNotation
{
    private const string Example = ".300 .500 @ 15";

    /// <summary>Reads <c>.300 .500 @ 15; .300 @ 40</c>, each number judged.</summary>
    /// <param name="kept">The text was asked about and is kept.</param>
    public static AgainTyped Again(string? text, UnitSystem units, Surroundings around, bool kept = false)
    {
        var groups = new List<LiftsAgain>();
        AgainTyped? asked = null;
        foreach (var part in (text ?? "").Split(['\n', '\r', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (part.Split('@', StringSplitOptions.TrimEntries) is not [{ Length: > 0 } before, { Length: > 0 } after])
            {
                return new([], $"Again \"{part}\": type lifts, then @ and their test pressure, such as {Example}.");
            }

            var lifts = new List<Typed>();
            foreach (var word in NumberList.Parts(before))
            {
                if (Judged(EnteredPort.Lift, word) is not { } lift) return asked!;
                lifts.Add(lift);
            }

            if (Judged(EnteredRoom.TestPressure, after) is not { } pressure) return asked!;
            groups.Add(new LiftsAgain(lifts, pressure));
        }

        return asked ?? new(groups);

        Typed? Judged(EnteredField field, string word)
        {
            switch (EntryJudge.Of(field, word, units, around))
            {
                case Take take: return take.Value;
                case Ask { MayKeep: true, Value: var value } ask when kept:
                    asked ??= new(groups, null, ask.Question);
                    return value;
                case Ask ask:
                    asked = new([], null, ask.Question, [.. ask.Likely.Select(m => Replaced(text!, word, m.Text))], ask.MayKeep);
                    return null;
                case Refuse refused:
                    asked = new([], refused.Problem);
                    return null;
                default: throw new InvalidOperationException("A value is taken, asked about or refused.");
            }
        }
    }

    /// <summary>The boxes that make this run.</summary>
    public static (string Lifts, PassPattern Pattern, string Again) Of(TestRun run, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(run);
        List<RunStep> own = [.. run.Steps.Where(s => s.TestPressure is null)];
        IReadOnlyList<Typed> first = [.. own.TakeWhile(s => s.Pass == own[0].Pass).Select(s => s.Lift)];
        var pattern = Enum.GetValues<PassPattern>().Where(p => p != PassPattern.AsListed)
            .Where(p => first.Count > 1 && Alike(TestRun.Of(first, p, []).Steps, own)).Cast<PassPattern?>().FirstOrDefault() ?? PassPattern.AsListed;
        var again = run.Steps.Where(s => s.TestPressure is not null).GroupBy(s => s.Pass)
            .Select(g => $"{Lifts(g.Select(s => s.Lift), units, " ")} @ {g.First().TestPressure!.WithUnit}");
        return (Lifts(pattern == PassPattern.AsListed ? own.Select(s => s.Lift) : first, units, "  "), pattern, string.Join("; ", again));
    }

    /// <summary>True where the same is set in the same order.</summary>
    public static bool Alike(IReadOnlyList<RunStep> one, IReadOnlyList<RunStep> other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        return one.Count == other.Count && one.Zip(other).All(p => p.First.Pass == p.Second.Pass
            && TestRun.Same(p.First.Lift, p.Second.Lift)
            && p.First.TestPressure?.Si(Dimension.Pressure) == p.Second.TestPressure?.Si(Dimension.Pressure));
    }

    private static string Lifts(IEnumerable<Typed> lifts, UnitSystem units, string between) => string.Join(between, lifts.Select(l => Print.Bare(l.Si(Dimension.Lift), Dimension.Lift, units)));

    private static string Replaced(string text, string word, string by) =>
        text.IndexOf(word, StringComparison.Ordinal) is >= 0 and var at ? string.Concat(text.AsSpan(0, at), by, text.AsSpan(at + word.Length)) : text;
}
