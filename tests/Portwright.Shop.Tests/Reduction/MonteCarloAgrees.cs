using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;

namespace Portwright.Shop.Tests.Reduction;

/// <summary>The law of propagation against GUM Supplement 1 (JCGM 101:2008) on the whole measurement model of a reading.</summary>
public sealed class MonteCarloAgrees
{
    public static TheoryData<string> Kinds => [.. Ranges.OfEachKind.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Propagation_and_monte_carlo_give_the_same_doubt_of_a_reading(string kind)
    {
        var range = Ranges.OfEachKind.Single(r => r.Name == kind);
        var meter = MeterOf.Range(range);
        var room = AirState.FromRelativeHumidity(99_000, 294, 0.5);
        var pressure = 28 * UnitFactors.InchOfWater;
        var reading = TestPieceReduction.ReadingFor(meter, 0.0011, 1, new TestConditions(room, pressure, FlowDirection.Draw));
        InputEstimate[] inputs =
        [
            InputEstimate.FromResolution("scale", reading, reading * 0.004),
            new("factor", 1, 0.006),
            new("barometer", 99_000, 150),
            new("thermometer", 294, 0.8),
            new("hygrometer", 0.5, 0.05),
            new("gauge", pressure, 25),
            new("meter thermometer", 294, 0.8),
            new("plenum thermometer", 294, 0.8),
            new("leak", 0.00001, 0.000002),
        ];
        var model = new ReadingModel(meter, FlowDirection.Draw, range.DrawInlet, ownMeterTemperature: true, ownPlenumTemperature: true);

        var linear = Propagation.Propagate(model, inputs);
        var simulated = MonteCarlo.Propagate(model, inputs, trials: 40_000, seed: 7);

        // 40,000 trials know the standard deviation to 0.35 percent; the validation tolerance is one part in 20 of u (JCGM 101, 8.1).
        Assert.Equal(linear.StandardUncertainty, simulated.StandardUncertainty, 0.02 * linear.StandardUncertainty);
        Assert.Equal(linear.Value, simulated.Mean, 0.05 * linear.StandardUncertainty);
        var interval = linear.Interval();
        Assert.Equal(interval.Low, simulated.Symmetric.Low, 0.06 * linear.StandardUncertainty);
        Assert.Equal(interval.High, simulated.Symmetric.High, 0.06 * linear.StandardUncertainty);
    }
}
