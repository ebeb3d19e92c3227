using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Bench;

/// <summary>What is the same for all readings of one range in one weather, so that each reading only adds its own numbers.</summary>
/// <param name="LeakArea">Effective area of the leak, m2; null where no leak test was made.</param>
public sealed record ReadingInputs(Kept<BenchCard> Bench, RangeCard Range, RoomState Room, Estimate Factor, Estimate? LeakArea)
{
    /// <summary>How far the air of meter and plenum may lie apart where one thermometer speaks for both, K, standard. Our own choice.</summary>
    public const double Apart = 0.5;

    /// <summary>Blown air nobody took the temperature of is spoken of where its doubt is more than this share of the area. Our own choice.</summary>
    public const double WorthAThermometer = 0.0025;

    // Under the share of the room's pressure that chokes any port, drawn (0.47) or blown (0.89).
    private const double NearTheSpeedOfSound = 0.4;

    // (k - 1)/k of air.
    private const double BlownAirExponent = 0.4 / 1.4;

    private readonly IMeter _meter = MeterOf.Range(Range);
    private readonly IReadOnlyList<(string Source, IMeter Otherwise)> _assumed = AssumedScale.Of(Bench.Id, Range);
    private readonly Dimension _dimension = MeterOf.ReadingDimension(Range);

    // Made once: the names are the same for every reading, and there may be many.
    private readonly string _barometer = Sources.Barometer(Bench.Id);
    private readonly string _thermometer = Sources.Thermometer(Bench.Id);
    private readonly string _meterThermometer = Sources.Thermometer(Bench.Id) + " meter";
    private readonly string _plenumThermometer = Sources.Thermometer(Bench.Id) + " plenum";
    private readonly string _blower = Sources.BlowerWarmth(Bench.Id);
    private readonly string _between = Sources.BetweenPlenumAndMeter(Bench.Id);
    private readonly string _hygrometer = Sources.Hygrometer(Bench.Id);
    private readonly string _gauge = Sources.TestPressureGauge(Bench.Id);

