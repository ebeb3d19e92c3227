namespace Portwright.Cli.Calc;

/// <summary>Numbers laid onto the boxes of one sum: by the word before them, then by their unit, then in the order typed.</summary>
/// <param name="Problem">Why they do not fit; empty where they do.</param>
internal sealed record SumFit(string Name, string Summary, IReadOnlyList<(Input Input, SumNumber Number)> Taken, IReadOnlyList<(string Choice, string Word)> Chosen, string Problem)
{
    /// <summary>Words that say which box a number belongs to, besides the box's own name.</summary>
    private static readonly Dictionary<string, string[]> Meant = new()
    {
        ["at"] = ["from", "test-pressure", "leak-pressure"],
        ["from"] = ["from"],
        ["to"] = ["to", "restate-at"],
        ["of"] = ["full-scale"],
        ["reads"] = ["reading"],
        ["valve"] = ["head"],
        ["leaks"] = ["leak-flow"],
    };

    /// <summary>Words between numbers that mean nothing by themselves.</summary>
    private static readonly string[] Fill = ["at", "and", "of", "the", "a", "is", "what", "how", "much", "flow", "through", "by", "in", "on", "with", "for", "restated", "from", "to", "air", "area", "test", "pressure"];

    public IReadOnlyList<string> Options => [.. Taken.SelectMany(t => new[] { "--" + t.Input.Name, t.Number.Text }), .. Chosen.SelectMany(c => new[] { "--" + c.Choice, c.Word })];

    /// <summary>A flow brought to the pressure it was read at is no question.</summary>
    public bool BringsNothing => Taken.FirstOrDefault(t => t.Input.Name == "from") is { Number: { } from } && !Taken.Any(t => t.Input.Name == "to") && from.Value.Split(' ')[0] == "28";

    public static SumFit Of(Calculation sum, IReadOnlyList<SumNumber> numbers, IReadOnlyList<string> strange)
    {
        var (taken, left) = (new List<(Input Input, SumNumber Number)>(), new List<SumNumber>());
        foreach (var number in numbers)
        {
            var by = sum.Inputs.FirstOrDefault(i => i.Name == number.Word && Free(i))
                ?? (Meant.TryGetValue(number.Word, out var boxes) ? boxes.Select(b => sum.Inputs.FirstOrDefault(i => i.Name == b && Free(i))).FirstOrDefault(i => i is not null && Fits(i, number)) : null);
            if (by is not null && Fits(by, number)) taken.Add((by, number));
            else left.Add(number);
        }

        foreach (var number in left.Where(n => !n.IsBare).ToList())
        {
            if (sum.Inputs.Where(i => Free(i) && Fits(i, number)).OrderBy(i => Must(i) ? 0 : 1).FirstOrDefault() is not { } box) continue;
            taken.Add((box, number));
            left.Remove(number);
        }

        foreach (var number in left.ToList())
        {
            if (!number.IsBare || sum.Inputs.FirstOrDefault(i => Free(i) && Must(i)) is not { } box) continue;
            taken.Add((box, number));
            left.Remove(number);
        }

        var chosen = new List<(string, string)>();
        var unknown = new List<string>();
        foreach (var word in strange.Concat(numbers.Where(n => !taken.Exists(t => t.Number == n && t.Input.Name == n.Word)).Select(n => n.Word)).Where(w => w.Length > 0))
        {
            var plain = word.ToLowerInvariant() switch { "drawn" => "draw", "blown" => "blow", var other => other };
            if (sum.Choices.FirstOrDefault(c => c.Options.Contains(plain)) is { } choice) chosen.Add((choice.Name, plain));
            else if (!Fill.Contains(plain) && !Meant.ContainsKey(plain)) unknown.Add(word);
        }

        var missing = sum.Inputs.FirstOrDefault(i => Must(i) && Free(i));
        return new SumFit(sum.Name, sum.Summary, taken, chosen,
            left.Count > 0 ? $"{sum.Name} has no box for {left[0].Text}. It takes {string.Join("; ", sum.Inputs.Where(Must).Select(i => $"{i.Name}, {i.Words}"))}."
            : unknown.Count > 0 ? $"\"{unknown[0]}\" says nothing to {sum.Name}. Leave it out, or put the name of a box before its number: {string.Join(", ", sum.Inputs.Select(i => i.Name))}."
            : missing is not null ? $"{missing.Name} is missing: {missing.Words}. Type it as {missing.Name} and its number."
            : "");

        bool Free(Input input) => !taken.Exists(t => t.Input == input);
        static bool Must(Input input) => input.Usual is null && !input.MayMiss;
        static bool Fits(Input input, SumNumber number) => number.IsBare || number.Dimensions.Contains(input.Dimension);
    }
}
