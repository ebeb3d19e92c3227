namespace Portwright.Geometry.Sections;

/// <summary>What a reading was taken with.</summary>
public enum Gauge { Caliper, RadiusGauge }

/// <summary>One reading a section's area is worked out from, m.</summary>
/// <param name="Value">m.</param>
public sealed record SectionReading(string Name, double Value, Gauge Gauge)
{
    internal static SectionReading Caliper(string name, double value) => new(name, value, Gauge.Caliper);

    internal static SectionReading Radius(string name, double value) => new(name, value, Gauge.RadiusGauge);
}
