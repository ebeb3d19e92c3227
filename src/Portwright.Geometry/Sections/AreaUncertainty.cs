namespace Portwright.Geometry.Sections;

/// <summary>What one source of doubt does to the area.</summary>
/// <param name="Name">The reading, "caliper scale" or "tilt".</param>
/// <param name="Sensitivity">Change of area with it: m2 per m for a reading, m2 for a relative scale error, m2 per rad for a tilt.</param>
/// <param name="InputDoubt">Standard uncertainty of the source, in m, 1 or rad.</param>
public sealed record AreaContribution(string Name, double Sensitivity, double InputDoubt)
{
    /// <summary>Standard uncertainty it gives the area, m2.</summary>
    public double Amount => Math.Abs(Sensitivity * InputDoubt);
}

/// <summary>Standard uncertainty of a section's area from independent contributions (JCGM 100:2008, equation 10).</summary>
public sealed record AreaUncertainty(IReadOnlyList<AreaContribution> Contributions)
{
    /// <summary>m2.</summary>
    public double Standard => Math.Sqrt(Contributions.Sum(c => c.Amount * c.Amount));

    /// <summary>From the steps of the gauges and one scale error common to all caliper readings.</summary>
    /// <param name="resolution">Step the caliper is read to, m: each reading lies evenly within half a step (JCGM 100:2008, F.2.2.1: step / sqrt 12).</param>
    /// <param name="scaleError">Standard relative error of the caliper's scale; it moves all its readings together, no unit.</param>
    /// <param name="radiusResolution">Step between radius gauges, m; the caliper's step where left out.</param>
    /// <param name="tiltDoubt">Standard uncertainty of the tilt, rad.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static AreaUncertainty Of(SectionMeasure section, double resolution, double scaleError, double? radiusResolution = null, double tiltDoubt = 0)
    {
        ArgumentNullException.ThrowIfNull(section);
        Require.NotNegative(resolution, nameof(resolution), "m");
        Require.NotNegative(radiusResolution ?? 0, nameof(radiusResolution), "m");
        var caliper = resolution / Math.Sqrt(12);
        var radius = (radiusResolution ?? resolution) / Math.Sqrt(12);
        return Of(section, [.. section.Readings.Select(r => r.Gauge == Gauge.Caliper ? caliper : radius)], scaleError, tiltDoubt);
    }

    /// <summary>From the standard uncertainty of each reading, m, in the order of <see cref="SectionMeasure.Readings"/>.</summary>
    /// <param name="standardUncertainties">Of the readings in their order, m, zero or above.</param>
    /// <param name="scaleError">Standard share by which the scale is off, no unit, zero or above.</param>
    /// <param name="tiltDoubt">Standard uncertainty of the tilt, rad, zero or above.</param>
    /// <exception cref="ArgumentException">Not one uncertainty for each reading.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static AreaUncertainty Of(SectionMeasure section, IReadOnlyList<double> standardUncertainties, double scaleError = 0, double tiltDoubt = 0)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(standardUncertainties);
        Require.NotNegative(scaleError, nameof(scaleError), "(no unit)");
        Require.NotNegative(tiltDoubt, nameof(tiltDoubt), "rad");
        var readings = section.Readings;
        var slopes = section.Sensitivities;
        if (standardUncertainties.Count != readings.Count)
            throw new ArgumentException($"{readings.Count} readings need as many uncertainties, not {standardUncertainties.Count}.", nameof(standardUncertainties));

        var parts = new List<AreaContribution>();
        var scale = 0.0;
        for (var i = 0; i < readings.Count; i++)
        {
            parts.Add(new(readings[i].Name, slopes[i], standardUncertainties[i]));
            if (readings[i].Gauge == Gauge.Caliper) scale += slopes[i] * readings[i].Value;
        }
        if (scaleError > 0) parts.Add(new("caliper scale", scale, scaleError));
        if (tiltDoubt > 0) parts.Add(new("tilt", -section.MeasuredArea * Math.Sin(section.Tilt), tiltDoubt));
        return new(parts);
    }
}
