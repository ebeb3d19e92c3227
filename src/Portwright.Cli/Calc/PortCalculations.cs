using Portwright.Physics.Air;
using Portwright.Physics.Pitot;
using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Valves;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>In the port and at the valve: pitot speed, valve window, net lift.</summary>
internal static class PortCalculations
{
    private const string Heywood = "Heywood (1988), equations 6.7 to 6.9";

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new("pitot", "air speed from a pitot probe",
            [
                new("dp", "total less static pressure", Dimension.Pressure),
                new("static", "static pressure at the probe, absolute", Dimension.Barometer, "101325 Pa"),
                new("temperature", "air temperature, at rest: room or plenum", Dimension.Temperature, "20 °C"),
                AirCalculations.Humidity,
                new("factor", "probe factor on speed", Dimension.Ratio, "1"),
                Input.Optional("k", "heat-capacity ratio, where known", Dimension.Ratio),
                Input.Optional("gas-constant", "gas constant in J/(kg K), where known", Dimension.Ratio),
            ],
            [], Pitot, "pitot --dp \"28 inH2O +- 0.2 inH2O\" --temperature 75F"),
        new("window", "what the valve window allows at a lift",
            [
                new("head", "valve head diameter", Dimension.Length),
                new("seat-angle", "seat angle, from the plane of the valve head", Dimension.Angle, "45°"),
                new("seat-width", "seat width along its face", Dimension.Length, "1.5 mm"),
                new("throat", "inside diameter under the seat", Dimension.Length),
                new("stem", "stem diameter in the throat", Dimension.Length, "0 mm"),
                new("lift", "valve lift", Dimension.Lift),
                Input.Optional("flow", "flow in standard air: gives the discharge coefficients", Dimension.VolumeFlow),
                new("test-pressure", "test pressure of that flow", Dimension.Pressure, "28 inH2O"),
            ],
            [new("direction", "which way the air goes", "draw", "blow")],
            Window, "window --head 1.985in --seat-width .060in --throat 1.75in --stem .330in --lift .500 --flow \"241 +- 1.5 cfm\""),
        new("netlift", "lift at the valve from lift at the cam lobe",
            [
                new("lobe", "lift at the lobe", Dimension.Lift),
                new("rocker", "rocker ratio", Dimension.Ratio, "1"),
                new("lash", "clearance at the valve", Dimension.Lift, "0 mm"),
            ],
            [], Net, "netlift --lobe .340 --rocker 1.55 --lash .010"),
    ];

    private static void Pitot(Given g, Working w)
    {
        double dp = g["dp"], p = g["static"], t0 = g["temperature"];
        var air = AirState.FromRelativeHumidity(p, t0, g["humidity"]);
        double k = g.Find("k") ?? air.HeatCapacityRatio, r = g.Find("gas-constant") ?? air.GasConstant;
        var mach = PitotSpeed.Mach(dp, p, k);
        var temperature = t0 * IsentropicFlow.TemperatureRatio(mach, k);
        var rho = p / (r * temperature);
        var plain = g["factor"] * PitotSpeed.Incompressible(dp, rho);
        w.Line("heat_capacity_ratio", "heat-capacity ratio", k, Dimension.Ratio, g.Has("k") ? "as typed" : "McBride, Gordon, Reno, NASA TM-4513 (1993)");
        w.Line("gas_constant", "gas constant, J/(kg K)", r, Dimension.Ratio, g.Has("gas-constant") ? "as typed" : "p/(rho T) by CIPM-2007");
        w.Line("mach", "Mach number", mach, Dimension.Ratio, "p0/p = (1 + (k-1)/2 M^2)^(k/(k-1))", "NACA Report 1135 (1953), equation 44");
        w.Line("static_temperature", "temperature of the stream", temperature, Dimension.Temperature, "T = T0/(1 + (k-1)/2 M^2)", "the same, equation 43");
        w.Line("density", "density of the stream", rho, Dimension.Density, "p/(R T)");
        w.Line("speed_incompressible", "speed without compressibility", plain, Dimension.Speed, "sqrt(2 dp/rho)");
        w.Line("speed_iso_3966", "speed by ISO 3966", plain * PitotSpeed.ExpansionFactor(dp, p, k), Dimension.Speed, "alpha (1 - eps) sqrt(2 dp/rho)", "ISO 3966, to Mach 0.25");
        w.Answer("speed", "air speed", g["factor"] * PitotSpeed.FromTotalTemperature(dp, p, t0, k, r), Dimension.Speed, "factor x M sqrt(k R T)");
        if (mach > PitotSpeed.Iso3966LargestMach) w.Remark("Above Mach 0.25 ISO 3966 no longer speaks; the answer is the isentropic speed.");
    }

    private static void Window(Given g, Working w)
    {
        var seat = new ValveSeat(g["head"], g["seat-angle"], g["seat-width"], g["throat"], g["stem"]);
        var lift = g["lift"];
        var window = ValveWindow.At(seat, lift);
        w.Line("lift_over_diameter", "lift/diameter", window.LiftOverDiameter, Dimension.Ratio, "lift/head");
        w.Line("lift_1_2", "regime 1 ends at lift", ValveWindow.FirstRegimeEnds(seat), Dimension.Length, "w/(sin b cos b)", Heywood);
        w.Line("lift_2_3", "the throat takes over at lift", ValveWindow.ThroatTakesOver(seat), Dimension.Length, "((Dp^2 - Ds^2)^2/(4 Dm)^2 - w^2)^(1/2) + w tan b", Heywood);
        w.Line("regime", "regime", window.Regime, Dimension.Ratio, "1 square to the seat, 2 past it, 3 the throat");
        w.Line("throat_area", "throat less stem", window.ThroatArea, Dimension.Area, "pi/4 (Dp^2 - Ds^2)");
        w.Line("curtain_area", "curtain area", window.CurtainArea, Dimension.Area, "pi Dv L");
        w.Answer("area", "valve window", window.Area, Dimension.Area, $"the smallest section, regime {window.Regime}", Heywood);
        if (g.Find("flow") is { } flow)
        {
            var direction = TestPieceCalculations.DirectionOf(g);
            var area = RestatedFlow.EffectiveAreaFrom(flow, g["test-pressure"], StandardAir.Default, direction);
            w.Line("effective_area", "effective area of the port", area, Dimension.Area, "mass flow over that of a loss-free nozzle a unit of area", TestPieceCalculations.NozzleSource);
            if (lift > 0)
            {
                var cd = DischargeCoefficients.From(area, seat, lift);
                w.Answer("cd_curtain", "discharge coefficient, curtain", cd.OnCurtain, Dimension.Ratio, "effective area/curtain area");
                w.Answer("cd_window", "discharge coefficient, window", cd.OnWindow, Dimension.Ratio, "effective area/window");
                w.Answer("cd_throat", "discharge coefficient, throat", cd.OnThroat, Dimension.Ratio, "effective area/throat less stem");
            }
        }
        var usual = NamedLimits.ThroatOverValve;
        w.Answer("throat_share", "throat over valve head", ThroatShare.Of(seat.ThroatDiameter, seat.HeadDiameter), Dimension.Fraction, $"{usual.Said} is usual", usual.Source);
    }

    private static void Net(Given g, Working w)
    {
        w.Answer("net_lift", "net lift at the valve", NetLift.From(g["lobe"], g["rocker"], g["lash"]), Dimension.Lift, "lobe x ratio - lash, never below zero", "common practice, no source");
        w.Remark("Flex of the valve train is left out.");
    }
}
