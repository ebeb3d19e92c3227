using Portwright.Physics.Metering;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Web.Pages;

/// <summary>A meter in a few words.</summary>
internal static class MeterWords
{
    public static string Of(RangeCard range, UnitSystem units)
    {
        string Length(double si) => Print.Number(si, Dimension.Length, units);
        string Flow(double si) => Print.Number(si, Dimension.VolumeFlow, units);
        return range.Meter switch
        {
            OrificeCard o => $"orifice plate {Length(o.Bore)} in a pipe of {Length(o.PipeDiameter)}, {(o.Taps switch { OrificeTaps.Corner => "corner taps", OrificeTaps.Flange => "flange taps", _ => "D and D/2 taps" })}",
            PlenumPlateCard p => $"plate {Length(p.Diameter)} between plenums, coefficient {Print.Bare(p.DischargeCoefficient, Dimension.Ratio, units, 3)}",
            PercentCard p => $"percent of {Flow(p.FullScaleFlow)}, {(p.Scale == RangeScale.SquareRoot ? "marks in percent of flow" : "marks in percent of differential")}{(AssumedScale.Words(range) is { Count: > 0 } assumed ? $"; assumed: {string.Join(", ", assumed)}" : "")}",
            LaminarCard l => $"laminar element, {Flow(l.FlowAtReference)} at {Print.Number(l.ReferenceDifferential, Dimension.Pressure, units)}",
            DirectCard { BasisAssumed: true } => "flow readout; nobody has said yet what it shows",
            DirectCard d => $"flow readout, {Basis(d.Basis)}",
            _ => "meter",
        };
    }

    public static string Basis(ReadoutBasis basis) => basis switch
    {
        ReadoutBasis.ActualAtMeter => "volume as it is at the meter",
        ReadoutBasis.ActualAtState => "today's air at a stated pressure and temperature",
        ReadoutBasis.Restated => "already at 28: test pressure and standard air taken in",
        ReadoutBasis.StandardAirCorrected => "corrected to standard air",
        _ => "worked out with one assumed density",
    };
}
