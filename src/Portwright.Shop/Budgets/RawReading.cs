using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>A number of the record behind a result, letter for letter as it was typed.</summary>
/// <param name="Sequence">Its place in the record.</param>
/// <param name="What">Which sweep, plate, ball or section it belongs to.</param>
/// <param name="Lift">As typed; empty where none was set.</param>
/// <param name="Typed">As typed, with the range it was read on.</param>
/// <param name="Pressure">Test pressure as typed; empty where none was.</param>
public sealed record RawReading(int Sequence, Sentence What, string Lift, string Typed, string Pressure);
