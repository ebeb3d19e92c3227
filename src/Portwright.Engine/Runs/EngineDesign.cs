using Portwright.Engine.Cam;
using Portwright.Engine.Charge;
using Portwright.Engine.Cylinder;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Runs;

/// <summary>Everything an engine run depends on, as plain figures. Two designs that are written alike run alike, bit for bit.</summary>
/// <remarks>SI units. Every cylinder is alike: the same bore, cam, ports and pipes.</remarks>
public sealed record EngineDesign(CylinderSize Size, ValveSide Intake, ValveSide Exhaust)
{
    /// <summary>In the whole engine, 1 or more: torque and power are those of all of them.</summary>
    public int Cylinders { get; init; } = 1;

    /// <summary>
    /// Cylinder numbers from 1 in the order they fire, evenly apart. Null: one cylinder is run and stands for all, its exhaust opening to the
    /// air, its intake too or to a plenum of steady pressure.
    /// </summary>
    public IReadOnlyList<int>? FiringOrder { get; init; }

    /// <summary>Between the air and all intakes; where one cylinder stands for all only its throttle counts. Null: each intake opens to the air.</summary>
    public Manifold? Manifold { get; init; }

    /// <summary>Behind the exhaust pipes, where all cylinders run; null: each exhaust opens to the air.</summary>
    public Collector? Collector { get; init; }

    /// <summary>The air the engine takes in, and in which it is judged.</summary>
    public GasAtRest Air { get; init; } = new(101_325, 293.15);

    /// <summary>Share by mass of dry air in it, 0 to 1: water vapour takes room and burns nothing.</summary>
    public double DryShare { get; init; } = 1;

    /// <summary>Pressure behind the exhaust over that of the air, Pa, zero or above.</summary>
    public double BackPressure { get; init; }

    public Fuel Fuel { get; init; } = Fuel.Petrol;

    /// <summary>Fuel over the fuel that just burns, 0.3 to 1.5. 1.1 to 1.15 for most power (common practice). No unit.</summary>
    public double Richness { get; init; } = 1.12;

    public Combustion Combustion { get; init; } = Combustion.Usual;

    /// <summary>Surfaces round the cylinder's gas; null: no heat passes.</summary>
    public WallTemperatures? Walls { get; init; } = WallTemperatures.Usual;

    /// <summary>Friction of the moving parts; null: none.</summary>
    public ChenFlynn? Friction { get; init; } = ChenFlynn.Usual;

    /// <summary>Constant heat capacities instead of those of air and burnt gas: for comparison with theory.</summary>
    public PlainGas? PlainGas { get; init; }

    /// <summary>Share of the longest stable time step that is taken, above 0 and below 1.</summary>
    public double Courant { get; init; } = 0.85;

    /// <summary>Swept by all pistons, m3.</summary>
    public double Displacement => Cylinders * Size.Space().Displacement;
}

/// <summary>Bore, stroke, rod, pin offset in m; compression ratio. Ranges: <see cref="Physics.Crank.SliderCrank"/> and <see cref="CylinderSpace"/>.</summary>
/// <param name="Bore">m, above zero.</param>
/// <param name="Stroke">m, above zero.</param>
/// <param name="Rod">Centre to centre, m.</param>
/// <param name="CompressionRatio">Ratio of largest to smallest volume, above 1.</param>
/// <param name="PinOffset">m, positive towards the side on which the crank pin goes down.</param>
public sealed record CylinderSize(double Bore, double Stroke, double Rod, double CompressionRatio, double PinOffset = 0)
{
    public CylinderSpace Space() => new(Bore, new(Stroke, Rod, PinOffset), CompressionRatio);
}

/// <summary>Valves, port and pipe of one side of a cylinder.</summary>
/// <param name="Timing">When the valves open and how far.</param>
/// <param name="Areas">Of all valves of this side together.</param>
/// <param name="Tract">From the valve seat outwards: the port, then what is bolted to it.</param>
public sealed record ValveSide(ValveTiming Timing, MeasuredAreas Areas, Tract Tract);

/// <summary>Lift over crank angle, from a cam card or from a table.</summary>
public sealed record ValveTiming
{
    public CamCard? Card { get; init; }

    /// <summary>Crank angles, rad, where there is a table instead; 0 is top dead centre of gas exchange.</summary>
    public IReadOnlyList<double> TableCrank { get; init; } = [];

    /// <summary>Lifts of the valve, m, as many.</summary>
    public IReadOnlyList<double> TableLift { get; init; } = [];

    /// <summary>Turns the whole event, rad of crank; positive is later.</summary>
    public double Later { get; init; }
}

