using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>Reads lists of numbers and results on a command line.</summary>
internal static class NumberList
{
    /// <summary>What <c>--of</c> may name.</summary>
    public static readonly IReadOnlyDictionary<string, Dimension> Kinds = new Dictionary<string, Dimension>
    {
        ["flow"] = Dimension.VolumeFlow,
        ["area"] = Dimension.Area,
        ["speed"] = Dimension.Speed,
        ["pressure"] = Dimension.Pressure,
        ["percent"] = Dimension.Fraction,
        ["number"] = Dimension.Ratio,
    };

    public static Dimension Kind(string? typed) =>
        Kinds.TryGetValue(typed ?? "flow", out var dimension)
            ? dimension
            : throw new Refusal($"--of \"{typed}\" is not one of {string.Join(", ", Kinds.Keys)}.");

    /// <summary>Numbers parted by spaces or semicolons; a unit behind the last is the unit of all.</summary>
    public static double[] Read(string text, string field, Dimension dimension, UnitSystem system)
    {
        var words = text.Split([' ', ';', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries).ToList();
        string unit = "";
        if (words.Count > 1 && Unit.Find(words[^1], dimension) is not null)
        {
            unit = " " + words[^1];
            words.RemoveAt(words.Count - 1);
        }
        if (words.Count == 0) throw new Refusal($"{field} is empty. Type numbers parted by spaces, such as \"221.9 222.3 221.7\".");
        return [.. words.Select(word => TypedNumber.TryParse(char.IsLetter(word[^1]) || word[^1] == '%' ? word : word + unit, dimension, system, field, out var typed, out var problem)
            ? typed.Si(dimension)
            : throw new Refusal(problem))];
    }

    /// <summary>A result with its doubt, or the mean of a list of repeats with the doubt their scatter shows.</summary>
    public static InputEstimate Result(string text, string field, Dimension dimension, UnitSystem system)
    {
        if (text.Contains('±', StringComparison.Ordinal) || text.Contains("+-", StringComparison.Ordinal) || text.Contains("+/-", StringComparison.Ordinal))
            return DoubtedText.TryRead(text, field, dimension, system, out var value, out var problem) ? value : throw new Refusal(problem);
        var numbers = Read(text, field, dimension, system);
        return numbers.Length > 1 ? InputEstimate.FromRepeats(field, numbers) : InputEstimate.Exact(field, numbers[0]);
    }

    /// <summary><c>0.7%</c> as a share.</summary>
    public static double Share(string? text, string field)
    {
        if (text is null) return 0;
        return TypedNumber.TryParse(text, Dimension.Fraction, UnitSystem.UsCustomary, field, out var typed, out var problem)
            ? typed.Si(Dimension.Fraction)
            : throw new Refusal(problem);
    }
}
