namespace Portwright.Shop.Record;

/// <summary>A value that was asked about when it was typed and kept as it was: it is not asked again.</summary>
/// <param name="Of">The fact it stands in: a reading, a port, a sweep.</param>
/// <param name="Field">As the page names it: <c>Valve head</c>.</param>
/// <param name="Text">What was typed, letter for letter.</param>
/// <param name="Question">What was asked.</param>
public sealed record Confirmed(Guid Of, string Field, string Text, string Question) : Fact;
