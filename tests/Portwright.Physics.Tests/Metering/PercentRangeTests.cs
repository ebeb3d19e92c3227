using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.Tests.TestPiece;

namespace Portwright.Physics.Tests.Metering;

public sealed class PercentRangeTests
{
    private static readonly StandardAir Calibration = new(98_000, 296.15, 0.4);

    [Fact]
    public void The_full_mark_in_calibration_air_is_the_full_scale_flow()
    {
        var range = BenchMeters.Range(RangeScale.SquareRoot);
        var atHole = Calibration.State.At(98_000 - 6974.49, 296.15);
        Assert.Equal(0.09 * Calibration.Density, range.Flow(1, atHole).MassFlow, 1e-15);
    }

    /// <summary>Half the mark of a flow scale is half the flow, but for the expansion of the air, under half a percent here.</summary>
    [Fact]
    public void A_flow_scale_is_even_in_flow_and_a_differential_scale_in_its_square()
    {
        var atHole = Calibration.State.At(98_000 - 6974.49, 296.15);
        var (even, square) = (BenchMeters.Range(RangeScale.SquareRoot), BenchMeters.Range(RangeScale.Linear));
        Assert.Equal(0.5, even.Flow(0.5, atHole).MassFlow / even.Flow(1, atHole).MassFlow, 0.01);
        Assert.Equal(even.Flow(0.5, atHole).MassFlow, square.Flow(0.25, atHole).MassFlow, 1e-15);
        Assert.Equal(even.Flow(1, atHole).MassFlow, square.Flow(1, atHole).MassFlow, 1e-15);
    }

    [Fact]
    public void Past_the_full_mark_is_said()
    {
        var range = BenchMeters.Range(RangeScale.SquareRoot);
        Assert.Equal(MeterLimits.None, range.Flow(1, Calibration.State).Limits);
        Assert.Equal(MeterLimits.FullScale, range.Flow(1.02, Calibration.State).Limits);
    }

    [Fact]
    public void A_tube_laid_down_reads_longer_for_the_same_flow() =>
        Gen.Select(Weather.Any, Gen.Double[0.05, 1.5], Gen.Double[10, 3000]).Sample((air, angle, dp) =>
        {
            var plate = PlenumPlate.Round(0.05, 0.6);
            var inclined = new TubeRead(plate, new ManometerTube(1000, angle));
            var upright = new TubeRead(plate, new ManometerTube(1000));
            var length = dp / (1000 * 9.80665);
            var flow = upright.Flow(length, air).MassFlow;
            Assert.Equal(flow, inclined.Flow(length / Math.Sin(angle), air).MassFlow, flow * 1e-14);
            Assert.Equal(plate.Flow(dp, air).MassFlow, flow, flow * 1e-14);
        });

    [Fact]
    public void A_u_tube_read_on_one_leg_shows_half_the_height() =>
        Assert.Equal(2 * new ManometerTube(1000).Differential(0.1), new ManometerTube(1000, Math.PI / 2, wellAreaRatio: 1).Differential(0.1), 1e-9);
}
