using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Units;

namespace Portwright.Cli.Calc;

/// <summary>Meters: from what is read on the bench to mass flow, and with a test pressure to the effective area.</summary>
internal static class MeterCalculations
{
    private static readonly Input Dp = new("dp", "differential across the meter", Dimension.Pressure);

    private static readonly Input AtMeter = Input.Optional("meter-temperature", "air temperature at the meter: else the plenum's, else the room's", Dimension.Temperature);

    private static readonly Input InPlenum = Input.Optional("plenum-temperature", "air temperature in the plenum: else the meter's, else the room's", Dimension.Temperature);

    private static readonly Input[] Around =
    [
        AirCalculations.Barometer, AirCalculations.Temperature, AirCalculations.Humidity,
        AtMeter, InPlenum,
        Input.Optional("test-pressure", "test pressure: gives the effective area as well", Dimension.Pressure),
        new("restate-at", "flow restated at test pressure", Dimension.Pressure, "28 inH2O"),
    ];

    // What is not typed is a guess: half of a 95 percent interval of what is plausible stands behind it, the same as of a bench card that assumes it.
    private static readonly Input[] Scale =
    [
        new("full-scale", "flow of the range at 100 percent", Dimension.VolumeFlow),
        new("full-scale-dp", "differential at 100 percent", Dimension.Pressure, "6 inH2O ± 6.8 inH2O"),
        new("calibrated-at", "test pressure the range was calibrated at", Dimension.Pressure, "28 inH2O ± 20.4 inH2O"),
    ];

    private static readonly Choice Marks = new("scale", "marks are percent of: flow (square-root) or differential (linear)", "square-root", "linear");

    private static readonly Choice Direction = new("direction", "which way the air goes", "draw", "blow");

    private const string Unsaid = "unsaid", Meaning = "meaning";

    public static IReadOnlyList<Calculation> All { get; } =
    [
        new("orifice", "orifice plate in a pipe, ISO 5167-2",
            [
                new("pipe", "inside diameter of the pipe", Dimension.Length), new("bore", "diameter of the hole", Dimension.Length), Dp, .. Around,
                Input.Optional("upstream-pressure", "absolute pressure before the plate, where known", Dimension.Barometer),
                Input.Optional("density", "density before the plate, where known", Dimension.Density),
                Input.Optional("viscosity", "viscosity, where known", Dimension.Viscosity),
                Input.Optional("k", "isentropic exponent, where known", Dimension.Ratio),
            ],
            [new("taps", "where the pressure is tapped", "corner", "d", "flange"), Direction],
            Orifice, "orifice --pipe 4in --bore 2.5in --taps flange --dp \"12 inH2O +- 0.05 inH2O\""),
        new("plate", "thin plate with a hole between two plenums",
            [
                new("diameter", "diameter of the hole", Dimension.Length),
                new("cd", "calibrated discharge coefficient of the hole", Dimension.Ratio), Dp, .. Around,
            ],
            [Direction], Plate, "plate --diameter 2in --cd \"0.612 +- 0.5 %\" --dp 8inH2O --test-pressure 28inH2O"),
        new("percent", "percent-of-range scale",
            [
                new("reading", "percent read off the scale", Dimension.Fraction), .. Scale, .. Around,
            ],
            [Marks, Direction],
            Percent, "percent --reading \"71.4 +- 0.2 %\" --full-scale 300cfm --test-pressure 28inH2O"),
        new("laminar", "linear (laminar) flow element",
            [
                Dp,
                new("reference-flow", "its flow in the calibration", Dimension.VolumeFlow),
                new("reference-dp", "at this differential", Dimension.Pressure),
                new("reference-temperature", "and this air temperature", Dimension.Temperature, "20 °C"), .. Around,
            ],
            [Direction], Laminar, "laminar --dp 4.2inH2O --reference-flow 400cfm --reference-dp 8inH2O"),
        new("direct", "readout that already shows volume flow",
            [
                new("flow", "the flow shown", Dimension.VolumeFlow),
                Input.Optional("stated-pressure", "pressure it is stated at (basis state or standard)", Dimension.Barometer),
                Input.Optional("stated-temperature", "temperature it is stated at (basis state or standard)", Dimension.Temperature),
                Input.Optional("assumed-density", "density it was scaled with (basis assumed)", Dimension.Density), .. Around,
            ],
            [new("basis", "what the shown flow is: not said; already restated; volume actual, at a state, of standard air, by an assumed density", Unsaid, "restated", "actual", "state", "standard", "assumed"), Direction],
            Direct, "direct --flow 221cfm --basis standard --test-pressure 28inH2O", "direct --flow 88.0cfm --test-pressure 10inH2O") { Assumed = OtherMeaning },
        new("tube", "pressure from the length read along a manometer tube",
            [
                new("length", "length along the tube from its zero", Dimension.Length),
                Input.Optional("fluid-density", "density of the fluid; of water its temperature will do", Dimension.Density),
                Input.Optional("water-temperature", "temperature of a column of water", Dimension.Temperature),
                new("angle", "angle from the horizontal", Dimension.Angle, "90°"),
                new("well-ratio", "area of the tube over area of the well", Dimension.Ratio, "0"),
            ],
            [], Tube, "tube --length 6in --fluid-density 0.826g/cm3 --angle 30deg", "tube --length 28in --water-temperature 75F"),
        new("range", "what a percent-of-range scale will read for a port's flow",
            [
                new("flow", "flow of the port, standard air", Dimension.VolumeFlow),
                new("test-pressure", "at this test pressure", Dimension.Pressure, "28 inH2O"),
                .. Scale, AirCalculations.Barometer, AirCalculations.Temperature, AirCalculations.Humidity,
                AtMeter, InPlenum,
            ],
            [Marks, Direction], Range, "range --flow 240cfm --full-scale 300cfm"),
    ];

