using Portwright.Geometry.Paths;

namespace Portwright.Geometry.Sections;

/// <summary>A section's shape with its exact area, moments and wall length, and its wall line in chords on demand.</summary>
/// <param name="Chords">Gives the wall line; the argument is the widest angle of one chord, rad.</param>
internal sealed record PlaneFigure(AreaMoments Moments, double Perimeter, Func<double, Outline> Chords)
{
    public static PlaneFigure Of(WallPath path) => new(path.Moments(), path.Length(), path.Chords);

    public static PlaneFigure Of(Outline outline) => new(outline.Moments, outline.Perimeter, _ => outline);
}
