using System.Globalization;
using Portwright.Shop.Entering;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Pages;

/// <summary>One box of the engine plan's form.</summary>
/// <param name="Name">In the form.</param>
/// <param name="Figure">As <see cref="PlanFigure"/> and <see cref="PlanProblem"/> name it.</param>
/// <param name="Value">As it stands, SI.</param>
/// <param name="Unit">Unit of a bare number where it is not the dimension's own.</param>
public sealed record PlanBox(string Name, string Label, string Figure, Dimension Dimension, double? Value, string? Hint = null, string? Unit = null, EnteredField? Field = null)
{
    public string UnitName(UnitSystem units) => Unit ?? Print.UnitName(Dimension, units);

    /// <summary>The value as the box shows it.</summary>
    public string? Printed(UnitSystem units) => Value is { } v ? Text(v, units) : null;

    /// <summary>The default that stands in while the box is empty: <c>assumed 5.810</c>.</summary>
    public string? Assumed(PlanInFull? plan, UnitSystem units) =>
        plan?.Figures.FirstOrDefault(f => f.Name == Figure && f.IsAssumed) is { } figure
            ? $"assumed {(figure.Dimension == Dimension.RotationalSpeed ? (figure.Value * 30 / Math.PI).ToString("0", CultureInfo.InvariantCulture) : Text(figure.Value, units))}"
            : null;

    /// <summary>What the box says now, SI. A box left as the page printed it keeps the value behind it: printing rounds.</summary>
    /// <param name="around">What the other boxes say.</param>
    public double? Read(Typing typed, UnitSystem units, Surroundings around) => string.IsNullOrWhiteSpace(typed.Raw(Name)) ? null
        : typed.Raw(Name) == Printed(units) ? Value
        : Field is { } field ? typed.Needed(Name, field, around)?.Si(field.Dimension)
        : typed.Needed(Name, Label, Dimension, Unit is { } unit ? Shop.Units.Unit.Find(unit, Dimension) : null)?.Si(Dimension);

    private string Text(double si, UnitSystem units) =>
        Unit is { } named && Shop.Units.Unit.Find(named, Dimension) is { } unit ? unit.FromSi(si).ToString("0.###", CultureInfo.InvariantCulture)
        : Dimension is Dimension.Ratio or Dimension.Count ? si.ToString("0.######", CultureInfo.InvariantCulture)
        : Print.Bare(si, Dimension, units);
}

