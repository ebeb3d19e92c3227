using CsCheck;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using Portwright.Geometry.Sections;
using Portwright.Geometry.Tests.Sections;

namespace Portwright.Geometry.Tests;

public sealed class InsetTests
{
    private static readonly Gen<Outline> Convex =
        Gen.OneOf(SectionShapes.Rectangle, SectionShapes.EvenRectangle, SectionShapes.Oval, SectionShapes.Racetrack, SectionShapes.Egg, SectionShapes.Trapezoid).Select(s => s.Outline());

    [Fact]
    public void A_little_in_from_the_wall_the_area_is_less_by_the_band() =>
        // Steiner: A - P d + d^2 sum tan(turn/2) for a polygon, while d stays well below every radius of the wall; A - P d + pi d^2 for the round wall it stands for.
        Gen.Select(Gen.Double[0.02, 0.05], Gen.Double[0.02, 0.05], Gen.Double[0.004, 0.009]).Sample((w, h, r) =>
        {
            var section = new RectangleSection(w, h, r);
            var (outline, d) = (section.Outline(), r / 4);
            var inset = outline.Inset(d)!.Area;
            Assert.Equal(outline.Area - outline.Perimeter * d + d * d * Turns(outline).Sum(t => Math.Tan(t / 2)), inset, 1e-12);
            Assert.Equal(1, inset / (section.Area - section.Perimeter * d + Math.PI * d * d), 2e-4);
        });

    [Fact]
    public void The_inset_agrees_with_a_general_geometry_library() =>
        Gen.Select(Convex, Gen.Double[0.0002, 0.006]).Sample((outline, depth) =>
        {
            var polygon = new Polygon(new LinearRing([.. outline.Points.Append(outline.Points[0]).Select(p => new Coordinate(p.X, p.Y))]));
            var expected = polygon.Buffer(-depth, new BufferParameters(1, EndCapStyle.Flat, JoinStyle.Mitre, 10) { SimplifyFactor = 0 }).Area;
            Assert.Equal(expected, outline.Inset(depth)?.Area ?? 0, 1e-6 * outline.Area);
        });

    [Fact]
    public void Every_corner_of_the_inset_is_in_the_opening_and_as_deep_as_asked() =>
        Gen.Select(Convex, Gen.Double[0.0002, 0.012]).Sample((outline, depth) =>
        {
            if (outline.Inset(depth) is not { } inset) return;
            Assert.True(inset.Area < outline.Area);
            Assert.All(inset.Points, p =>
            {
                Assert.True(outline.Contains(p));
                Assert.True(outline.DistanceToWall(p) >= depth - 1e-9);
            });
        });

    [Fact]
    public void Past_the_middle_nothing_is_left_and_a_hollow_wall_has_no_inset()
    {
        Assert.Null(Outlines.Rectangle(0.03, 0.05).Inset(0.016));
        Assert.NotNull(Outlines.Rectangle(0.03, 0.05).Inset(0.014));
        Assert.Equal(0.0015, Outlines.Rectangle(0.03, 0.05).Inset(0)!.Area, 15);
        Assert.Null(new Outline([new(0, 0), new(2, 0), new(2, 2), new(1, 0.5), new(0, 2)]).Inset(0.1));
    }

    private static IEnumerable<double> Turns(Outline outline)
    {
        var points = outline.Points;
        for (var i = 0; i < points.Count; i++)
        {
            var before = points[(i + 1) % points.Count] - points[i];
            var after = points[(i + 2) % points.Count] - points[(i + 1) % points.Count];
            yield return Math.Atan2(before.X * after.Y - before.Y * after.X, before.X * after.X + before.Y * after.Y);
        }
    }
}
