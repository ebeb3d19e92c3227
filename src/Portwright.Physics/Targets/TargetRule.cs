namespace Portwright.Physics.Targets;

/// <summary>What a target rests on.</summary>
public enum TargetBasis
{
    /// <summary>An equation of a named source.</summary>
    Published,

    /// <summary>Put together here: of published equations, or of plain geometry or mechanics.</summary>
    WorkedOut,

    /// <summary>A habit of the trade with no source that could be checked.</summary>
    CommonPractice,
}

/// <summary>Where a target comes from, to be said beside its figure.</summary>
/// <param name="Name">As a porter would say it.</param>
/// <param name="Source">Author, work, year and equation, as a porter reads it. What could not be opened is marked in the code beside it and in docs/theory/sources.md.</param>
/// <param name="Caution">What it leaves out.</param>
public sealed record TargetRule(string Name, TargetBasis Basis, string Source, string Caution)
{
    /// <summary>The basis in a word or two, to stand behind the name.</summary>
    public string BasisWords => Basis switch
    {
        TargetBasis.Published => "published",
        TargetBasis.WorkedOut => "worked out here",
        _ => "common practice",
    };
}
