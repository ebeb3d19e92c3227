using CsCheck;
using Portwright.Physics.Air;
using Portwright.Physics.TestPiece;

namespace Portwright.Physics.Tests.TestPiece;

public sealed class RestatedFlowTests
{
    [Fact]
    public void Area_and_restated_flow_turn_into_each_other() =>
        Gen.Select(Gen.Double[1e-5, 5e-3], Gen.Double[250, 20_000], Gen.Enum<FlowDirection>()).Sample((area, dp, way) =>
            Assert.Equal(area, RestatedFlow.EffectiveAreaFrom(RestatedFlow.VolumeFlow(area, dp, StandardAir.Default, way), dp, StandardAir.Default, way), area * 1e-14));

    [Fact]
    public void A_test_in_standard_air_is_restated_as_what_flowed() =>
        Gen.Select(Gen.Double[1e-5, 5e-3], Gen.Double[250, 20_000]).Sample((area, dp) =>
        {
            var air = StandardAir.Default;
            var flowed = area * Nozzle.MassFlux(air.State, air.Pressure - dp) / air.Density;
            Assert.Equal(flowed, RestatedFlow.VolumeFlow(area, dp, air, FlowDirection.Draw), flowed * 1e-14);
        });

    [Fact]
    public void Blowing_passes_more_than_drawing_because_its_air_is_denser() =>
        Gen.Double[250, 20_000].Sample(dp => Assert.True(
            RestatedFlow.VolumeFlow(1e-3, dp, StandardAir.Default, FlowDirection.Blow) > RestatedFlow.VolumeFlow(1e-3, dp, StandardAir.Default, FlowDirection.Draw)));

    [Fact]
    public void At_28_inches_blown_air_passes_3_65_percent_more_through_the_same_area() => Assert.Equal(1.0365,
        RestatedFlow.VolumeFlow(1e-3, 28 * 249.08891, StandardAir.Default, FlowDirection.Blow)
        / RestatedFlow.VolumeFlow(1e-3, 28 * 249.08891, StandardAir.Default, FlowDirection.Draw), 0.0005);

    /// <summary>The square-root rule overstates what more test pressure brings, by 2.5 percent from 10 to 28 inH2O.</summary>
    [Fact]
    public void The_square_root_rule_is_off_by_two_and_a_half_percent_from_10_to_28_inches()
    {
        const double inch = 249.08891;
        var at10 = RestatedFlow.VolumeFlow(1e-3, 10 * inch, StandardAir.Default, FlowDirection.Draw);
        var at28 = RestatedFlow.VolumeFlow(1e-3, 28 * inch, StandardAir.Default, FlowDirection.Draw);
        Assert.Equal(1.025, RestatedFlow.SquareRootRule(at10, 10 * inch, 28 * inch) / at28, 0.001);
    }
}
