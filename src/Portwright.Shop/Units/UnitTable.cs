using UnitsNet.Units;

namespace Portwright.Shop.Units;

/// <summary>
/// Every unit the program reads and prints. Sizes come from UnitsNet; where it carries fewer digits than
/// NIST SP 811 (2008), Appendix B, prints or implies, the size is given here with where it comes from.
/// </summary>
internal static class UnitTable
{
    // NIST SP 811 (2008), Appendix B.8: the conventional inch of water at 4 °C and at 60 °F.
    private const double InchOfWater4C = 249.08891, InchOfWater60F = 248.84;
    // The same: conventional inch and millimetre of mercury; the conventional millimetre of water is 9.80665 Pa exactly.
    private const double InchOfMercury = 3386.38864, MillimetreOfMercury = 133.322387, MillimetreOfWater = 9.80665;
    // Exact by definition: 550 ft·lbf/s with the pound-force of 0.45359237 kg × 9.80665 m/s².
    private const double Horsepower = 550 * 0.3048 * 0.45359237 * 9.80665;
    // Exact: the cubic foot over a minute; the turn over a minute.
    private const double CubicFootPerMinute = 0.3048 * 0.3048 * 0.3048 / 60, TurnPerMinute = Math.PI / 30;

    private static readonly Dictionary<Dimension, Unit[]> Units = Lay();

    private static readonly Dictionary<Dimension, Dictionary<string, Unit>> ByExactText = Enum.GetValues<Dimension>()
        .ToDictionary(d => d, d => Units[d].Distinct()
            .SelectMany(u => u.Spellings.Append(UnitText.Fold(u.Name)).Append(u.Name).Distinct().Select(s => (s, u)))
            .ToDictionary(p => p.s, p => p.u, StringComparer.Ordinal));

    // Case decides only where it must (mPa and MPa): a spelling that means two units without case is left out here.
    private static readonly Dictionary<Dimension, Dictionary<string, Unit>> ByText = ByExactText
        .ToDictionary(d => d.Key, d => d.Value
            .GroupBy(p => p.Key.ToUpperInvariant())
            .Where(g => g.Select(p => p.Value).Distinct().Count() == 1)
            .ToDictionary(g => g.Key, g => g.First().Value, StringComparer.Ordinal));

