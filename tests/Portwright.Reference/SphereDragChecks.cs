using Portwright.Physics.Drag;

namespace Portwright.Reference;

/// <summary>Drag of a smooth sphere, computed with fluids 1.0.22.</summary>
/// <remarks>
/// The block names its first figure after Clift and Gauvin (1970), but the figures are those of the standard drag curve of Clift, Grace and
/// Weber (1978): the block of several correlations (sphere-many-1000, "clift") holds the same one. It is checked as what it is.
/// </remarks>
public sealed class SphereDragChecks
{
    public static TheoryData<PublishedCase> Cases => [.. PublishedCases.Read("air-and-metering", "sphere-")];

    [Theory, MemberData(nameof(Cases))]
    public void A_sphere_drags_as_published(PublishedCase c)
    {
        c.Check("clift_gauvin", SphereDrag.StandardCurve(c.In("reynolds")));
        c.Check("morrison", SphereDrag.Morrison(c.In("reynolds")));
    }

    /// <summary>fluids 1.0.22, documentation of Clift_Gauvin: its printed example.</summary>
    [Fact]
    public void Clift_and_Gauvin_is_as_the_librarys_example() => Assert.Equal(0.7905400398000133, SphereDrag.CliftGauvin(200), 1e-12);
}
