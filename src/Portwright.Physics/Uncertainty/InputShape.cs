namespace Portwright.Physics.Uncertainty;

/// <summary>Shape of the distribution assigned to an input (JCGM 101:2008, table 1). The Monte Carlo check draws from it, and a budget names it.</summary>
public enum InputShape
{
    /// <summary>Normal; scaled and shifted Student's t where the degrees of freedom are finite (JCGM 101:2008, 6.4.7 and 6.4.9).</summary>
    Normal,

    /// <summary>Anywhere between two limits alike (6.4.2): half width = sqrt(3) standard uncertainties.</summary>
    Rectangular,

    /// <summary>Sum of two equal rectangular quantities (6.4.5): half width = sqrt(6) standard uncertainties.</summary>
    Triangular,

    /// <summary>A quantity that cycles between two limits (6.4.6): half width = sqrt(2) standard uncertainties.</summary>
    ArcSine,
}
