using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>What stands in the air of a section.</summary>
public enum MetalInAirKind
{
    // Records hold the name and are read by number too: neither is ever changed.
    Stem = 0,
    Guide = 1,
    GuideBoss = 2,
}

/// <summary>Metal that stands in the air of a section, in its plane: the section's own numbers are those of the wall round it.</summary>
/// <param name="Form">Rectangle, oval or racetrack.</param>
/// <param name="Sizes">One diameter of a round one (an oval), else width and height; of a rectangle also one corner radius.</param>
/// <param name="Up">Its middle above the floor; null: a boss hangs from the roof, anything else stands in the middle.</param>
/// <param name="In">Its middle in from the cylinder-wall side; null: in the middle of the width.</param>
/// <param name="OnWall">Length of its edge that lies on the port's wall, which no air wets; null: it stands free.</param>
public sealed record MetalInAir(MetalInAirKind Kind, SectionForm Form, IReadOnlyList<Typed> Sizes, Typed? Up = null, Typed? In = null, Typed? OnWall = null);