/// <summary>Boxes that belong together; folded away where they are seldom typed.</summary>
public sealed record PlanGroup(string Title, bool Folded, IReadOnlyList<PlanBox> Boxes)
{
    /// <summary>Every box of a plan, group by group.</summary>
    public static IReadOnlyList<PlanGroup> Of(EnginePlan plan) =>
    [
        new("Cylinders", false,
        [
            new("cylinders", "Number", "Cylinders", Dimension.Count, plan.Cylinders),
            new("bore", "Bore", "Bore", Dimension.Length, plan.Bore, Field: EnteredPlan.Bore),
            new("stroke", "Stroke", "Stroke", Dimension.Length, plan.Stroke, Field: EnteredPlan.Stroke),
            new("rod", "Rod, between centres", "Rod", Dimension.Length, plan.RodLength, Field: EnteredPlan.Rod),
            new("ratio", "Compression ratio", "Compression ratio", Dimension.Ratio, plan.CompressionRatio, Field: EnteredPlan.Compression),
        ]),
        Cam("in", "Intake", "after", plan.IntakeCam, plan.IntakeTiming),
        Cam("ex", "Exhaust", "before", plan.ExhaustCam, plan.ExhaustTiming),
        new("Use", false,
        [
            new("low", "From", "Lowest speed", Dimension.Ratio, plan.LowestSpeed, Unit: "rpm"),
            new("high", "To", "Highest speed", Dimension.Ratio, plan.HighestSpeed, Unit: "rpm"),
            new("slow", "Air in the intake, slowest", "Port speed", Dimension.Speed, plan.PortSpeed?.From, "Mean speed you want at the highest rpm: the areas it asks for are drawn behind yours."),
            new("fast", "Fastest", "Port speed", Dimension.Speed, plan.PortSpeed?.To),
        ]),
        new("Runner, plenum and throttle", true,
        [
            new("runner", "Runner length from the flange", "Runner length", Dimension.Length, plan.Intake?.RunnerLength),
            new("runner-near", "Its section at the flange", "Runner section at the flange", Dimension.Area, plan.Intake?.FlangeArea),
            new("runner-far", "At the other end", "Runner section at the far end", Dimension.Area, plan.Intake?.FarArea),
            new("plenum", "Plenum volume", "Plenum volume", Dimension.Volume, plan.Intake?.PlenumVolume),
            new("carb", "Carb's flow rating", "Throttle", Dimension.VolumeFlow, (plan.Intake?.Throttle as RatedCarburettor)?.Flow, "Or give bores, or an area from a bench: one of the three."),
            new("carb-at", "Rated at", "Throttle", Dimension.Pressure, (plan.Intake?.Throttle as RatedCarburettor)?.RatedAt, "Usually 1.5 or 3.0; empty is 1.5.", "inHg"),
            new("bores", "Throttle bores, how many", "Throttle", Dimension.Count, (plan.Intake?.Throttle as ThrottleBores)?.Count),
            new("bore-size", "Diameter of each", "Throttle", Dimension.Length, (plan.Intake?.Throttle as ThrottleBores)?.Diameter),
            new("throttle", "Throttle's effective area", "Throttle, effective area", Dimension.Area, (plan.Intake?.Throttle as ThrottleArea)?.EffectiveArea),
        ]),
        new("Exhaust pipes", true,
        [
            new("primary", "Primary length", "Primary length", Dimension.Length, plan.Exhaust?.PrimaryLength),
            new("primary-size", "Its inside diameter", "Primary diameter", Dimension.Length, plan.Exhaust?.PrimaryDiameter),
            new("meet", "Primaries in a collector", "Primaries in a collector", Dimension.Count, plan.Exhaust?.PrimariesACollector),
            new("collector", "Collector length", "Collector length", Dimension.Length, plan.Exhaust?.CollectorLength),
            new("collector-size", "Its inside diameter", "Collector diameter", Dimension.Length, plan.Exhaust?.CollectorDiameter),
        ]),
        new("Air where it runs", true,
        [
            new("elevation", "Elevation", "Elevation", Dimension.Elevation, plan.Air?.Elevation, Field: EnteredRoom.Elevation),
            new("air-pressure", "Pressure at the place", "Pressure of the air", Dimension.Barometer, plan.Air?.Pressure, "Empty: by the elevation."),
            new("air-temperature", "Temperature", "Temperature of the air", Dimension.Temperature, plan.Air?.Temperature),
            new("air-humidity", "Humidity", "Humidity", Dimension.Fraction, plan.Air?.RelativeHumidity, Field: EnteredRoom.Humidity),
        ]),
        new("Limits of the class", true,
        [
            new("limit-lift", "Highest valve lift", "Highest lift", Dimension.Lift, plan.Limits?.HighestLift),
            new("limit-ratio", "Highest compression ratio", "Highest ratio", Dimension.Ratio, plan.Limits?.HighestCompressionRatio),
            new("limit-hole", "Restrictor diameter", "Restrictor", Dimension.Length, plan.Limits?.RestrictorDiameter),
        ]),
    ];

    private static PlanGroup Cam(string side, string name, string where, CamLift? cam, CamTiming? timing) => new($"Cam, {name.ToLowerInvariant()}", false,
    [
        new($"{side}-lobe", "Lobe lift", $"{name} lobe lift", Dimension.Lift, cam?.LobeLift, Field: EnteredPlan.LobeLift),
        new($"{side}-ratio", "Rocker ratio", $"{name} rocker ratio", Dimension.Ratio, cam?.RockerRatio, "Empty is 1: the lobe works on the valve.", Field: EnteredPlan.Rocker),
        new($"{side}-lash", "Lash", $"{name} lash", Dimension.Lift, cam?.Lash, Field: EnteredPlan.Lash),
        new($"{side}-seat", "Seat duration", $"{name} seat duration", Dimension.Angle, timing?.SeatDuration),
        new($"{side}-at", "Counted at lobe lift", $"{name} seat lift", Dimension.Lift, timing?.SeatLift),
        new($"{side}-050", "Duration at .050", $"{name} duration at .050", Dimension.Angle, timing?.DurationAt050),
        new($"{side}-200", "Duration at .200", $"{name} duration at .200", Dimension.Angle, timing?.DurationAt200),
        new($"{side}-centre", $"Lobe centre, {where} top dead centre", $"{name} lobe centre", Dimension.Angle, timing?.LobeCentre),
    ]);
}
