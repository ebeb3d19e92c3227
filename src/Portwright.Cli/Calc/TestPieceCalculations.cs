using System.Globalization;
using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>The test piece: nozzle, effective area, restated flow, leak.</summary>
internal static class TestPieceCalculations
{
    public const string NozzleSource = "Heywood (1988), appendix C, equations C.8 and C.9";

    private const double Trade = 28 * 249.08891;

    private static readonly Choice Direction = new("direction", "which way the air goes", "draw", "blow");

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new("nozzle", "flow of a loss-free nozzle of known effective area",
            [
                new("area", "effective area", Dimension.Area),
                new("test-pressure", "pressure difference across it", Dimension.Pressure, "28 inH2O"),
                new("upstream-pressure", "absolute pressure before it", Dimension.Barometer, "101325 Pa"),
                new("upstream-temperature", "temperature before it", Dimension.Temperature, "20 °C"),
                AirCalculations.Humidity,
                Input.Optional("k", "heat-capacity ratio, where known", Dimension.Ratio),
                Input.Optional("gas-constant", "gas constant in J/(kg K), where known", Dimension.Ratio),
            ],
            [], NozzleFlow, "nozzle --area 1.55in2 --test-pressure 28inH2O"),
        new("area", "effective area from a flow in standard air",
            [
                new("flow", "volume flow of standard air", Dimension.VolumeFlow),
                new("test-pressure", "test pressure", Dimension.Pressure, "28 inH2O"),
            ],
            [Direction], Area, "area --flow \"221.9 +- 1.1 cfm\" --test-pressure 28inH2O"),
        new("restate", "a flow at one test pressure restated at another",
            [
                new("flow", "volume flow of standard air", Dimension.VolumeFlow),
                new("from", "measured at test pressure", Dimension.Pressure),
                new("to", "test pressure wanted", Dimension.Pressure, "28 inH2O"),
            ],
            [Direction], Restate, "restate --flow 180cfm --from 10inH2O --to 28inH2O"),
        new("leak", "a leak taken off a flow, as an effective area of its own",
            [
                new("flow", "flow with the leak in it, standard air", Dimension.VolumeFlow),
                new("test-pressure", "at this test pressure", Dimension.Pressure, "28 inH2O"),
                new("leak-flow", "flow with the port closed off, standard air", Dimension.VolumeFlow),
                new("leak-pressure", "at this test pressure", Dimension.Pressure, "28 inH2O"),
            ],
            [Direction], Leak, "leak --flow 224cfm --leak-flow \"3.1 +- 0.5 cfm\" --leak-pressure 20inH2O"),
    ];

    public static FlowDirection DirectionOf(Given g) => g.Choice("direction") == "blow" ? FlowDirection.Blow : FlowDirection.Draw;

    /// <summary>Says where a test pressure would choke the port: it is in another unit than was meant.</summary>
    public static void ChokedRemark(double testPressure, FlowDirection direction, in AirState room, Working w)
    {
        if (ChokedPressure.Words(Print.Number(testPressure, Dimension.Pressure, UnitSystem.UsCustomary), testPressure, direction, room) is { } choked) w.Remark(choked);
    }

    private static void NozzleFlow(Given g, Working w)
    {
        double p0 = g["upstream-pressure"], t0 = g["upstream-temperature"], dp = g["test-pressure"];
        var air = AirState.FromRelativeHumidity(p0, t0, g["humidity"]);
        var k = g.Find("k") ?? air.HeatCapacityRatio;
        var rho = g.Find("gas-constant") is { } r ? p0 / (r * t0) : air.Density;
        var flow = g["area"] * Nozzle.MassFlux(p0, rho, k, p0 - dp);
        w.Line("pressure_ratio", "pressure ratio", (p0 - dp) / p0, Dimension.Ratio, "(p0 - dp)/p0");
        w.Line("critical_pressure_ratio", "pressure ratio at which it chokes", Nozzle.CriticalPressureRatio(k), Dimension.Ratio, "(2/(k + 1))^(k/(k - 1))");
        w.Line("upstream_density", "density before it", rho, Dimension.Density, g.Has("gas-constant") ? "p0/(R T0)" : "CIPM-2007");
        w.Line("heat_capacity_ratio", "heat-capacity ratio", k, Dimension.Ratio, g.Has("k") ? "as typed" : "McBride, Gordon, Reno, NASA TM-4513 (1993)");
        w.Line("ratio_to_28", "flow over that at 28 inH2O", Nozzle.MassFlux(p0, rho, k, p0 - dp) / Nozzle.MassFlux(p0, rho, k, p0 - Trade), Dimension.Ratio, "same upstream state");
        w.Line("square_root_rule", "the same by the square-root rule", RestatedFlow.SquareRootRule(1, Trade, dp), Dimension.Ratio, "sqrt(dp/28 inH2O)", "common practice, no source");
        w.Answer("mass_flow", "mass flow", flow, Dimension.MassFlow, "m = A sqrt(2k/(k-1) p0 rho0 (r^(2/k) - r^((k+1)/k)))", NozzleSource);
        w.Answer("volume_flow", "volume flow before it", flow / rho, Dimension.VolumeFlow, "m/rho0");
        if (Nozzle.IsChoked(p0, k, p0 - dp)) w.Remark("The nozzle is choked: a lower pressure behind it passes no more air.");
    }

    private static void Area(Given g, Working w)
    {
        var area = RestatedFlow.EffectiveAreaFrom(g["flow"], g["test-pressure"], StandardAir.Default, DirectionOf(g));
        ChokedRemark(g["test-pressure"], DirectionOf(g), StandardAir.Default.State, w);
        w.Line("mass_flow", "mass flow", g["flow"] * StandardAir.Default.Density, Dimension.MassFlow, "flow x standard density (101325 Pa, 20 degC, dry)");
        w.Answer("effective_area", "effective area", area, Dimension.Area, "mass flow over that of a loss-free nozzle a unit of area", NozzleSource);
        w.Answer("effective_diameter", "as a round hole without loss", Math.Sqrt(4 * area / Math.PI), Dimension.Length, "sqrt(4 A/pi)");
    }

    private static void Restate(Given g, Working w)
    {
        var direction = DirectionOf(g);
        var area = RestatedFlow.EffectiveAreaFrom(g["flow"], g["from"], StandardAir.Default, direction);
        var flow = RestatedFlow.VolumeFlow(area, g["to"], StandardAir.Default, direction);
        ChokedRemark(g["from"], direction, StandardAir.Default.State, w);
        ChokedRemark(g["to"], direction, StandardAir.Default.State, w);
        var plain = RestatedFlow.SquareRootRule(g["flow"], g["from"], g["to"]);
        w.Line("effective_area", "effective area", area, Dimension.Area, "mass flow over that of a loss-free nozzle a unit of area", NozzleSource);
        w.Line("square_root_rule", "by the square-root rule", plain, Dimension.VolumeFlow, "flow x sqrt(to/from)", "common practice, no source");
        w.Answer("restated_flow", "flow restated, standard air", flow, Dimension.VolumeFlow, "effective area x nozzle flow a unit of area/standard density");
        // Of no flow there are no percent.
        if (flow == 0) return;
        w.Remark(string.Create(CultureInfo.InvariantCulture,
            $"The plain square-root rule gives {Print.Number(plain, Dimension.VolumeFlow, UnitSystem.UsCustomary)}, {Math.Abs(plain / flow - 1) * 100:F1} percent {(plain > flow ? "more" : "less")}: it forgets that air expands."));
        string Shown(ReadoutMeaning meaning) => Print.Number(StandInBench.Restated(meaning, g["flow"], g["from"], g["to"], direction), Dimension.VolumeFlow, UnitSystem.UsCustomary);
        w.Remark($"The flow is taken as standard air at the pressure it was measured at. Of a readout that shows what passes the meter it is {Shown(ReadoutMeaning.AtMeter)}; one that is restated already stays {Shown(ReadoutMeaning.Restated)}.");
    }

    private static void Leak(Given g, Working w)
    {
        var direction = DirectionOf(g);
        double Of(string flow, string pressure) => RestatedFlow.EffectiveAreaFrom(g[flow], g[pressure], StandardAir.Default, direction);
        ChokedRemark(g["test-pressure"], direction, StandardAir.Default.State, w);
        ChokedRemark(g["leak-pressure"], direction, StandardAir.Default.State, w);
        double all = Of("flow", "test-pressure"), leak = Of("leak-flow", "leak-pressure");
        w.Line("area_with_leak", "effective area with the leak", all, Dimension.Area, "mass flow over that of a loss-free nozzle a unit of area", NozzleSource);
        w.Line("leak_area", "effective area of the leak", leak, Dimension.Area, "the same, port closed off");
        if (all > 0) w.Line("leak_share", "leak over the whole", leak / all, Dimension.Ratio, "at the same test pressure");
        w.Answer("effective_area", "effective area of the port", all - leak, Dimension.Area, "the leak works between the same two pressures as the port");
        w.Answer("flow", "flow of the port, standard air", RestatedFlow.VolumeFlow(all - leak, g["test-pressure"], StandardAir.Default, direction), Dimension.VolumeFlow, "at the test pressure of the flow");
        if (all < leak) w.Remark("The flow is less than the leak: no air goes backwards. Look at --flow and --leak-flow, and at their test pressures.");
    }
}
