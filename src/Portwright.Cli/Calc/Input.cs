using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>A number a calculation takes, typed as <c>--name</c>.</summary>
/// <param name="Words">What it is, in a porter's words.</param>
/// <param name="Usual">Taken where nothing is typed; null: must be typed, unless <paramref name="MayMiss"/>.</param>
/// <param name="MayMiss">May be left out: the calculation does without it.</param>
internal sealed record Input(string Name, string Words, Dimension Dimension, string? Usual = null, bool MayMiss = false)
{
    /// <summary>The key of the input in JSON, with its SI unit.</summary>
    public string Key => SiUnits.Key(Name.Replace('-', '_'), Dimension);

    /// <summary>The words as far as the first comma, colon or bracket: beside a number no more is needed.</summary>
    public string Label => Words.IndexOfAny([',', ':', '(']) is > 0 and var end ? Words[..end].TrimEnd() : Words;

    /// <summary>A share that a hygrometer shows in percent.</summary>
    public bool IsHumidity => Name == "humidity";

    public static Input Optional(string name, string words, Dimension dimension) => new(name, words, dimension, null, true);
}

/// <summary>A choice a calculation takes, typed as <c>--name</c>; the first is the usual one.</summary>
internal sealed record Choice(string Name, string Words, params string[] Options);

/// <summary>What was typed, in SI: the numbers a calculation works with.</summary>
internal sealed class Given(IReadOnlyDictionary<string, InputEstimate> values, IReadOnlyDictionary<string, string> choices)
{
    public double this[string name] => values[name].Value;

    public bool Has(string name) => values.ContainsKey(name);

    public double? Find(string name) => values.TryGetValue(name, out var v) ? v.Value : null;

    public string Choice(string name) => choices[name];

    public IReadOnlyDictionary<string, InputEstimate> Values => values;

    public IReadOnlyDictionary<string, string> Choices => choices;

    /// <summary>The same with numbers nobody typed.</summary>
    public Given And(IEnumerable<(string Name, InputEstimate Input)> more)
    {
        var copy = new Dictionary<string, InputEstimate>(values);
        foreach (var (name, input) in more) copy[name] = input;
        return new Given(copy, choices);
    }

    /// <summary>The same with some numbers moved, for the sensitivity of the answer to each.</summary>
    public Given With(IReadOnlyList<string> names, ReadOnlySpan<double> moved)
    {
        var copy = new Dictionary<string, InputEstimate>(values);
        for (var i = 0; i < names.Count; i++) copy[names[i]] = copy[names[i]] with { Value = moved[i] };
        return new Given(copy, choices);
    }
}
