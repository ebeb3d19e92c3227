using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Findings;

/// <summary>One entry of the catalogue of findings: what the trade calls it, what it rests on, and how it is told.</summary>
/// <param name="Key">Its name in the record: small letters and hyphens, never changed.</param>
/// <param name="Name">The trade's name, a sentence's beginning: <c>The floor is lazy</c>.</param>
public abstract record FindingRule(string Key, string Name)
{
    /// <summary>What has to be measured before it can be told.</summary>
    public abstract Sentence Evidence { get; }

    /// <summary>The test in words, with its numbers.</summary>
    public abstract Sentence Test { get; }

    /// <summary>What else could look like it.</summary>
    public abstract Sentence ElseExplains { get; }

    /// <summary>What to look at before cutting.</summary>
    public abstract Sentence LookFirst { get; }

    /// <summary>What to cut, leave alone or build up.</summary>
    public abstract Sentence Cut { get; }

    /// <summary>What that risks.</summary>
    public abstract Sentence Risk { get; }

    /// <summary>Author, year and title, or <c>common practice, no source</c>.</summary>
    public abstract string Source { get; }

    /// <summary>Chance that a port has it before anything is read, 0 to 1; our own judgement, no source. Null where it is no matter of chance.</summary>
    public virtual double? Prior => null;

    /// <summary>What the observation that would decide it usually costs at the bench, minutes.</summary>
    public abstract double Minutes { get; }

    /// <summary>What of it the port shows; nothing where the evidence is missing.</summary>
    public abstract IEnumerable<Finding> Look(PortSurvey port);
}