    /// <summary>One reading to its effective area, with the doubt of everything it was read from.</summary>
    /// <param name="name">Identity of the reading, whose resolution no other reading shares.</param>
    public (Estimate EffectiveArea, double MassFlow, IReadOnlyList<string> Remarks) Reduce(
        Typed reading, Typed testPressure, FlowDirection direction, Typed? meterTemperature, Typed? plenumTemperature, string name)
    {
        var doubt = Bench.Fact.Doubt;
        var (inlet, pressure) = (direction == FlowDirection.Draw ? Range.DrawInlet : Range.BlowInlet, testPressure.Si(Dimension.Pressure));
        var model = new ReadingModel(_meter, direction, inlet, meterTemperature is not null, plenumTemperature is not null);
        var (atMeter, inPlenum) = Apartness(direction, inlet, meterTemperature is not null, plenumTemperature is not null, pressure);
        var step = (reading with { Value = Range.Resolution, Unit = Range.Unit }).Si(_dimension);
        // No bench comes near it: the room's air is only worked out for a pressure that might.
        if (pressure > NearTheSpeedOfSound * Room.Pressure && ChokedPressure.Words(testPressure, direction, Room.Air) is { } choked)
        {
            throw new ArgumentException(choked, nameof(testPressure));
        }

        Span<double> values =
        [
            reading.Si(_dimension),
            Factor.Value,
            Room.Pressure,
            Room.Temperature,
            Room.RelativeHumidity,
            pressure,
            meterTemperature?.Si(Dimension.Temperature) ?? 0,
            plenumTemperature?.Si(Dimension.Temperature) ?? 0,
            LeakArea?.Value ?? 0,
        ];
        Span<double> doubts =
        [
            step / Math.Sqrt(12),
            Factor.StandardUncertainty,
            doubt.Barometer,
            doubt.Temperature,
            doubt.Humidity,
            doubt.TestPressure,
            meterTemperature is null ? atMeter : doubt.Temperature,
            plenumTemperature is null ? inPlenum : doubt.Temperature,
            LeakArea?.StandardUncertainty ?? 0,
        ];
        Span<double> amounts = stackalloc double[ReadingModel.InputCount];
        var area = Propagation.Propagate(model, values, doubts, amounts);
        // Near the bottom of a square-root scale the flow is anything but a straight line over one step of the scale: half its change over
        // plus and minus one standard uncertainty (JCGM 100:2008, 5.1.3 note 2), not the slope, says what the step costs.
        amounts[(int)ReadingModel.Input.Reading] = HalfChange(model, values, (int)ReadingModel.Input.Reading, doubts[(int)ReadingModel.Input.Reading]);
        var flow = model.Reduce(values);

        var budget = new List<Contribution>(16)
        {
            new(Sources.Resolution(name), amounts[(int)ReadingModel.Input.Reading], Kind: ContributionKind.Resolution, Shape: InputShape.Rectangular),
            new(_barometer, amounts[(int)ReadingModel.Input.RoomPressure], double.PositiveInfinity, ContributionKind.Weather),
            new(_thermometer, amounts[(int)ReadingModel.Input.RoomTemperature], double.PositiveInfinity, ContributionKind.Weather),
            new(_hygrometer, amounts[(int)ReadingModel.Input.Humidity], double.PositiveInfinity, ContributionKind.Weather),
            new(_gauge, amounts[(int)ReadingModel.Input.TestPressure], double.PositiveInfinity, ContributionKind.Calibration),
            new(meterTemperature is null ? _between : _meterThermometer, amounts[(int)ReadingModel.Input.MeterTemperature], double.PositiveInfinity, ContributionKind.Weather),
            new(plenumTemperature is not null ? _plenumThermometer : meterTemperature is not null && inlet != MeterInlet.Room ? _between : _blower,
                amounts[(int)ReadingModel.Input.PlenumTemperature], double.PositiveInfinity, ContributionKind.Weather),
        };
        AddShared(budget, Factor, amounts[(int)ReadingModel.Input.MeterFactor]);
        foreach (var (source, otherwise) in _assumed)
        {
            var moved = model.With(otherwise).Evaluate(values) - area;
            budget.Add(new(source, moved * StandInBench.OtherMeaning, double.PositiveInfinity, ContributionKind.Calibration));
        }

        AddShared(budget, LeakArea, amounts[(int)ReadingModel.Input.LeakArea]);
        return (new Estimate(area, [.. budget]), flow.MassFlow, [.. MeterLimitWords.Describe(flow.Limits), .. Warmth(amounts[(int)ReadingModel.Input.PlenumTemperature], plenumTemperature)]);

        IEnumerable<string> Warmth(double amount, Typed? read) => read is null && Math.Abs(amount) > WorthAThermometer * Math.Abs(area)
            ? ["The blower warms the air it blows, and no thermometer was read in the plenum nor at the meter: the room's stands in, and the doubt allows for the warmth. Read a thermometer in the plenum."]
            : [];
    }

    /// <summary>How much warmer or colder the air at the meter and in the plenum may be than what speaks for it, K, standard.</summary>
    private (double AtMeter, double InPlenum) Apartness(FlowDirection direction, MeterInlet inlet, bool meterRead, bool plenumRead, double testPressure)
    {
        var sameAir = inlet != MeterInlet.Room;
        if (direction == FlowDirection.Draw)
        {
            // Drawn air comes from the room and does no work on its way: it keeps its warmth, unless a thermometer says the bench is warmer.
            return (sameAir && plenumRead ? Apart : 0, 0);
        }

        // An ideal blower warms the air by this much, a real one by more, and the way to the plenum takes some of it back.
        var warmth = Room.Temperature * (Math.Pow(1 + testPressure / Room.Pressure, BlownAirExponent) - 1);
        return (sameAir ? Apart : 0, sameAir && meterRead ? Apart : warmth);
    }

    private static double HalfChange(in ReadingModel model, Span<double> values, int input, double uncertainty)
    {
        var centre = values[input];
        values[input] = centre + uncertainty;
        var above = model.Evaluate(values);
        values[input] = centre - uncertainty;
        var below = model.Evaluate(values);
        values[input] = centre;
        return (above - below) / 2;
    }

    /// <summary>An input that is a result itself brings its own causes with it: what two readings share stays shared.</summary>
    private static void AddShared(List<Contribution> budget, Estimate? input, double amount)
    {
        if (input is null || input.StandardUncertainty == 0)
        {
            return;
        }

        var sensitivity = amount / input.StandardUncertainty;
        budget.AddRange(input.Contributions.Select(c => c with { Amount = c.Amount * sensitivity }));
    }
}
