using System.CommandLine;
using Portwright.Cli.Terminal;
using Portwright.Engine.Runs;
using Portwright.Shop.Units;

namespace Portwright.Cli.Engine;

/// <summary>One thing a study varies, as it is typed and printed.</summary>
/// <param name="Name">Of the option, without hyphens.</param>
/// <param name="Column">Over its column.</param>
/// <param name="Size">Greatest change either way that is taken, in SI or as a share.</param>
internal sealed record StudyOption(StudyAxis Axis, string Name, string Column, string Words, Dimension Dimension, double Size)
{
    /// <summary>Everything that may be varied. Sections and valves are typed as a change in percent.</summary>
    public static IReadOnlyList<StudyOption> All { get; } =
    [
        new(StudyAxis.IntakeLength, "intake-length", "runner", "intake runner longer by, \"-1in,0,1in\"", Dimension.Length, 2),
        new(StudyAxis.IntakeSection, "intake-section", "in. section", "all intake sections larger by, percent", Dimension.Fraction, 0.5),
        new(StudyAxis.ExhaustLength, "exhaust-length", "primary", "exhaust primary longer by", Dimension.Length, 3),
        new(StudyAxis.ExhaustSection, "exhaust-section", "ex. section", "all exhaust sections larger by, percent", Dimension.Fraction, 0.5),
        new(StudyAxis.IntakeLater, "intake-later", "in. later", "intake cam later by, degrees of crank, \"-4,0,4\"", Dimension.Angle, Math.PI / 3),
        new(StudyAxis.ExhaustLater, "exhaust-later", "ex. later", "exhaust cam later by, degrees of crank", Dimension.Angle, Math.PI / 3),
        new(StudyAxis.IntakeValve, "intake-valve", "in. valve", "intake valve larger by, percent of its diameter", Dimension.Fraction, 0.3),
        new(StudyAxis.ExhaustValve, "exhaust-valve", "ex. valve", "exhaust valve larger by, percent of its diameter", Dimension.Fraction, 0.3),
        new(StudyAxis.Compression, "compression", "ratio", "compression ratio higher by, \"-0.5,0,0.5\"", Dimension.Ratio, 10),
    ];

    public Option<string?> Make() => new("--" + Name) { Description = Words, HelpName = "LIST" };

    /// <summary>The values as the engine takes them: changes in SI, or factors where a change in percent was typed.</summary>
    /// <exception cref="Refusal">One cannot be read, lies too far out, or stands there twice.</exception>
    public Variation Read(string text, UnitSystem units)
    {
        var field = "--" + Name;
        var words = text.Split(text.Contains(';', StringComparison.Ordinal) ? ';' : ',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0) throw new Refusal($"{field} is empty. Type changes parted by commas, such as \"{Example}\".");
        var changes = words.Select(w => One(w, field, units)).ToList();
        var twice = words.Where((_, i) => changes.IndexOf(changes[i]) != i).FirstOrDefault();
        if (twice is not null) throw new Refusal($"{field} \"{text}\" holds {twice} twice. Type each change once.");
        return new(Axis, [.. changes.Select(c => Dimension == Dimension.Fraction ? 1 + c : c)]);
    }

    /// <summary>A value of the axis as it is printed: the change, signed.</summary>
    public string Show(double value, UnitSystem units)
    {
        var change = Dimension == Dimension.Fraction ? value - 1 : value;
        var words = Dimension == Dimension.Length && units == UnitSystem.UsCustomary ? Print.Number(change, Dimension, units, 2) : Print.Number(change, Dimension, units, Dimension == Dimension.Ratio ? 1 : null);
        return change > 0 ? "+" + words : words;
    }

    /// <summary>Key in JSON.</summary>
    public string Key => Name.Replace('-', '_') + Dimension switch { Dimension.Length => "_m", Dimension.Angle => "_rad", Dimension.Fraction => "_factor", _ => "" };

    private string Example => Dimension switch { Dimension.Length => "-1in,0,1in", Dimension.Angle => "-4,0,4", Dimension.Ratio => "-0.5,0,0.5", _ => "-5,0,5" };

    /// <summary>A signed change: fields of the record know no length below zero, a change does.</summary>
    private double One(string word, string field, UnitSystem units)
    {
        var (sign, rest) = word[0] switch { '-' or '−' => (-1, word[1..].Trim()), '+' => (1, word[1..].Trim()), _ => (1, word) };
        if (!TypedNumber.TryParse(rest, Dimension, units, field, out var typed, out var problem)) throw new Refusal(problem);
        var change = sign * typed.Si(Dimension);
        return Math.Abs(change) <= Size ? change
            : throw new Refusal($"{field} \"{word}\" is too large a change: at most {Show(Dimension == Dimension.Fraction ? 1 + Size : Size, units)} either way. Check its unit.");
    }
}
