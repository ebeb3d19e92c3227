using Portwright.Shop.Judgement;
using Portwright.Shop.Sections;

namespace Portwright.Shop.Families;

/// <summary>What area a section of a sound port has, by its sisters'.</summary>
public static class SectionFamily
{
    /// <summary>Sound castings' sections differ by about this in area, standard deviation of the logarithm; common practice, no source.</summary>
    public const double Usual = 0.010;

    /// <summary>How many sisters that figure weighs as much as.</summary>
    public const double UsualDegrees = 4;

    /// <summary>Logarithms of area.</summary>
    /// <param name="section">The port's own: its caliper is in doubt as theirs was.</param>
    /// <param name="sisters">Logarithms of their areas, two at least.</param>
    public static Family Of(ReducedSection section, IReadOnlyList<double> sisters)
    {
        var caliper = Caliper(section);
        return Family.Of(sisters, Math.Sqrt(Usual * Usual + caliper * caliper), UsualDegrees);
    }

    /// <summary>Standard uncertainty of the area as a share.</summary>
    public static double Caliper(ReducedSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return section.Area.StandardUncertainty / section.Area.Value;
    }
}
