using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>What a calculation on lists writes down: lines, answers with their doubt, and answers in words.</summary>
internal sealed class ListWork
{
    private readonly List<Answer> _estimates = [];

    public Working Working { get; } = new();

    public List<(string Words, string Text)> Given { get; } = [];

    /// <summary>Answers in words, for JSON.</summary>
    public List<(string Key, string Value)> Words { get; } = [];

    /// <summary>An answer that is a result with its doubt.</summary>
    public void Plus(string key, string words, Estimate estimate, Dimension dimension, string how) =>
        _estimates.Add(new Answer(new WorkedLine(key, words, estimate.Value, dimension, how, ""), estimate));

    public void Write(TextWriter output, string name, string summary, bool json, UnitSystem system)
    {
        List<Answer> answers = [.. _estimates, .. Working.Answers.Select(l => new Answer(l, Estimate.Exact(double.IsFinite(l.Value) ? l.Value : 0)))];
        if (json)
        {
            CalcJson.Write(output, name, null, [], Working, answers, Words);
            return;
        }
        CalcPage.Write(output, char.ToUpperInvariant(summary[0]) + summary[1..], Given, Working, answers, system, _estimates.LastOrDefault(), _estimates.Count > 0);
    }
}
