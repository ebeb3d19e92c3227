using System.Text.RegularExpressions;
using Portwright.Shop.Entering;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>A question in words as the command line it means.</summary>
/// <param name="Words">After <c>calc</c>.</param>
/// <param name="Problem">Why it means none.</param>
/// <param name="Doubtful">A number that can hardly be meant so.</param>
/// <param name="Also">Other sums the same numbers fit, as questions.</param>
internal sealed record SumQuestion(IReadOnlyList<string> Words, string Problem, DoubtfulNumber? Doubtful, IReadOnlyList<(string Words, string Text)> Also)
{
    /// <summary>Of several that fit, the one asked for most.</summary>
    private static readonly string[] Order = ["restate", "area", "nozzle", "percent", "leak", "window", "pitot", "air", "netlift", "station-pressure", "atmosphere"];

    public static SumQuestion Read(string text, UnitSystem units)
    {
        var words = ShellWords.Split(text);
        if (words is ["portwright", .. var afterProgram]) words = [.. afterProgram];
        if (words is ["calc", .. var afterVerb]) words = [.. afterVerb];
        if (words.Count == 0) return Refused("Type a sum: its numbers with their units, or its name first. Touch one of those below to see how.");
        var known = CalcCommand.Make().Subcommands.Select(c => c.Name).ToList();
        var name = known.FirstOrDefault(k => k.Equals(words[0], StringComparison.OrdinalIgnoreCase));
        var calculation = Calculations.All.FirstOrDefault(c => c.Name == name);
        if (name is not null && (calculation is null || words.Exists(w => w.StartsWith("--", StringComparison.Ordinal)))) return new([name, .. words.Skip(1)], "", null, []);
        var numbers = SumNumber.In(string.Join(' ', name is null ? words : words.Skip(1)), out var strange);
        if (numbers.Count == 0) return Refused(name is null ? $"No number stands in \"{text.Trim()}\". Type it as: 194.9 cfm at 10 to 28." : $"Type its numbers behind {name}: {calculation!.Inputs[0].Words}.");
        var fits = (calculation is null ? Calculations.All.OrderBy(c => Array.IndexOf(Order, c.Name) is >= 0 and var place ? place : Order.Length).Where(c => Order.Contains(c.Name)) : [calculation])
            .Select(c => SumFit.Of(c, numbers, strange)).ToList();
        var good = fits.Where(f => f.Problem.Length == 0 && (calculation is not null || !f.BringsNothing)).ToList();
        if (good.Count == 0)
        {
            return Refused(calculation is not null ? fits[0].Problem : $"No sum takes {string.Join(", ", numbers.Select(n => n.Text))} so. Put the sum's name first, or touch one of those below.");
        }

        var best = good[0];
        return new([best.Name, .. best.Options], "", Judged(best, text, units), [.. good.Skip(1).Take(3).Select(f => ($"{f.Name}: {f.Summary}", $"{f.Name} {text.Trim()}"))]);
    }

    private static SumQuestion Refused(string problem) => new([], problem, null, []);

    /// <summary>Every number of a field the table of fields knows is judged by it, as on any page.</summary>
    private static DoubtfulNumber? Judged(SumFit fit, string text, UnitSystem units)
    {
        foreach (var (input, number) in fit.Taken)
        {
            if (FieldOf(input) is not { } field || EntryJudge.Of(field with { Label = input.Label }, number.Value, units, Surroundings.None) is not Ask ask) continue;
            return new DoubtfulNumber(ask.Question.In(units), [.. ask.Likely.Select(l => (l.Text, text.Replace(number.Value, l.Text, StringComparison.Ordinal)))], ask.MayKeep);
        }

        return null;
    }

