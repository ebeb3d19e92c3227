using CsCheck;
using NetTopologySuite.Geometries;

namespace Portwright.Geometry.Tests;

public sealed class OutlineTests
{
    [Fact]
    public void Area_perimeter_and_centroid_agree_with_a_general_geometry_library() =>
        Outlines.SeenWhole.Sample(outline =>
        {
            var polygon = Polygon(outline);
            Assert.Equal(1, outline.Area / polygon.Area, 9);
            Assert.Equal(1, outline.Perimeter / polygon.Length, 12);
            Assert.Equal(polygon.Centroid.X, outline.Centroid.X, 9);
            Assert.Equal(polygon.Centroid.Y, outline.Centroid.Y, 9);
        });

    [Fact]
    public void Inside_and_distance_to_the_wall_agree_with_a_general_geometry_library() =>
        Gen.Select(Outlines.SeenWhole, Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((outline, x, y) =>
        {
            var p = new PlanePoint(outline.Centroid.X + 0.05 * x, outline.Centroid.Y + 0.05 * y);
            var polygon = Polygon(outline);
            var point = new Point(p.X, p.Y);
            Assert.Equal(polygon.Boundary.Distance(point), outline.DistanceToWall(p), 12);
            Assert.Equal(polygon.Covers(point), outline.Contains(p));
        });

    [Fact]
    public void Moving_and_turning_change_neither_area_nor_wall_length() =>
        Gen.Select(Outlines.SeenWhole, Gen.Double[-1, 1], Gen.Double[-4, 4]).Sample((outline, by, angle) =>
        {
            var moved = outline.Moved(by, -by).Turned(angle);
            Assert.Equal(1, moved.Area / outline.Area, 9);
            Assert.Equal(1, moved.Perimeter / outline.Perimeter, 9);
            Assert.Equal(outline.Moments.Ixx + outline.Moments.Iyy, moved.Moments.Ixx + moved.Moments.Iyy, 1e-9 * outline.Area * outline.Area);
        });

    [Fact]
    public void Twice_the_size_is_four_times_the_area_and_twice_the_hydraulic_diameter() =>
        Outlines.SeenWhole.Sample(outline =>
        {
            var twice = outline.Scaled(2, 2);
            Assert.Equal(4, twice.Area / outline.Area, 9);
            Assert.Equal(2, twice.HydraulicDiameter / outline.HydraulicDiameter, 9);
            Assert.Equal(1, twice.Moments.Ixx / (16 * outline.Moments.Ixx), 6);
        });

    [Fact]
    public void Traced_either_way_round_it_is_the_same_outline() =>
        Outlines.SeenWhole.Sample(outline =>
        {
            var back = new Outline(outline.Points.Reverse().Append(outline.Points[^1]));
            Assert.Equal(outline.Area, back.Area, 1e-15);
            Assert.True(outline.Area > 0);
        });

    [Fact]
    public void A_mirrored_port_has_the_same_area_and_its_wall_on_the_other_side() =>
        Gen.Select(Outlines.SeenWhole, Gen.Double[0, 12]).Sample((outline, hours) =>
        {
            var mirrored = outline.Mirrored();
            Assert.Equal(1, mirrored.Area / outline.Area, 9);
            Assert.Equal(outline.DepthOfCentre(hours), mirrored.DepthOfCentre(12 - hours), 1e-9);
        });

    [Fact]
    public void The_wall_at_a_bearing_lies_on_the_wall_and_at_that_bearing() =>
        Gen.Select(Outlines.SeenWhole, Gen.Double[0, 12]).Sample((outline, hours) =>
        {
            var wall = outline.WallAt(hours);
            Assert.Equal(0, outline.DistanceToWall(wall), 1e-12);
            Assert.Equal(0, Math.Sin((Bearing.Of(wall - outline.BearingCentre) - hours) * Math.PI / 12), 1e-6);
        });

    [Fact]
    public void Every_point_between_wall_and_middle_is_in_the_opening_and_finds_its_place_again() =>
        Gen.Select(Outlines.SeenWhole, Gen.Double[0.01, 12], Gen.Double[0.01, 0.9]).Sample((outline, hours, share) =>
        {
            var depth = share * outline.DepthOfCentre(hours);
            var p = outline.PointAt(hours, depth);
            Assert.True(outline.Contains(p));
            Assert.True(outline.DistanceToWall(p) <= depth + 1e-12);
            var (bearing, found) = outline.PlaceOf(p);
            Assert.Equal(hours, bearing, 1e-6);
            Assert.Equal(depth, found, 1e-8);
        });

    [Fact]
    public void Twelve_is_the_roof_and_three_the_centre_side()
    {
        var port = Outlines.Rectangle(0.03, 0.05);
        Assert.Equal(0.015, port.WallAt(12).X, 15);
        Assert.Equal(0.05, port.WallAt(12).Y, 15);
        Assert.Equal(0.03, port.WallAt(3).X, 15);
        Assert.Equal(0, port.WallAt(6).Y, 15);
        Assert.Equal(0, port.WallAt(9).X, 15);
        Assert.Equal(0.04, port.PointAt(12, 0.01).Y, 15);
    }

    [Theory]
    [InlineData("0 0, 1 1", "2 different points")]
    [InlineData("0 0, 1 1, 2 2", "lie on one line")]
    [InlineData("0 0, 1 0, 0 1, 1 1", "crosses itself: the wall from point 2 to 3 meets the wall from point 4 to 1")]
    [InlineData("0 0, 2 0, 2 2, 2 1, 0 1", "crosses itself")]
    [InlineData("0 0, 4 0, 4 4, 2 0, 0 4", "crosses itself")]
    [InlineData("0 0, NaN 0, 1 1", "Point 2 of the outline is not a number")]
    public void Points_that_make_no_wall_are_refused_with_a_sentence(string points, string sentence)
    {
        var given = points.Split(", ").Select(p => p.Split(' ')).Select(p => new PlanePoint(Number(p[0]), Number(p[1]))).ToList();
        Assert.False(Outline.TryCreate(given, out var outline, out var problem));
        Assert.Null(outline);
        Assert.Contains(sentence, problem);
        Assert.Throws<ArgumentException>(() => new Outline(given));
    }

    [Fact]
    public void A_hooked_section_takes_its_bearings_from_a_place_in_the_opening()
    {
        var hook = new Outline([new(0, 0), new(10, 0), new(10, 1), new(1, 1), new(1, 9), new(10, 9), new(10, 10), new(0, 10)]);
        Assert.False(hook.Contains(hook.Centroid));
        Assert.True(hook.Contains(hook.BearingCentre));
        Assert.Equal(0.5, hook.DepthOfCentre(9), 12);
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static Polygon Polygon(Outline outline) =>
        new(new LinearRing([.. outline.Points.Append(outline.Points[0]).Select(p => new Coordinate(p.X, p.Y))]));
}
