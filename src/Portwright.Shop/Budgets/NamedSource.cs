using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>A cause of doubt in a porter's words.</summary>
/// <param name="Words">What it is, with the raw text where it is one reading: <c>last digit of 54.2 % of range middle at .400</c>.</param>
/// <param name="Step">One standard step of the cause itself, in its own unit or as a share; null where the record does not know it apart.</param>
/// <param name="Shared">What else rests on it; empty where nothing does.</param>
/// <param name="Behind">The facts of the record it comes from.</param>
public sealed record NamedSource(Sentence Words, Quantity? Step, Sentence Shared, IReadOnlyList<Guid> Behind);
