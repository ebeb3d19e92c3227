using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>One line of working.</summary>
/// <param name="Key">In JSON; the SI unit is added.</param>
/// <param name="Value">SI.</param>
/// <param name="How">The formula, or where the number comes from.</param>
/// <param name="Source">Who published the formula; empty where it is a definition.</param>
internal sealed record WorkedLine(string Key, string Words, double Value, Dimension Dimension, string How, string Source)
{
    public string JsonKey => SiUnits.Key(Key, Dimension);
}

/// <summary>One answer: a worked line with its doubt.</summary>
internal sealed record Answer(WorkedLine Line, Estimate Estimate);

/// <summary>What a calculation writes down while it works.</summary>
internal sealed class Working
{
    private readonly List<WorkedLine> _lines = [];
    private readonly List<WorkedLine> _answers = [];
    private readonly List<string> _remarks = [];

    public IReadOnlyList<WorkedLine> Lines => _lines;

    public IReadOnlyList<WorkedLine> Answers => _answers;

    public IReadOnlyList<string> Remarks => _remarks;

    public void Line(string key, string words, double value, Dimension dimension, string how, string source = "") =>
        _lines.Add(new WorkedLine(key, words, value, dimension, how, source));

    public void Answer(string key, string words, double value, Dimension dimension, string how, string source = "") =>
        _answers.Add(new WorkedLine(key, words, value, dimension, how, source));

    public void Remark(string sentence)
    {
        if (!_remarks.Contains(sentence)) _remarks.Add(sentence);
    }

    public void Remark(IEnumerable<string> sentences)
    {
        foreach (var s in sentences) Remark(s);
    }
}
