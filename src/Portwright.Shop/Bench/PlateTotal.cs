using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Bench;

/// <summary>
/// A plate and whatever leaks beside it, as one flow. What two such have in common needs no leak test: a leak that stayed is in both.
/// </summary>
/// <param name="Certified">Effective area of the plate, m2.</param>
/// <param name="Ratio">All that flowed over the plate's certified area, with a factor in which the leak was left likewise.</param>
/// <param name="Factor">That factor.</param>
internal sealed record PlateTotal(string Plate, string Range, double Certified, Estimate Ratio, MeterFactor Factor);