    private static EnteredField? FieldOf(Input input) => input.Name switch
    {
        "test-pressure" or "from" or "to" or "restate-at" or "leak-pressure" or "calibrated-at" => EnteredRoom.TestPressure,
        "barometer" => EnteredRoom.Barometer,
        "temperature" or "meter-temperature" or "plenum-temperature" => EnteredRoom.Temperature,
        "humidity" => EnteredRoom.Humidity,
        "elevation" => EnteredRoom.Elevation,
        "lift" => EnteredPort.Lift,
        "head" => EnteredValve.Head,
        "throat" => EnteredValve.Throat,
        "stem" => EnteredValve.Stem,
        "seat-width" => EnteredValve.SeatWidth,
        "seat-angle" => EnteredValve.SeatAngle,
        "lobe" => EnteredPlan.LobeLift,
        "rocker" => EnteredPlan.Rocker,
        _ => null,
    };
}

/// <summary>What is asked about one number of a question.</summary>
/// <param name="Likely">What was meant, and the whole question with it put right.</param>
internal sealed record DoubtfulNumber(string Words, IReadOnlyList<(string Words, string Text)> Likely, bool MayKeep);

/// <summary>A number of a question with its unit, its doubt and the word before it.</summary>
/// <param name="Word">Small letters; empty where none stands before it.</param>
/// <param name="Text">Letter for letter.</param>
/// <param name="Value">Without the doubt.</param>
internal sealed partial record SumNumber(string Word, string Text, string Value)
{
    private static readonly Dimension[] All = Enum.GetValues<Dimension>();

    /// <summary>What it may be a number of; nothing where it is bare.</summary>
    public IReadOnlyList<Dimension> Dimensions => UnitOf(Value) is { Length: > 0 } unit ? [.. All.Where(d => Unit.Find(unit, d) is { Name.Length: > 0 })] : [];

    public bool IsBare => UnitOf(Value).Length == 0;

    /// <param name="strange">Words that stand before no number.</param>
    public static IReadOnlyList<SumNumber> In(string text, out IReadOnlyList<string> strange)
    {
        var (numbers, at, left) = (new List<SumNumber>(), 0, new List<string>());
        foreach (Match number in Numbers().Matches(text))
        {
            if (number.Index < at) continue;
            List<string> before = [.. text[at..number.Index].Split([' ', ',', ':', '=', ';'], StringSplitOptions.RemoveEmptyEntries)];
            var (value, end) = WithUnit(text, number);
            var whole = value;
            if (Doubt().Match(text, end) is { Success: true } doubt && doubt.Index == end)
            {
                var (_, doubtEnd) = WithUnit(text, doubt.Groups["n"]);
                whole = text[number.Index..doubtEnd];
                end = doubtEnd;
            }

            numbers.Add(new SumNumber(before.Count > 0 ? before[^1].ToLowerInvariant() : "", whole, value));
            if (before.Count > 1) left.AddRange(before[..^1]);
            at = end;
        }

        left.AddRange(text[at..].Split([' ', ',', '.', '?'], StringSplitOptions.RemoveEmptyEntries));
        strange = left;
        return numbers;
    }

    /// <summary>The longest run of what follows that is a unit belongs to the number.</summary>
    private static (string Text, int End) WithUnit(string text, Capture number)
    {
        var end = number.Index + number.Length;
        var rest = text[end..];
        for (var take = Math.Min(rest.Length, 24); take > 0; take--)
        {
            var unit = rest[..take];
            if (unit.Trim().Length == 0 || unit.Trim() is "at" || (take < rest.Length && char.IsLetterOrDigit(unit[^1]) && char.IsLetterOrDigit(rest[take]))) continue;
            if (All.Any(d => Unit.Find(unit.Trim(), d) is { Name.Length: > 0 })) return (text[number.Index..(end + take)].TrimEnd(), end + take);
        }

        return (number.Value, end);
    }

    private static string UnitOf(string text) => Numbers().Match(text) is { Success: true } number ? text[(number.Index + number.Length)..].Trim() : "";

    [GeneratedRegex(@"(?<![\w.])-?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:/\d+)?")] private static partial Regex Numbers();

    [GeneratedRegex(@"\s*(?:±|\+/-|\+-)\s*(?<n>\d*\.?\d+)")] private static partial Regex Doubt();
}