    internal static Unit[] Of(Dimension dimension) => Units.TryGetValue(dimension, out var units)
        ? units
        : throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "One of the dimensions listed in the enumeration.");

    internal static Unit? Find(string text, Dimension dimension)
    {
        _ = Of(dimension);
        if (ByExactText[dimension].TryGetValue(text, out var asPrinted)) return asPrinted;
        var folded = UnitText.Fold(text);
        return ByExactText[dimension].TryGetValue(folded, out var exact) ? exact
            : ByText[dimension].GetValueOrDefault(folded.ToUpperInvariant());
    }

    private static Dictionary<Dimension, Unit[]> Lay()
    {
        var table = new Dictionary<Dimension, Unit[]>();
        void Put(Dimension d, params Unit[] units) => table[d] = units;

        foreach (var d in new[] { Dimension.Length, Dimension.Lift })
        {
            Put(d, new("in", d, Metres(LengthUnit.Inch), 0, 3, "\"", "inch", "inches", "ins"),
                new("mm", d, Metres(LengthUnit.Millimeter), 0, 2, "millimeter", "millimetre", "millimeters", "millimetres"),
                new("thou", d, Metres(LengthUnit.Mil), 0, 0, "mil", "mils", "thous", "thousandths", "0.001in", "0.001\""),
                new("cm", d, Metres(LengthUnit.Centimeter), 0, 3),
                new("m", d, 1, 0, 5, "meter", "metre", "meters", "metres"),
                new("ft", d, Metres(LengthUnit.Foot), 0, 4, "'", "foot", "feet"));
        }

        var e = Dimension.Elevation;
        Put(e, new("ft", e, Metres(LengthUnit.Foot), 0, 0, "'", "foot", "feet"), new("m", e, 1, 0, 0, "meter", "metre", "meters", "metres"),
            new("km", e, Metres(LengthUnit.Kilometer), 0, 3));
        Put(Dimension.Pressure, [.. Pressures(Dimension.Pressure, "inH2O", "kPa")]);
        Put(Dimension.Barometer, [.. Pressures(Dimension.Barometer, "inHg", "kPa")]);
        var t = Dimension.Temperature;
        Put(t, new("°F", t, 5.0 / 9, 459.67, 1, "F", "degF", "fahrenheit"), new("°C", t, 1, 273.15, 1, "C", "degC", "celsius"), new("K", t, 1, 0, 2, "kelvin"));
        var v = Dimension.VolumeFlow;
        Put(v, new("cfm", v, CubicFootPerMinute, 0, 1, "ft3/min", "cuft/min", "ft3pm", "cf/m"), new("l/s", v, Flow(VolumeFlowUnit.LiterPerSecond), 0, 2, "lps", "l/sec", "dm3/s"),
            new("l/min", v, Flow(VolumeFlowUnit.LiterPerMinute), 0, 1, "lpm"), new("m³/h", v, Flow(VolumeFlowUnit.CubicMeterPerHour), 0, 1, "m3/hr", "cmh"),
            new("m³/min", v, Flow(VolumeFlowUnit.CubicMeterPerMinute), 0, 4, "cmm"), new("m³/s", v, 1, 0, 5), new("ft³/s", v, CubicFootPerMinute * 60, 0, 4, "cfs"),
            new("cfh", v, CubicFootPerMinute / 60, 0, 0, "ft3/h", "ft3/hr"));
        var m = Dimension.MassFlow;
        Put(m, new("lb/min", m, Mass(MassFlowUnit.PoundPerMinute), 0, 3, "lbm/min"), new("g/s", m, Mass(MassFlowUnit.GramPerSecond), 0, 2), new("kg/s", m, 1, 0, 5),
            new("kg/h", m, Mass(MassFlowUnit.KilogramPerHour), 0, 1, "kg/hr"), new("lb/h", m, Mass(MassFlowUnit.PoundPerHour), 0, 1, "lb/hr", "lbm/hr", "pph"));
        var s = Dimension.Speed;
        Put(s, new("ft/s", s, Metres(LengthUnit.Foot), 0, 1, "fps", "ft/sec"), new("m/s", s, 1, 0, 1, "m/sec"), new("ft/min", s, Metres(LengthUnit.Foot) / 60, 0, 0, "fpm"),
            new("mph", s, UnitsNet.Speed.From(1, SpeedUnit.MilePerHour).MetersPerSecond, 0, 1), new("km/h", s, UnitsNet.Speed.From(1, SpeedUnit.KilometerPerHour).MetersPerSecond, 0, 1, "kph"));
        var a = Dimension.Area;
        Put(a, new("in²", a, UnitsNet.Area.From(1, AreaUnit.SquareInch).SquareMeters, 0, 3, "sqin", "squareinches"), new("mm²", a, 1e-6, 0, 1, "sqmm"),
            new("cm²", a, 1e-4, 0, 3, "sqcm"), new("m²", a, 1, 0, 7), new("ft²", a, UnitsNet.Area.From(1, AreaUnit.SquareFoot).SquareMeters, 0, 5, "sqft"));
        // Port and chamber volumes are in cc on both sides of the trade, so cc is the default of both.
        var c = Dimension.Volume;
        var cc = new Unit("cc", c, 1e-6, 0, 1, "cm3", "ml", "ccm");
        Put(c, cc, cc, new("in³", c, UnitsNet.Volume.From(1, VolumeUnit.CubicInch).CubicMeters, 0, 3, "cuin", "ci", "cid"), new("l", c, 1e-3, 0, 4, "liter", "litre", "dm3"), new("m³", c, 1, 0, 8));
        var g = Dimension.Angle;
        var degree = new Unit("°", g, Math.PI / 180, 0, 1, "deg", "degree", "degrees");
        Put(g, degree, degree, new("rad", g, 1, 0, 4, "radian", "radians"), new("mrad", g, 1e-3, 0, 1));
        Same(table, new Unit("%", Dimension.Fraction, 0.01, 0, 1, "percent", "pct", "%rh"));
        Same(table, new Unit("", Dimension.Ratio, 1, 0, 3), new Unit("%", Dimension.Ratio, 0.01, 0, 1, "percent"));
        var d3 = Dimension.Density;
        Put(d3, new("lb/ft³", d3, UnitsNet.Density.From(1, DensityUnit.PoundPerCubicFoot).KilogramsPerCubicMeter, 0, 5, "lb/cuft", "lbm/ft3"), new("kg/m³", d3, 1, 0, 4), new("g/cm³", d3, 1000, 0, 4, "g/cc", "g/ml", "kg/l", "sg"));
        var r = Dimension.RotationalSpeed;
        var rpm = new Unit("rpm", r, TurnPerMinute, 0, 0, "rev/min", "r/min", "1/min", "min-1");
        Put(r, rpm, rpm, new("rad/s", r, 1, 0, 2), new("rev/s", r, TurnPerMinute * 60, 0, 3, "rps"));
        var p = Dimension.Power;
        Put(p, new("hp", p, Horsepower, 0, 1, "bhp"), new("kW", p, 1000, 0, 1), new("W", p, 1, 0, 0), new("PS", p, 75 * 9.80665, 0, 1, "cv", "metrichp"));
        var q = Dimension.Torque;
        Put(q, new("lb-ft", q, UnitsNet.Torque.From(1, TorqueUnit.PoundForceFoot).NewtonMeters, 0, 1, "lbft", "ft-lb", "ftlb", "ft-lbs", "lbf-ft", "lbfft"), new("N·m", q, 1, 0, 1, "N-m"),
            new("lb-in", q, UnitsNet.Torque.From(1, TorqueUnit.PoundForceInch).NewtonMeters, 0, 1, "in-lb", "inlb", "lbin"));
        Same(table, new Unit("µPa·s", Dimension.Viscosity, 1e-6, 0, 2, "uPas", "uPa-s"), new Unit("Pa·s", Dimension.Viscosity, 1, 0, 8, "Pa-s"),
            new Unit("cP", Dimension.Viscosity, UnitsNet.DynamicViscosity.From(1, DynamicViscosityUnit.Centipoise).PascalSeconds, 0, 5));
        Same(table, new Unit("s", Dimension.Duration, 1, 0, 1, "sec", "second", "seconds"), new Unit("min", Dimension.Duration, 60, 0, 1, "minute", "minutes"), new Unit("h", Dimension.Duration, 3600, 0, 2, "hr", "hour", "hours"));
        Same(table, new Unit("", Dimension.Count, 1, 0, 0, "x", "pcs"));
        return table;
    }

    private static void Same(Dictionary<Dimension, Unit[]> table, Unit unit, params Unit[] others) => table[unit.Dimension] = [unit, unit, .. others];

    private static IEnumerable<Unit> Pressures(Dimension d, string us, string si)
    {
        // The trade says "28 inches" of a test pressure; of a barometer that would be mercury, so there it is not read.
        string[] bareInch = d == Dimension.Pressure ? ["\"", "in", "inch", "inches"] : [];
        Unit[] all =
        [
            new("inH2O", d, InchOfWater4C, 0, 2, ["\"H2O", "inchH2O", "inchesH2O", "inwater", "inchesofwater", "inchofwater", "inwc", "\"wc", "inwg", "\"wg", "iwc", "inAq", "\"water", "inH2O4C", .. bareInch]),
            new("inH2O60F", d, InchOfWater60F, 0, 2, "inH2O@60F", "\"H2O60F", "inH2O60degF"),
            new("inHg", d, InchOfMercury, 0, 2, "\"Hg", "inchHg", "inchesHg", "inchesofmercury"),
            new("kPa", d, 1e3, 0, 3),
            new("Pa", d, 1, 0, 0),
            new("hPa", d, 1e2, 0, 1),
            new("mbar", d, 1e2, 0, 1, "mb", "millibar"),
            new("bar", d, 1e5, 0, 4),
            new("psi", d, UnitsNet.Pressure.From(1, PressureUnit.PoundForcePerSquareInch).Pascals, 0, 3, "psia", "psid", "lb/in2", "lbf/in2"),
            new("mmH2O", d, MillimetreOfWater, 0, 1, "mmwc", "mmwg"),
            new("cmH2O", d, MillimetreOfWater * 10, 0, 2, "cmwc"),
            new("mmHg", d, MillimetreOfMercury, 0, 1, "torr"),
            new("atm", d, 101325, 0, 4),
        ];
        return all.OrderBy(u => u.Name == us ? 0 : u.Name == si ? 1 : 2);
    }

    private static double Metres(LengthUnit unit) => UnitsNet.Length.From(1, unit).Meters;

    private static double Flow(VolumeFlowUnit unit) => UnitsNet.VolumeFlow.From(1, unit).CubicMetersPerSecond;

    private static double Mass(MassFlowUnit unit) => UnitsNet.MassFlow.From(1, unit).KilogramsPerSecond;
}
