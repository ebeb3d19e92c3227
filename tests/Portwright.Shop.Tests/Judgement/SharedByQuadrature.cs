using Portwright.Shop.Judgement;

namespace Portwright.Shop.Tests.Judgement;

/// <summary>
/// What all places of one ball share, against quadrature on steps of 0.001 worked outside the program: places that lose a multiple of a due of 0.02,
/// with a doubt of 8 percent, the due within 6 percent.
/// </summary>
public sealed class SharedByQuadrature
{
    [Theory]
    [InlineData(1, 4, -0.00478, 0.13179)]
    [InlineData(1, 12, -0.00625, 0.08771)]
    [InlineData(1.35, 4, 0.18931, 0.13223)]
    [InlineData(1.35, 12, 0.24806, 0.08779)]
    [InlineData(2, 12, 0.58087, 0.08806)]
    [InlineData(0.4, 12, -0.78235, 0.08814)]
    public void What_the_places_share_is_drawn_to_what_is_usual(double multiple, int places, double log, double doubt)
    {
        var shared = SharedFactor.Of(Places(multiple, places), (0, 0.22));
        Assert.Equal(log, shared.Log, 3e-3);
        Assert.Equal(doubt, shared.Doubt, 2e-4);
        Assert.Equal(places, shared.Places);
    }

    private static AirLikelihood[] Places(double multiple, int count) =>
        [.. Enumerable.Repeat(AirLikelihood.Of(null, (0.02 * multiple, 0.08 * 0.02 * multiple, 0.02, 0.06)), count)];
}
