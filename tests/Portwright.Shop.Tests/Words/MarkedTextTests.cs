using System.Text.Json;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Words;

/// <summary>Sentences as records kept them before quantities had names. The marks below are from such records: they are history and stay.</summary>
public sealed class MarkedTextTests
{
    [Theory]
    [InlineData("Open the pinch at B to ⟦9|0.001529|⟧", null)]
    [InlineData("Open the pinch at B to ⟦9|0.001529⟧, both sides alike, blended.", "Open the pinch at B to 2.370 in², both sides alike, blended.")]
    [InlineData("Open the throat to ⟦0|0.04572⟧, blended into seat and bowl.", "Open the throat to 1.800 in, blended into seat and bowl.")]
    [InlineData("lost ⟦6|0.00099|0.00024⟧ at lift ⟦1|0.0127⟧", "lost 2.10 ± 0.51 cfm at lift .500")]
    [InlineData("⟦8|96.9⟧ in ⟦10|0.000184⟧", "317.9 ft/s in 184.0 cc")]
    public void An_old_sentence_reads_as_it_was_meant(string kept, string? reads)
    {
        var said = JsonSerializer.Deserialize<Sentence>(JsonSerializer.Serialize(kept))!;
        // The first is no mark a record ever held: it stays as it stands.
        Assert.Equal(reads ?? kept, said.In(UnitSystem.UsCustomary));
    }

    [Fact]
    public void An_old_sentence_is_written_without_marks()
    {
        var said = MarkedText.Read("Open the throat to ⟦0|0.04572⟧.");
        Assert.Equal("""["Open the throat to ",{"value":0.04572,"dimension":"length"},"."]""", JsonSerializer.Serialize(said));
    }

    // The places counted in the old marks, each with its name: a dimension inserted or moved must not move these.
    [Theory]
    [InlineData(0, Dimension.Length)]
    [InlineData(1, Dimension.Lift)]
    [InlineData(2, Dimension.Elevation)]
    [InlineData(3, Dimension.Pressure)]
    [InlineData(4, Dimension.Barometer)]
    [InlineData(5, Dimension.Temperature)]
    [InlineData(6, Dimension.VolumeFlow)]
    [InlineData(7, Dimension.MassFlow)]
    [InlineData(8, Dimension.Speed)]
    [InlineData(9, Dimension.Area)]
    [InlineData(10, Dimension.Volume)]
    [InlineData(11, Dimension.Angle)]
    [InlineData(12, Dimension.Fraction)]
    [InlineData(13, Dimension.Ratio)]
    [InlineData(14, Dimension.Density)]
    [InlineData(15, Dimension.RotationalSpeed)]
    [InlineData(16, Dimension.Power)]
    [InlineData(17, Dimension.Torque)]
    [InlineData(18, Dimension.Viscosity)]
    [InlineData(19, Dimension.Duration)]
    [InlineData(20, Dimension.Count)]
    public void A_place_in_an_old_mark_means_what_it_meant(int place, Dimension dimension) =>
        Assert.Equal(dimension, Assert.Single(MarkedText.Read($"⟦{place}|1.5⟧").Quantities).Dimension);
}
