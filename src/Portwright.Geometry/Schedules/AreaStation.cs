namespace Portwright.Geometry.Schedules;

/// <summary>An open area at a place along the port.</summary>
/// <param name="Distance">From the flange along the centreline, m.</param>
/// <param name="Area">Square to the centreline, m2, above zero.</param>
/// <param name="AreaDoubt">Standard uncertainty of the area, m2, without what all stations share (the caliper's scale).</param>
/// <param name="Name">As the porter calls it: "pinch".</param>
public sealed record AreaStation(double Distance, double Area, double AreaDoubt = 0, string Name = "");