    private static void Orifice(Given g, Working w)
    {
        var plate = new OrificePlate(g["pipe"], g["bore"], g.Choice("taps") switch
        {
            "corner" => OrificeTaps.Corner,
            "d" => OrificeTaps.DAndHalfD,
            _ => OrificeTaps.Flange,
        });
        var place = new Place(g);
        var air = place.AtMeter(plate.Differential(g["dp"]));
        double p = g.Find("upstream-pressure") ?? air.Pressure, rho = g.Find("density") ?? air.Density,
            mu = g.Find("viscosity") ?? air.DynamicViscosity, k = g.Find("k") ?? air.HeatCapacityRatio;
        w.Line("diameter_ratio", "beta", plate.DiameterRatio, Dimension.Ratio, "bore/pipe");
        w.Line("density", "density before the plate", rho, Dimension.Density, g.Has("density") ? "as typed" : "CIPM-2007");
        w.Line("viscosity", "viscosity", mu, Dimension.Viscosity, g.Has("viscosity") ? "as typed" : "Sutherland, U.S. Standard Atmosphere 1976, equation 51");
        place.Finish(w, plate.Flow(g["dp"], p, rho, mu, k), "m = C/sqrt(1 - beta^4) eps pi/4 d^2 sqrt(2 dp rho)", "ISO 5167-2:2003, equation 1", "Reader-Harris/Gallagher, ISO 5167-2:2003, equation 4");
    }

    private static void Plate(Given g, Working w) =>
        Through(g, w, PlenumPlate.Round(g["diameter"], g["cd"]), g["dp"], "m = C eps A sqrt(2 rho dp)", "ISO 5167-2:2003, 5.3.2.2 with beta 0 for eps");

    private static void Percent(Given g, Working w)
    {
        var range = RangeOf(g);
        w.Line("differential", "differential", range.Differential(g["reading"]), Dimension.Pressure, range.Scale == RangeScale.Linear ? "full scale x mark" : "full scale x mark squared");
        w.Line("plate_constant", "area x coefficient of the range", range.PlateConstant, Dimension.Area, "K = full-scale mass flow/(eps sqrt(2 rho dp)) in the calibration air");
        Through(g, w, range, g["reading"], "m = K eps sqrt(2 rho dp)", "");
    }

    private static PercentRange RangeOf(Given g) =>
        new(g["full-scale"], g["calibrated-at"], StandardAir.Default, g.Choice("scale") == "linear" ? RangeScale.Linear : RangeScale.SquareRoot, g["full-scale-dp"]);

