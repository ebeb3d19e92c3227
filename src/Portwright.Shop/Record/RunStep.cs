using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>One setting of a test: a lift to be opened to and read once.</summary>
/// <param name="Pass">Which going through the lifts it belongs to, from 1; lifts read again at another pressure are a pass of their own. No lift comes twice in one.</param>
/// <param name="TestPressure">The pressure to set for it; null: the sweep's.</param>
public sealed record RunStep(Typed Lift, int Pass = 1, Typed? TestPressure = null);

/// <summary>A run the shop goes through again and again, by the name it has there. It belongs to no job.</summary>
/// <param name="Name">As the shop calls it: <c>up, down, up by fifty</c>.</param>
public sealed record UsualRun(string Name, IReadOnlyList<RunStep> Steps) : Fact;
