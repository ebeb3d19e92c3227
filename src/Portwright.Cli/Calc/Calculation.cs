using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;

namespace Portwright.Cli.Calc;

/// <summary>One formula a porter may want a number from.</summary>
/// <param name="Name">The verb: <c>portwright calc NAME</c>.</param>
/// <param name="Summary">One line, for the help.</param>
/// <param name="Work">The physics, from typed numbers to lines of working and answers. Pure.</param>
/// <param name="Examples">Command lines that work.</param>
internal sealed record Calculation(
    string Name,
    string Summary,
    IReadOnlyList<Input> Inputs,
    IReadOnlyList<Choice> Choices,
    Action<Given, Working> Work,
    params string[] Examples)
{
    /// <summary>What was not said and stands in the doubt, by the choices made.</summary>
    public Func<Given, IEnumerable<(string Name, InputEstimate Input)>> Assumed { get; init; } = _ => [];

    /// <summary>The answers with the doubt of what was typed carried through (JCGM 100:2008, equation 10).</summary>
    /// <exception cref="Refusal">The physics refuses a typed value.</exception>
    public (Working Working, IReadOnlyList<Answer> Answers) Run(Given typed)
    {
        var given = typed.And(Assumed(typed));
        var working = new Working();
        try
        {
            Work(given, working);
        }
        catch (ArgumentOutOfRangeException outside)
        {
            throw new Refusal($"calc {Name}: {Sentence(outside)}");
        }

        var (doubted, inputs) = Doubted(given);
        var answers = working.Answers.Select((line, i) => new Answer(
            line,
            inputs.Length == 0 || !double.IsFinite(line.Value)
                ? Estimate.Exact(double.IsFinite(line.Value) ? line.Value : 0)
                : Propagation.Propagate(new AnswerOf(this, given, doubted, i), inputs))).ToList();
        return (working, answers);
    }

    /// <summary>The same doubt drawn instead of taken as straight (JCGM 101:2008): says whether the budget above it may be believed.</summary>
    /// <exception cref="Refusal">No number is in doubt, there are too few trials, or the doubt reaches where the formula has no value.</exception>
    public void Draw(Given typed, Working working, IReadOnlyList<Answer> answers, int trials)
    {
        var given = typed.And(Assumed(typed));
        var (doubted, inputs) = Doubted(given);
        if (inputs.Length == 0) throw new Refusal("--trials draws the doubt of what was typed, and none was: type it behind a number, as \"28 inH2O +- 0.1 inH2O\".");
        if (trials < MonteCarlo.FewestTrials) throw new Refusal($"--trials {trials} is too few: type {MonteCarlo.FewestTrials} or more.");
        for (var i = 0; i < answers.Count; i++)
        {
            var (line, law) = (answers[i].Line, answers[i].Estimate);
            if (law.StandardUncertainty == 0) continue;
            try
            {
                var drawn = MonteCarlo.Propagate(new AnswerOf(this, given, doubted, i), inputs, trials);
                working.Line($"{line.Key}_trials_low", $"{line.Words}, of {trials} trials 95 percent above", drawn.Symmetric.Low, line.Dimension, "", "JCGM 101:2008, 7.7");
                working.Line($"{line.Key}_trials_high", "and below", drawn.Symmetric.High, line.Dimension, "");
                working.Line($"{line.Key}_trials_over_law", "scatter of the trials over the budget's", drawn.StandardUncertainty / law.StandardUncertainty, Shop.Units.Dimension.Ratio, "1 where the formula is nearly straight over its doubt; more with few repeats");
            }
            catch (ArgumentException)
            {
                throw new Refusal($"calc {Name}: the doubt typed reaches numbers the formula has no answer for. Make it smaller, or leave --trials out.");
            }
        }
    }

    private static (List<string> Names, InputEstimate[] Inputs) Doubted(Given given)
    {
        var names = given.Values.Where(v => v.Value.StandardUncertainty > 0).Select(v => v.Key).ToList();
        return (names, [.. names.Select(n => given.Values[n])]);
    }

    private static string Sentence(ArgumentOutOfRangeException outside)
    {
        var first = outside.Message.Split('\n')[0];
        var end = first.IndexOf(" (Parameter", StringComparison.Ordinal);
        var sentence = end < 0 ? first : first[..end];
        return outside.ActualValue is IFormattable value
            ? $"{sentence} It was {value.ToString(null, System.Globalization.CultureInfo.InvariantCulture)}. Check the number and its unit."
            : sentence;
    }

    /// <summary>One answer as a function of the numbers in doubt.</summary>
    private readonly struct AnswerOf(Calculation calculation, Given given, IReadOnlyList<string> names, int index) : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> inputs)
        {
            var working = new Working();
            try
            {
                calculation.Work(given.With(names, inputs), working);
            }
            catch (ArgumentOutOfRangeException)
            {
                // Outside the domain on this side: the propagation then looks to the other.
                return double.NaN;
            }
            return working.Answers[index].Value;
        }
    }
}
