namespace Portwright.Geometry.Schedules;

/// <summary>Volume measured with a burette against volume from sections over the same length of port.</summary>
/// <param name="Measured">m3.</param>
/// <param name="MeasuredDoubt">Standard uncertainty, m3.</param>
public sealed record VolumeGap(SectionVolume FromSections, double Measured, double MeasuredDoubt)
{
    /// <summary>Measured less sections, m3: above zero the port holds more than its sections show.</summary>
    public double Difference => Measured - FromSections.Volume;

    /// <summary>Standard uncertainty of the difference, m3.</summary>
    public double Standard => Math.Sqrt(MeasuredDoubt * MeasuredDoubt + FromSections.Standard * FromSections.Standard);

    /// <summary>Difference in standard uncertainties; infinite when neither side is given any doubt and they differ, no unit.</summary>
    public double Score => Difference == 0 ? 0 : Difference / Standard;
}
