using CsCheck;
using Portwright.Geometry.LongView;

namespace Portwright.Geometry.Tests.LongView;

public sealed class CentrelineTests
{
    private static readonly Gen<Centreline> Any =
        Gen.Select(Gen.Double[0, 0.1], Gen.Double[0.02, 0.08], Gen.Double[0.2, 2.5], (s, r, t) => new Centreline(s, r, t));

    [Fact]
    public void Walking_a_little_along_the_line_moves_as_far_along_its_heading() =>
        Gen.Select(Any, Gen.Double[0, 0.999]).Sample((line, share) =>
        {
            var at = share * line.Length;
            const double step = 1e-6;
            var ahead = line.PointAt(Math.Min(at + step, line.Length)) - line.PointAt(at);
            Assert.Equal(0, (ahead * (1 / step)).To(line.DirectionAt(at)), 1e-3);
        });

    [Fact]
    public void The_line_turns_by_the_whole_angle_and_ends_at_its_length() =>
        Any.Sample(line =>
        {
            Assert.Equal(-line.Turn, line.HeadingAt(line.Length), 1e-9);
            Assert.Equal(line.Straight + line.BendRadius * line.Turn, line.Length, 1e-15);
            Assert.Equal(0, line.CurvatureAt(0));
            Assert.Equal(1 / line.BendRadius, line.CurvatureAt(line.Length));
        });

    [Fact]
    public void A_quarter_turn_by_hand()
    {
        var line = new Centreline(0.06, 0.04, Math.PI / 2);
        Assert.Equal(new PlanePoint(0.06, 0), line.PointAt(0.06));
        Assert.Equal(0, line.PointAt(line.Length).To(new(0.10, -0.04)), 1e-12);
        // The roof is outside the bend: at the seat of a quarter turn it lies further from the flange.
        Assert.Equal(0, line.PointAt(line.Length, 0.02).To(new(0.12, -0.04)), 1e-12);
        Assert.Equal(0, line.PointAt(0, 0.02).To(new(0, 0.02)), 1e-12);
        Assert.Equal(line.Length, Centreline.OfLength(line.Length, 0.04, Math.PI / 2).Length, 1e-15);
    }

    [Fact]
    public void A_line_that_is_none_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Centreline(0, 0.05, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Centreline(0.05, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Centreline.OfLength(0.02, 0.05, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Centreline(0.05, 0.05, 1).PointAt(0.2));
    }
}
