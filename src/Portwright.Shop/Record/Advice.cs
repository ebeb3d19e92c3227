using Portwright.Shop.Words;

namespace Portwright.Shop.Record;

/// <summary>What the porter made of a suggestion.</summary>
public enum Decision
{
    // Records hold the name and are read by number too: neither is ever changed.
    Accepted = 0,
    Refused = 1,
    Postponed = 2,
}

/// <summary>A suggested cut and what was decided on it: the program's advice is scored by what the next cut brings.</summary>
/// <param name="Cut">The cut whose findings led to it.</param>
/// <param name="Finding">Key of the finding.</param>
/// <param name="Station">Where; null for the whole port.</param>
/// <param name="Bearing">Clock hour as the record keeps it; null all round.</param>
/// <param name="What">The cut in words: becomes the note of the next cut.</param>
/// <param name="ExpectedGain">Mean flow over the lift range below, m3/s.</param>
/// <param name="GainDoubt">Its standard uncertainty, m3/s.</param>
/// <param name="FromLift">m.</param>
/// <param name="ToLift">m.</param>
public sealed record Advice(
    Guid Cut,
    string Finding,
    Guid? Station,
    double? Bearing,
    Sentence What,
    Decision Decision,
    string Reason,
    double ExpectedGain,
    double GainDoubt,
    double FromLift,
    double ToLift) : Fact;
