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
    private readonly IMeter _meter = MeterOf.Range(Range);
    private readonly Dimension _dimension = MeterOf.ReadingDimension(Range);

    // Made once: the names are the same for every reading, and there may be many.
    private readonly string _barometer = Sources.Barometer(Bench.Id);
    private readonly string _thermometer = Sources.Thermometer(Bench.Id);
    private readonly string _meterThermometer = Sources.Thermometer(Bench.Id) + " meter";
    private readonly string _plenumThermometer = Sources.Thermometer(Bench.Id) + " plenum";
    private readonly string _hygrometer = Sources.Hygrometer(Bench.Id);
    private readonly string _gauge = Sources.TestPressureGauge(Bench.Id);

    /// <summary>One reading to its effective area, with the doubt of everything it was read from.</summary>
    /// <param name="name">Identity of the reading, whose resolution no other reading shares.</param>
    public (Estimate EffectiveArea, double MassFlow, IReadOnlyList<string> Remarks) Reduce(
        Typed reading, Typed testPressure, FlowDirection direction, Typed? meterTemperature, Typed? plenumTemperature, string name)
    {
        var doubt = Bench.Fact.Doubt;
        var model = new ReadingModel(
            _meter,
            direction,
            direction == FlowDirection.Draw ? Range.DrawInlet : Range.BlowInlet,
            meterTemperature is not null,
            plenumTemperature is not null);
        var step = (reading with { Value = Range.Resolution, Unit = Range.Unit }).Si(_dimension);
        Span<double> values =
        [
            reading.Si(_dimension),
            Factor.Value,
            Room.Pressure,
            Room.Temperature,
            Room.RelativeHumidity,
            testPressure.Si(Dimension.Pressure),
            meterTemperature?.Si(Dimension.Temperature) ?? Room.Temperature,
            plenumTemperature?.Si(Dimension.Temperature) ?? Room.Temperature,
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
            meterTemperature is null ? 0 : doubt.Temperature,
            plenumTemperature is null ? 0 : doubt.Temperature,
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
            new(Sources.Resolution(name), amounts[(int)ReadingModel.Input.Reading], double.PositiveInfinity, ContributionKind.Resolution),
            new(_barometer, amounts[(int)ReadingModel.Input.RoomPressure], double.PositiveInfinity, ContributionKind.Weather),
            new(_thermometer, amounts[(int)ReadingModel.Input.RoomTemperature], double.PositiveInfinity, ContributionKind.Weather),
            new(_hygrometer, amounts[(int)ReadingModel.Input.Humidity], double.PositiveInfinity, ContributionKind.Weather),
            new(_gauge, amounts[(int)ReadingModel.Input.TestPressure], double.PositiveInfinity, ContributionKind.Calibration),
            new(_meterThermometer, amounts[(int)ReadingModel.Input.MeterTemperature], double.PositiveInfinity, ContributionKind.Weather),
            new(_plenumThermometer, amounts[(int)ReadingModel.Input.PlenumTemperature], double.PositiveInfinity, ContributionKind.Weather),
        };
        AddShared(budget, Factor, amounts[(int)ReadingModel.Input.MeterFactor]);
        AddShared(budget, LeakArea, amounts[(int)ReadingModel.Input.LeakArea]);
        return (new Estimate(area, [.. budget]), flow.MassFlow, MeterLimitWords.Describe(flow.Limits));
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
