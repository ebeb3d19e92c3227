namespace Portwright.Physics.Rings;

/// <summary>A weighted sum of the map over the section: its value, how much each reading counts in it, and how far the air between the readings leaves it open.</summary>
/// <param name="Value">m/s.</param>
/// <param name="Sensitivities">To the speed of each reading.</param>
/// <param name="OpenVariance">In units of the variance of the core speed.</param>
internal readonly record struct MapSum(double Value, double[] Sensitivities, double OpenVariance);
