using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Words;

/// <summary>A place has a depth: air in the middle is at no roof and no floor.</summary>
public sealed class BearingsTests
{
    [Theory]
    [InlineData(0.25, ".250 in from the wall at 12 o'clock (roof)")]
    [InlineData(0.36, ".360 in from the wall at 12 o'clock (roof)")]
    [InlineData(0.38, "in the middle")]
    [InlineData(0.62, "in the middle")]
    public void A_place_near_the_centre_is_in_the_middle_whatever_its_hour(double depth, string words) =>
        Assert.Equal(words, Bearings.Words(12, depth * 0.0254, 0.62 * 0.0254).In(UnitSystem.UsCustomary));
}