    private static void Range(Given g, Working w)
    {
        var direction = TestPieceCalculations.DirectionOf(g);
        var (range, room) = (RangeOf(g), AirCalculations.Of(g));
        var bench = new TestConditions(room, g["test-pressure"], direction, g.Find("plenum-temperature"), g.Find("meter-temperature"));
        var area = RestatedFlow.EffectiveAreaFrom(g["flow"], g["test-pressure"], StandardAir.Default, direction);
        var reading = TestPieceReduction.ReadingFor(range, area, 1, bench);
        var limits = range.Flow(reading, bench.MeterUpstream(range.Differential(reading))).Limits;
        w.Line("effective_area", "effective area of the port", area, Dimension.Area, "mass flow over that of a loss-free nozzle a unit of area", TestPieceCalculations.NozzleSource);
        w.Line("differential", "differential of the meter", range.Differential(reading), Dimension.Pressure, "at that mark");
        w.Answer("reading", "the scale will read", reading, Dimension.Fraction, "the mark whose flow is that of the port between the same pressures");
        w.Remark(MeterLimitWords.Describe(limits));
        AirCalculations.RangeRemark(room, w);
    }

    private static void Laminar(Given g, Working w)
    {
        if (!(g["reference-dp"] > 0)) throw new Terminal.Refusal("--reference-dp must be above zero: type the differential its flow was calibrated at, such as 8inH2O.");
        var element = new LaminarElement(g["reference-flow"] / g["reference-dp"], Sutherland.Viscosity(g["reference-temperature"]));
        w.Line("reference_viscosity", "viscosity in the calibration", element.ReferenceViscosity, Dimension.Viscosity, "Sutherland, U.S. Standard Atmosphere 1976, equation 51");
        Through(g, w, element, g["dp"], "m = rho Q, Q = G dp mu_ref/mu (Hagen-Poiseuille)", "");
    }

    private static void Direct(Given g, Working w)
    {
        double Stated(string name) => g.Find(name) ?? throw new Terminal.Refusal($"--{name} is missing: basis {g.Choice("basis")} needs it.");
        var readout = g.Choice("basis") switch
        {
            Unsaid or "restated" => StandInBench.Meter(ReadoutMeaning.Unsaid, g["restate-at"]),
            "state" => DirectReadout.ActualAtState(Stated("stated-pressure"), Stated("stated-temperature")),
            "standard" => DirectReadout.StandardAirCorrected(new StandardAir(g.Find("stated-pressure") ?? 101_325, g.Find("stated-temperature") ?? 293.15)),
            "assumed" => DirectReadout.AssumedDensity(Stated("assumed-density")),
            _ => DirectReadout.ActualAtMeter,
        };
        Through(g, w, readout, g["flow"], readout.Basis switch
        {
            ReadoutBasis.AssumedDensity => "m = Q sqrt(rho_a rho)",
            ReadoutBasis.Restated => "m = Q rho_std, brought from the pressure it is restated at to the test pressure",
            _ => "m = Q rho",
        }, "", g.Find(Meaning));
        if (g.Has(Meaning)) w.Remark($"{ReadoutSaid.Question} Until it is said the number stands as typed, and the other meaning stands in the doubt: --basis restated, or --basis actual.");
    }

    /// <summary>What a readout shows and nobody said: 0 already restated, 1 what passes the meter.</summary>
    private static IEnumerable<(string Name, InputEstimate Input)> OtherMeaning(Given g) =>
        g.Choice("basis") == Unsaid ? [(Meaning, new InputEstimate("what the readout shows", 0, StandInBench.OtherMeaning))] : [];

    private static void Tube(Given g, Working w)
    {
        var tube = g.Find("fluid-density") is { } density ? new ManometerTube(density, g["angle"], g["well-ratio"])
            : g.Find("water-temperature") is { } temperature ? ManometerTube.OfWater(temperature, g["angle"], g["well-ratio"])
            : throw new Terminal.Refusal("--fluid-density is missing: type it, or --water-temperature for a column of water.");
        if (!g.Has("fluid-density")) w.Line("fluid_density", "density of the water", tube.FluidDensity, Dimension.Density, "at its temperature", "Tanaka et al., Metrologia 38 (2001) 301");
        w.Line("pressure_per_length", "pressure for each metre (Pa)", tube.PressurePerLength, Dimension.Ratio, "rho g (sin(angle) + a/A), g = 9.80665 m/s2");
        w.Answer("differential", "differential", tube.Differential(g["length"]), Dimension.Pressure, "dp = rho g L (sin(angle) + a/A)", "hydrostatics");
    }

