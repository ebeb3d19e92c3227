using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.Tests.TestPiece;

namespace Portwright.Physics.Tests.Metering;

public sealed class OrificePlateTests
{
    /// <summary>Reader-Harris/Gallagher as ISO 5167-2:2003, equation (4) prints it.</summary>
    private static double Printed(double d, double b, OrificeTaps taps, double re)
    {
        var (l1, l2) = taps switch { OrificeTaps.Corner => (0.0, 0.0), OrificeTaps.Flange => (0.0254 / d, 0.0254 / d), _ => (1.0, 0.47) };
        double a = Math.Pow(19000 * b / re, 0.8), m = 2 * l2 / (1 - b);
        return 0.5961 + 0.0261 * b * b - 0.216 * Math.Pow(b, 8) + 0.000521 * Math.Pow(1e6 * b / re, 0.7)
            + (0.0188 + 0.0063 * a) * Math.Pow(b, 3.5) * Math.Pow(1e6 / re, 0.3)
            + (0.043 + 0.080 * Math.Exp(-10 * l1) - 0.123 * Math.Exp(-7 * l1)) * (1 - 0.11 * a) * Math.Pow(b, 4) / (1 - Math.Pow(b, 4))
            - 0.031 * (m - 0.8 * Math.Pow(m, 1.1)) * Math.Pow(b, 1.3)
            + (d < 0.07112 ? 0.011 * (0.75 - b) * (2.8 - d / 0.0254) : 0);
    }

    [Fact]
    public void The_iteration_ends_where_flow_reynolds_number_and_coefficient_agree() =>
        Gen.Select(Weather.Any, Gen.Double[0.03, 0.3], Gen.Double[0.1, 0.75], Gen.Enum<OrificeTaps>(), Gen.Double[0, 4]).Sample((air, d, beta, taps, exponent) =>
        {
            var plate = new OrificePlate(d, beta * d, taps);
            var dp = Math.Pow(10, exponent);
            var flow = plate.Flow(dp, air);
            Assert.Equal(4 * flow.MassFlow / (Math.PI * d * air.DynamicViscosity), flow.Reynolds, flow.Reynolds * 1e-13);
            Assert.Equal(Printed(d, plate.DiameterRatio, taps, flow.Reynolds), flow.DischargeCoefficient, 1e-12);
            var ideal = Math.PI / 4 * plate.Bore * plate.Bore / Math.Sqrt(1 - Math.Pow(plate.DiameterRatio, 4)) * Math.Sqrt(2 * air.Density * dp);
            Assert.Equal(flow.MassFlow, flow.DischargeCoefficient * flow.Expansibility * ideal, flow.MassFlow * 1e-13);
        });

    private static readonly AirState Air = AirState.Dry(101_325, 293.15);

    [Theory]
    [InlineData(0.049, 0.025, 3000, MeterLimits.PipeDiameter)]
    [InlineData(0.0525, 0.012, 8000, MeterLimits.Bore)]
    [InlineData(0.2, 0.019, 20000, MeterLimits.DiameterRatio)]
    [InlineData(0.1, 0.076, 3000, MeterLimits.DiameterRatio)]
    [InlineData(0.1, 0.05, 5, MeterLimits.Reynolds)]
    [InlineData(0.1, 0.05, 26_000, MeterLimits.PressureRatio)]
    [InlineData(0.1, 0.05, 3000, MeterLimits.None)]
    public void A_limit_of_the_standard_is_said_when_left(double pipe, double bore, double dp, MeterLimits limit) =>
        Assert.Equal(limit, new OrificePlate(pipe, bore, OrificeTaps.Corner).Flow(dp, Air).Limits & (limit == MeterLimits.None ? ~MeterLimits.None : limit));

    [Fact]
    public void A_bore_as_wide_as_the_pipe_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("bore", () => new OrificePlate(0.05, 0.05, OrificeTaps.Corner));

    [Fact]
    public void A_differential_past_the_absolute_pressure_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("differential", () => new OrificePlate(0.1, 0.05, OrificeTaps.Corner).Flow(101_325, Air));

    [Fact]
    public void Every_limit_has_its_sentence()
    {
        var limits = Enum.GetValues<MeterLimits>().Where(l => l != MeterLimits.None).ToList();
        Assert.All(limits, l => Assert.Single(MeterLimitWords.Describe(l)));
        Assert.Equal(limits.Count, MeterLimitWords.Describe(limits.Aggregate((a, b) => a | b)).Distinct().Count());
        Assert.Empty(MeterLimitWords.Describe(MeterLimits.None));
    }
}
