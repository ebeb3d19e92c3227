using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Entering;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>Gathers what was typed for a calculation and says everything that is wrong with it at once.</summary>
internal sealed class GivenReader(Calculation calculation, UnitSystem system)
{
    private readonly Dictionary<string, InputEstimate> _values = [];
    private readonly Dictionary<string, string> _choices = [];
    private readonly List<(string Words, string Text)> _shown = [];
    private readonly List<string> _problems = [];

    /// <summary>A number typed once, or several times: repeats of one reading.</summary>
    public void Number(Input input, IReadOnlyList<string> typed)
    {
        var field = "--" + input.Name;
        if (typed.Count == 0)
        {
            if (input.Usual is null)
            {
                if (!input.MayMiss) _problems.Add($"{field} is missing: {input.Words}. Example: portwright calc {calculation.Examples[0]}");
                return;
            }
            if (!DoubtedText.TryRead(input.Usual, field, input.Dimension, system, out var usual, out var wrong))
                throw new InvalidOperationException(wrong);
            _values[input.Name] = usual with { Source = input.Label };
            _shown.Add((input.Label, $"{input.Usual} (usual)"));
            return;
        }

        var read = new List<InputEstimate>();
        foreach (var text in typed)
        {
            if (!DoubtedText.TryRead(text, field, input.Dimension, system, out var value, out var problem)) _problems.Add(problem);
            else if (input.IsHumidity && EntryJudge.Objection(EnteredRoom.StandardHumidity, field, DoubtedText.ValueOf(text, input.Dimension), system, Surroundings.None) is { } question) _problems.Add(question);
            else read.Add(value with { Source = input.Label });
        }
        if (read.Count != typed.Count) return;
        if (read.Count > 1)
        {
            if (read.Any(r => r.StandardUncertainty > 0))
            {
                _problems.Add($"{field} was typed {read.Count} times, with ± as well. Repeats show their own scatter: leave ± out, or type it once.");
                return;
            }
            read = [InputEstimate.FromRepeats(input.Label, [.. read.Select(r => r.Value)])];
        }
        _values[input.Name] = read[0];
        _shown.Add((input.Label, Shown(input, typed, read[0])));
    }

    public void Choose(Choice choice, string? typed)
    {
        var word = typed ?? choice.Options[0];
        if (!choice.Options.Contains(word, StringComparer.OrdinalIgnoreCase))
        {
            _problems.Add($"--{choice.Name} \"{word}\" is not one of {string.Join(", ", choice.Options)}.");
            return;
        }
        _choices[choice.Name] = word.ToLowerInvariant();
        _shown.Add((choice.Words.Split(':')[0], word + (typed is null && choice.Options.Length > 1 ? " (usual)" : "")));
    }

    /// <summary><c>--doubt reading=0.2%</c>: the doubt of a number typed elsewhere.</summary>
    public void Doubts(IReadOnlyList<string> typed)
    {
        foreach (var text in typed)
        {
            var at = text.IndexOf('=', StringComparison.Ordinal);
            var name = at < 0 ? text : text[..at].Trim().TrimStart('-');
            var input = calculation.Inputs.FirstOrDefault(i => i.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
            if (at < 0 || input is null)
            {
                _problems.Add($"--doubt \"{text}\": type the name of a number and its doubt, as --doubt {calculation.Inputs[0].Name}=\"0.5 %\".");
                continue;
            }
            if (!_values.TryGetValue(input.Name, out var value))
            {
                _problems.Add($"--doubt \"{text}\": --{input.Name} itself was not typed.");
                continue;
            }
            var unit = Unit.Default(input.Dimension, system);
            var whole = System.FormattableString.Invariant($"{unit.FromSi(value.Value):R} {unit.Name} ± {text[(at + 1)..]}");
            if (!DoubtedText.TryRead(whole, "--doubt " + input.Name, input.Dimension, system, out var doubted, out var problem))
            {
                _problems.Add(problem);
                continue;
            }
            _values[input.Name] = value with { StandardUncertainty = doubted.StandardUncertainty };
            _shown.Add((input.Label + " ±", text[(at + 1)..].Trim()));
        }
    }

    /// <exception cref="Refusal">Something is missing or cannot be read.</exception>
    public Given Read() => _problems.Count == 0 ? new Given(_values, _choices) : throw new Refusal(string.Join('\n', _problems));

    public IReadOnlyList<(string Words, string Text)> Shown() => _shown;

    private static string Shown(Input input, IReadOnlyList<string> typed, InputEstimate value)
    {
        var text = string.Join(", ", typed.Select(t => t.Trim().Replace("+/-", "±", StringComparison.Ordinal).Replace("+-", "±", StringComparison.Ordinal)));
        var si = SiUnits.Text(value.Value, input.Dimension);
        if (DoubtedText.HalfWidth(value) is > 0 and var half) si += " ± " + half.ToString("G2", System.Globalization.CultureInfo.InvariantCulture);
        return si.StartsWith(text, StringComparison.Ordinal) || input.Dimension is Dimension.Ratio ? text : $"{text}  =  {si}";
    }
}
