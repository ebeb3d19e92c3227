using Portwright.Physics.Rings;

namespace Portwright.Reference;

/// <summary>Traverse positions and closures: ISO 3966, log-linear and log-Tchebycheff methods, derived apart from this project.</summary>
public sealed class TraverseChecks
{
    public static TheoryData<PublishedCase> LogLinear => [.. PublishedCases.Read("geometry-and-flow", "traverse-log-linear-")];

    public static TheoryData<PublishedCase> LogTchebycheff => [.. PublishedCases.Read("geometry-and-flow", "traverse-log-tchebycheff-")];

    public static TheoryData<PublishedCase> Rectangle => [.. PublishedCases.Read("geometry-and-flow", "traverse-rectangle-")];

    public static TheoryData<PublishedCase> Closure => [.. PublishedCases.Read("geometry-and-flow", "traverse-closure-power-")];

    public static TheoryData<PublishedCase> RectangleClosure => [.. PublishedCases.Read("geometry-and-flow", "traverse-closure-rectangle-")];

    [Theory, MemberData(nameof(LogLinear))]
    public void Log_linear_positions_are_as_published(PublishedCase c) =>
        Same(c, "wall_distance_over_diameter", Traverse.LogLinear((int)c.In("points_a_radius")).Select(y => y / 2));

    [Theory, MemberData(nameof(LogTchebycheff))]
    public void Log_Tchebycheff_positions_are_as_published(PublishedCase c) =>
        Same(c, "wall_distance_over_diameter", Traverse.LogTchebycheff((int)c.In("points_a_radius")).Select(y => y / 2));

    [Theory, MemberData(nameof(Rectangle))]
    public void Positions_across_a_rectangle_are_as_published(PublishedCase c) =>
        Same(c, "distance_from_wall_over_side", Traverse.RectangleSide((int)c.In("points")));

    [Theory, MemberData(nameof(Closure))]
    public void A_traverse_closes_as_nearly_as_published(PublishedCase c)
    {
        double Mean(IEnumerable<double> positions) =>
            Traverse.Mean([.. positions.Select(y => c.In("v_max_m_s") * Math.Pow(y, 1 / c.In("n")))]);
        foreach (var n in new[] { 2, 3, 4, 5 }) c.Check($"log_linear_{n}_m_s", Mean(Traverse.LogLinear(n)));
        foreach (var n in new[] { 3, 4, 5 }) c.Check($"log_tchebycheff_{n}_m_s", Mean(Traverse.LogTchebycheff(n)));
        foreach (var n in new[] { 3, 5, 10 }) c.Check($"equal_area_{n}_m_s", Mean(Traverse.EqualArea(n)));
    }

    [Theory, MemberData(nameof(RectangleClosure))]
    public void A_traverse_of_a_rectangle_closes_as_nearly_as_published(PublishedCase c)
    {
        var across = Traverse.RectangleSide((int)c.In("points_each_way")).Select(x => Math.Pow(2 * Math.Min(x, 1 - x), 1 / c.In("n"))).ToArray();
        c.Check("mean_over_max_traverse", Traverse.Mean([.. across.SelectMany(u => across.Select(v => u * v))]));
    }

    /// <summary>To the figures printed: far inside the tolerance of the block, which allows for the rounding of public tables.</summary>
    private static void Same(PublishedCase c, string key, IEnumerable<double> got)
    {
        var expected = c.Expected[key]!.AsArray().Select(v => v!.GetValue<double>()).ToArray();
        var positions = got.ToArray();
        Assert.Equal(expected.Length, positions.Length);
        for (var i = 0; i < expected.Length; i++)
        {
            var off = Math.Abs(positions[i] / expected[i] - 1);
            Assert.True(off < 1e-9, $"{c.Id} ({c.Source}): {key}[{i}] expected {expected[i]:R}, got {positions[i]:R}");
        }
    }
}
