using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>What a check plate's certificate says of its effective area, with the doubt it states.</summary>
public static class CertifiedArea
{
    /// <summary>Of the doubt a certificate states, 95 in 100 (JCGM 100:2008, 6.2.1).</summary>
    private const double Coverage = 2;

    /// <summary>Standard uncertainty from what a certificate states, m2.</summary>
    public static double Standard(double stated) => stated / Coverage;

    /// <summary>The doubt as the certificate states it, m2.</summary>
    public static double Stated(CheckPlate plate) => Coverage * plate.StandardUncertainty;

    /// <summary>m2. The certificate is one cause: whatever used the plate shares it.</summary>
    public static Estimate Of(Guid bench, CheckPlate plate) => Estimate.Exact(plate.EffectiveArea).With(new Contribution(
        Sources.PlateOf(bench, plate.Name), plate.StandardUncertainty, double.PositiveInfinity, ContributionKind.Calibration));
}
