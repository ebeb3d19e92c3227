using System.Globalization;
using Portwright.Shop.Findings;
using Portwright.Shop.Units;

namespace Portwright.Shop.Plan;

/// <summary>One figure of the engine, stated or assumed.</summary>
/// <param name="Name">As the engine plan's page names it.</param>
/// <param name="Value">SI.</param>
/// <param name="Why">Why it was assumed; empty where it is stated. Numbers in it are marked (<see cref="FindingWords.Show"/>).</param>
public sealed record PlanFigure(string Name, double Value, Dimension Dimension, string Why = "")
{
    public bool IsAssumed => Why.Length > 0;

    /// <summary>The stated value, else the assumed one with its reason.</summary>
    internal static PlanFigure Of(string name, double? stated, Dimension dimension, double assumed, string why) =>
        stated is { } value ? new(name, value, dimension) : new(name, assumed, dimension, why);

    /// <summary>As it is printed: <c>3.520 in</c>, <c>8</c>.</summary>
    public string Words(UnitSystem units) => Dimension switch
    {
        Dimension.Length => $"{Print.Bare(Value, Dimension.Lift, units)} {Print.UnitName(Dimension.Length, units)}",
        Dimension.Ratio => Value.ToString("0.###", CultureInfo.InvariantCulture),
        _ => Print.Number(Value, Dimension, units),
    };
}

/// <summary>What keeps a plan from being an engine.</summary>
/// <param name="Field">As the engine plan's page names it.</param>
/// <param name="Words">Field, value and cure, in marked numbers (<see cref="FindingWords.Show"/>).</param>
public sealed record PlanProblem(string Field, string Words);