    /// <param name="other">How far the reading is what passes the meter, 0 to 1; null where its meaning is known.</param>
    private static void Through(Given g, Working w, IMeter meter, double reading, string how, string source, double? other = null)
    {
        var place = new Place(g);
        var air = place.AtMeter(meter.Differential(reading));
        w.Line("density", "density before the meter", air.Density, Dimension.Density, "CIPM-2007");
        var flow = place.Flow(meter, reading);
        if (other is { } share) flow = flow with { MassFlow = flow.MassFlow + share * (place.Flow(StandInBench.Meter(ReadoutMeaning.AtMeter), reading).MassFlow - flow.MassFlow) };
        place.Finish(w, flow, how, source, "as typed");
    }

    /// <summary>Where the meter stands: on a bench with a test pressure, or alone in the room's air.</summary>
    private readonly struct Place(Given g)
    {
        private readonly AirState _room = AirCalculations.Of(g);

        private TestConditions? Bench => g.Find("test-pressure") is { } dp
            ? new TestConditions(_room, dp, TestPieceCalculations.DirectionOf(g), g.Find("plenum-temperature"), g.Find("meter-temperature"))
            : null;

        public AirState AtMeter(double differential) =>
            Bench?.MeterUpstream(differential) ?? _room.At(_room.Pressure, g.Find("meter-temperature") ?? g.Find("plenum-temperature") ?? _room.Temperature);

        /// <summary>Through the meter; on a bench as its reduction has it.</summary>
        public MeterFlow Flow(IMeter meter, double reading)
        {
            var flow = meter.Flow(reading, AtMeter(meter.Differential(reading)));
            return Bench is { } bench ? flow with { MassFlow = TestPieceReduction.EffectiveArea(meter, reading, 1, bench).MassFlow } : flow;
        }

        public void Finish(Working w, MeterFlow flow, string how, string source, string coefficientFrom)
        {
            if (!double.IsNaN(flow.DischargeCoefficient)) w.Line("discharge_coefficient", "discharge coefficient C", flow.DischargeCoefficient, Dimension.Ratio, coefficientFrom);
            if (flow.Expansibility != 1) w.Line("expansibility", "expansibility", flow.Expansibility, Dimension.Ratio, "eps = 1 - (0.351 + 0.256 beta^4 + 0.93 beta^8)(1 - (p2/p1)^(1/k))", "ISO 5167-2:2003, 5.3.2.2");
            if (!double.IsNaN(flow.Reynolds)) w.Line("reynolds_pipe", "Reynolds number", flow.Reynolds, Dimension.Ratio, "4 m/(pi mu D)");
            w.Answer("mass_flow", "mass flow", flow.MassFlow, Dimension.MassFlow, how, source);
            w.Answer("standard_volume_flow", "flow in standard air", flow.MassFlow / StandardAir.Default.Density, Dimension.VolumeFlow, "m/rho, 101325 Pa, 20 degC, dry");
            if (Bench is { } bench)
            {
                TestPieceCalculations.ChokedRemark(bench.TestPressure, bench.Direction, _room, w);
                var area = EffectiveArea.From(flow.MassFlow, bench.TestPieceUpstream, bench.TestPieceDownstreamPressure);
                w.Answer("effective_area", "effective area", area, Dimension.Area, "mass flow over that of a loss-free nozzle", TestPieceCalculations.NozzleSource);
                w.Answer("restated_flow", "flow restated, standard air", RestatedFlow.VolumeFlow(area, g["restate-at"], StandardAir.Default, bench.Direction), Dimension.VolumeFlow,
                    $"effective area x nozzle flow at {Print.Number(g["restate-at"], Dimension.Pressure, UnitSystem.UsCustomary)}");
            }
            w.Remark(MeterLimitWords.Describe(flow.Limits));
            if (Bench?.Direction == FlowDirection.Blow && !g.Has("meter-temperature") && !g.Has("plenum-temperature"))
                w.Remark("The blower warms the air it blows: type --plenum-temperature, or the room's is taken.");
            AirCalculations.RangeRemark(_room, w);
        }
    }
}
