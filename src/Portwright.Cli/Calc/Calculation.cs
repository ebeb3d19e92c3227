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
    /// <summary>The answers with the doubt of what was typed carried through (JCGM 100:2008, equation 10).</summary>
    /// <exception cref="Refusal">The physics refuses a typed value.</exception>
    public (Working Working, IReadOnlyList<Answer> Answers) Run(Given given)
    {
        var working = new Working();
        try
        {
            Work(given, working);
        }
        catch (ArgumentOutOfRangeException outside)
        {
            throw new Refusal($"calc {Name}: {Sentence(outside)}");
        }

        var doubted = given.Values.Where(v => v.Value.StandardUncertainty > 0).Select(v => v.Key).ToList();
        var inputs = doubted.Select(n => given.Values[n]).ToArray();
        var answers = working.Answers.Select((line, i) => new Answer(
            line,
            inputs.Length == 0 || !double.IsFinite(line.Value)
                ? Estimate.Exact(double.IsFinite(line.Value) ? line.Value : 0)
                : Propagation.Propagate(new AnswerOf(this, given, doubted, i), inputs))).ToList();
        return (working, answers);
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
