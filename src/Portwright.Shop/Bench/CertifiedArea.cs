using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>What a check plate's certificate says of its effective area, with the doubt it states.</summary>
public static class CertifiedArea
{
    /// <summary>m2. The certificate is one cause: whatever used the plate shares it.</summary>
    public static Estimate Of(Guid bench, CheckPlate plate) => Estimate.Exact(plate.EffectiveArea).With(new Contribution(
        Sources.PlateOf(bench, plate.Name), plate.StandardUncertainty, double.PositiveInfinity, ContributionKind.Calibration));
}
