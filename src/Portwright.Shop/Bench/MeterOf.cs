using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Bench;

/// <summary>The physics of a range on the bench card.</summary>
public static class MeterOf
{
    /// <summary>The meter of a range, read in its own SI form: Pa, m along a tube, share of scale, or m3/s.</summary>
    public static IMeter Range(RangeCard range) => range.Meter switch
    {
        OrificeCard o => OnTube(new OrificePlate(o.PipeDiameter, o.Bore, o.Taps), o.Tube),
        PlenumPlateCard p => OnTube(PlenumPlate.Round(p.Diameter, p.DischargeCoefficient), p.Tube),
        PercentCard p => OnTube(new PercentRange(p.FullScaleFlow, p.CalibrationPressure, (p.CalibrationAir ?? new AirCard()).Air(), p.Scale, p.FullScaleDifferential), p.Tube),
        LaminarCard l => OnTube(new LaminarElement(l.FlowAtReference / l.ReferenceDifferential, Sutherland.Viscosity(l.ReferenceTemperature)), l.Tube),
        DirectCard d => Readout(d),
        _ => throw new ArgumentOutOfRangeException(nameof(range), range.Meter.GetType().Name, "unknown kind of meter"),
    };

    /// <summary>What kind of number the porter reads off it.</summary>
    public static Dimension ReadingDimension(RangeCard range) => range.Meter switch
    {
        DirectCard => Dimension.VolumeFlow,
        PercentCard { Tube: null } => Dimension.Fraction,
        PercentCard or OrificeCard { Tube: not null } or PlenumPlateCard { Tube: not null } or LaminarCard { Tube: not null } => Dimension.Length,
        _ => Dimension.Pressure,
    };

    private static DirectReadout Readout(DirectCard card) => card.Basis switch
    {
        ReadoutBasis.ActualAtMeter => DirectReadout.ActualAtMeter,
        ReadoutBasis.ActualAtState => DirectReadout.ActualAtState(card.Air.Pressure, card.Air.Temperature),
        ReadoutBasis.StandardAirCorrected => DirectReadout.StandardAirCorrected(card.Air.Air()),
        ReadoutBasis.Restated => DirectReadout.Restated(card.Air.Air(), card.RestatedAt ?? StandInBench.Trade),
        ReadoutBasis.AssumedDensity => DirectReadout.AssumedDensity(card.Air.Air().Density),
        _ => throw new ArgumentOutOfRangeException(nameof(card), card.Basis, "unknown basis"),
    };

    private static IMeter OnTube(IDifferentialMeter meter, TubeCard? tube) =>
        tube is null ? meter : new TubeRead(meter, new ManometerTube(tube.FluidDensity, tube.Angle, tube.WellAreaRatio));
}
