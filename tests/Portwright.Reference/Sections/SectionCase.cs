using System.Text.Json.Nodes;
using Portwright.Geometry;

namespace Portwright.Reference.Sections;

/// <summary>The published sections, given in mm; the program works in m.</summary>
internal static class SectionCase
{
    public static IReadOnlyList<PublishedCase> Read(string id) => PublishedCases.Read("geometry-and-flow", "geom-" + id);

    public static double Metres(this PublishedCase c, string key) => c.In(key) / 1000;

    public static List<PlanePoint> Wall(this PublishedCase c, string key) =>
        [.. c.Inputs[key]!.AsArray().Select(p => p!.AsArray()).Select(p => new PlanePoint(Millimetre(p[0]), Millimetre(p[1])))];

    public static void CheckArea(this PublishedCase c, double area, string key = "area_mm2", double? tolerance = null) => c.Check(key, area * 1e6, tolerance);

    public static void CheckLength(this PublishedCase c, string key, double length, double? tolerance = null) => c.Check(key, length * 1e3, tolerance);

    /// <summary>Second moments; a product moment of zero is compared with the sum of the others, which it is rounded against.</summary>
    public static void CheckMoments(this PublishedCase c, AreaMoments got)
    {
        c.Check("ixx_mm4", got.Ixx * 1e12);
        c.Check("iyy_mm4", got.Iyy * 1e12);
        if (!c.Expected.ContainsKey("ixy_mm4")) return;
        if (c.Expected["ixy_mm4"]!.GetValue<double>() == 0) Assert.Equal(0, got.Ixy / (got.Ixx + got.Iyy), c.Tolerance!.Value);
        else c.Check("ixy_mm4", got.Ixy * 1e12);
    }

    private static double Millimetre(JsonNode? value) => value!.GetValue<double>() / 1000;
}
