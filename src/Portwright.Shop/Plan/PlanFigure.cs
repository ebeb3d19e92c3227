using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>One figure of the engine, stated or assumed.</summary>
/// <param name="Name">As the engine plan's page names it.</param>
/// <param name="Value">SI.</param>
/// <param name="Why">Why it was assumed; empty where it is stated.</param>
public sealed record PlanFigure(string Name, double Value, Dimension Dimension, Sentence? Why = null)
{
    /// <summary>Why it was assumed; empty where it is stated.</summary>
    public Sentence Why { get; init; } = Why ?? Sentence.Empty;

    public bool IsAssumed => !Why.IsEmpty;

    /// <summary>The stated value, else the assumed one with its reason.</summary>
    internal static PlanFigure Of(string name, double? stated, Dimension dimension, double assumed, Sentence why) =>
        stated is { } value ? new(name, value, dimension) : new(name, assumed, dimension, why);

    /// <summary>As it is printed: <c>3.520 in</c>, <c>8</c>.</summary>
    public Quantity Quantity => new(Value, Dimension);
}

/// <summary>What keeps a plan from being an engine.</summary>
/// <param name="Field">As the engine plan's page names it.</param>
/// <param name="Words">Field, value and cure.</param>
public sealed record PlanProblem(string Field, Sentence Words);