/// <summary>Effective area over lift, as the bench gave it.</summary>
/// <param name="Lifts">m, above zero and rising; nothing flows at no lift.</param>
/// <param name="WithTheStream">m2, as many: into the cylinder through an intake, out of it through an exhaust.</param>
/// <param name="Backwards">m2, as many, measured the other way; null: taken like <paramref name="WithTheStream"/>.</param>
/// <remarks>Above the highest lift tested the area stays what it was there.</remarks>
public sealed record MeasuredAreas(IReadOnlyList<double> Lifts, IReadOnlyList<double> WithTheStream, IReadOnlyList<double>? Backwards = null)
{
    /// <summary>The same lifts with every area multiplied.</summary>
    /// <param name="factor">Of the area at a lift (m), no unit, above zero.</param>
    public MeasuredAreas Scaled(Func<double, double> factor) =>
        new(Lifts, [.. WithTheStream.Select((a, i) => a * factor(Lifts[i]))], Backwards is null ? null : [.. Backwards.Select((a, i) => a * factor(Lifts[i]))]);
}

/// <summary>A pipe by its sections, from the valve outwards.</summary>
/// <param name="Stations">Distance from the valve seat along the centreline (m, the first 0, rising) and section (m2); diameters go in straight lines between.</param>
/// <param name="CellLength">Length of the cells it is cut into, m, about.</param>
/// <param name="WallTemperature">K; null: no heat passes.</param>
/// <param name="Roughness">m.</param>
/// <param name="BendLoss">Of all bends together, dynamic heads, no unit.</param>
/// <param name="EndCorrection">By how much the open end sounds longer, m; in all-cylinder runs also where it meets others.</param>
public sealed record Tract(
    IReadOnlyList<TractStation> Stations, double CellLength, double? WallTemperature = null, double Roughness = 0, double BendLoss = 0, double EndCorrection = 0)
{
    /// <summary>From the seat to the open end, without end correction, m.</summary>
    public double Length => Stations[^1].Distance;

    /// <summary>A pipe of one diameter.</summary>
    /// <param name="length">m, above zero.</param>
    /// <param name="diameter">m, above zero.</param>
    /// <param name="cellLength">m, above zero.</param>
    public static Tract Straight(double length, double diameter, double cellLength) =>
        new([new(0, Math.PI / 4 * diameter * diameter), new(length, Math.PI / 4 * diameter * diameter)], cellLength);

    /// <summary>Section at a distance from the seat, m2; the last one beyond the end.</summary>
    /// <param name="distance">From the valve seat, m, zero or above.</param>
    public double AreaAt(double distance)
    {
        for (var i = 1; i < Stations.Count; i++)
        {
            if (distance > Stations[i].Distance) continue;
            var (a, b) = (Stations[i - 1], Stations[i]);
            var share = Math.Max(0, (distance - a.Distance) / (b.Distance - a.Distance));
            var side = Math.Sqrt(a.Area) + share * (Math.Sqrt(b.Area) - Math.Sqrt(a.Area));
            return side * side;
        }

        return Stations[^1].Area;
    }
}

/// <summary>Distance from the valve seat, m, and section, m2, above zero.</summary>
/// <param name="Distance">From the valve seat, m.</param>
/// <param name="Area">m2, above zero.</param>
public readonly record struct TractStation(double Distance, double Area);

/// <summary>One vessel all intakes draw from, behind one throttle.</summary>
/// <param name="Volume">m3.</param>
/// <param name="ThrottleArea">Effective area of throttle or carburettor wide open, m2.</param>
/// <param name="ThrottleLength">Of the bore behind the throttle, m.</param>
public sealed record Manifold(double Volume, double ThrottleArea, double ThrottleLength = 0.1);

/// <summary>Where exhaust pipes meet.</summary>
/// <param name="Primaries">Pipes that meet in one, 2 or more; cylinders are shared out in the order they fire, so that each collector has even pulses.</param>
/// <param name="Length">m.</param>
/// <param name="Diameter">m.</param>
public sealed record Collector(int Primaries, double Length, double Diameter);

/// <summary>How the charge burns: put in, not computed.</summary>
/// <param name="HalfBurntAfterTop">Crank angle after top dead centre of firing at which half is burnt, rad.</param>
/// <param name="TenthToNineTenths">Crank angle in which it goes from a tenth to nine tenths burnt, rad.</param>
/// <param name="ShareBurnt">Of the heat that could be set free, 0 to 1, no unit.</param>
public sealed record Combustion(double HalfBurntAfterTop, double TenthToNineTenths, double ShareBurnt)
{
    /// <summary>Half burnt 9 degrees after top, 30 degrees from a tenth to nine tenths, 96 percent burnt. Common practice, no source.</summary>
    public static readonly Combustion Usual = new(9 * Math.PI / 180, 30 * Math.PI / 180, 0.96);

    /// <summary>The engine is turned, not fired.</summary>
    public static readonly Combustion None = new(0, 1, 0);
}

/// <summary>k above 1 and below 2, R in J/(kg K).</summary>
/// <param name="HeatCapacityRatio">k, no unit, above 1 and below 2.</param>
/// <param name="GasConstant">J/(kg K), above zero.</param>
public sealed record PlainGas(double HeatCapacityRatio, double GasConstant);
