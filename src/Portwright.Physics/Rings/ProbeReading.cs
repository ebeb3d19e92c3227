using Portwright.Geometry;

namespace Portwright.Physics.Rings;

/// <summary>One pitot reading of a ring.</summary>
/// <param name="Place">Of the probe's tip, m, in the plane of the section.</param>
/// <param name="Speed">Along the port, m/s, zero or above, probe factor applied.</param>
/// <param name="StandardUncertainty">Of this reading by itself (scale, scatter, placing), m/s, zero or above.</param>
/// <param name="Source">Names what is in doubt about this reading alone.</param>
/// <param name="DegreesOfFreedom">Of that uncertainty, no unit.</param>
public sealed record ProbeReading(
    PlanePoint Place, double Speed, double StandardUncertainty, string Source, double DegreesOfFreedom = double.PositiveInfinity);

/// <summary>Doubt of the probe's factor, common to every reading taken with it.</summary>
/// <param name="RelativeUncertainty">Standard, of the speed: 0.01 for one percent; zero or above. No unit.</param>
/// <param name="Source">Names the probe, so that the doubt cancels between two rings taken with it.</param>
/// <param name="DegreesOfFreedom">Of that uncertainty, no unit.</param>
public sealed record ProbeFactorDoubt(double RelativeUncertainty, string Source = "probe factor", double DegreesOfFreedom = double.PositiveInfinity);
