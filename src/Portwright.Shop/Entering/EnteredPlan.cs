using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>The engine plan. What engines usually are: common practice, no source.</summary>
public static class EnteredPlan
{
    public static readonly EnteredField Bore = new("plan.bore", "Bore", Dimension.Length, 0.02, 0.4,
        _ => [new(0.048, 0.145, $"a bore is {Quantity.Length(0.048)} to {Quantity.Length(0.145)}")]);

    public static readonly EnteredField Stroke = new("plan.stroke", "Stroke", Dimension.Length, 0.015, 0.5, around => [around[Bore] is { } bore
        ? new(0.48 * bore, 1.5 * bore, $"with a bore of {Quantity.Length(bore)} a stroke is {Quantity.Length(0.48 * bore)} to {Quantity.Length(1.5 * bore)}")
        : new(0.03, 0.16, $"a stroke is {Quantity.Length(0.03)} to {Quantity.Length(0.16)}")]);

    public static readonly EnteredField Rod = new("plan.rod", "Rod length", Dimension.Length, 0.03, 0.8, around => [around[Stroke] is { } stroke
        ? new(1.3 * stroke, 2.7 * stroke, $"with a stroke of {Quantity.Length(stroke)} a rod is {Quantity.Length(1.3 * stroke)} to {Quantity.Length(2.7 * stroke)} between centres")
        : new(0.07, 0.26, $"a rod is {Quantity.Length(0.07)} to {Quantity.Length(0.26)} between centres")]);

    public static readonly EnteredField Compression = new("plan.compression", "Compression ratio", Dimension.Ratio, 2, 30,
        _ => [new(6, 17, $"engines are built at 6 to 17")]);

    public static readonly EnteredField LobeLift = new("plan.lobe-lift", "Lobe lift", Dimension.Lift, 0.001, 0.03,
        _ => [new(0.0045, 0.0145, $"a lobe lifts {Quantity.Lift(0.0045)} to {Quantity.Lift(0.0145)}")]);

    public static readonly EnteredField Rocker = new("plan.rocker", "Rocker ratio", Dimension.Ratio, 0.5, 4,
        _ => [new(1, 2.3, $"rockers are 1 to 2.3")]);

    public static readonly EnteredField Lash = new("plan.lash", "Lash", Dimension.Lift, 0, 0.003,
        _ => [new(0, 0.001, $"lash is under {Quantity.Lift(0.001)}")]);

    /// <summary>Where bore and stroke are known the piston's mean speed bounds it: 32 m/s (common practice, no source).</summary>
    public static readonly EnteredField HighestSpeed = new("plan.highest-speed", "Highest speed", Dimension.RotationalSpeed, 20, 3000, around =>
    {
        const double least = 1500 * Math.PI / 30;
        var most = around[Stroke] is { } stroke ? Math.PI * 32 / stroke : 16000 * Math.PI / 30;
        return [new(least, most, around[Stroke] is { } known
            ? (Sentence)$"with a stroke of {Quantity.Length(known)} the piston runs at {Quantity.Speed(32)} on the mean at {new Quantity(most, Dimension.RotationalSpeed, Figures: 3)}"
            : $"engines turn {new Quantity(least, Dimension.RotationalSpeed)} to {new Quantity(most, Dimension.RotationalSpeed)}")];
    });

    public static readonly EnteredField LowestSpeed = new("plan.lowest-speed", "Lowest speed", Dimension.RotationalSpeed, 20, 3000, around =>
        [new(500 * Math.PI / 30, around[HighestSpeed] ?? 12000 * Math.PI / 30, $"it lies under the highest speed")]);
}
