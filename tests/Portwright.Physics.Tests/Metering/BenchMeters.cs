using Portwright.Physics.Air;
using Portwright.Physics.Metering;

namespace Portwright.Physics.Tests.Metering;

/// <summary>One meter of every kind, with about the effective area it has itself, so that a test can choose what it can pass.</summary>
internal static class BenchMeters
{
    public static readonly IReadOnlyDictionary<string, (IMeter Meter, double Area)> All = new Dictionary<string, (IMeter, double)>
    {
        ["orifice plate, corner taps"] = (new OrificePlate(0.1023, 0.060, OrificeTaps.Corner), 0.0017),
        ["orifice plate, D and D/2 taps"] = (new OrificePlate(0.1541, 0.075, OrificeTaps.DAndHalfD), 0.0027),
        ["orifice plate, flange taps"] = (new OrificePlate(0.0525, 0.030, OrificeTaps.Flange), 0.00043),
        ["plate between plenums"] = (PlenumPlate.Round(0.05, 0.61), 0.0012),
        ["percent of flow"] = (Range(RangeScale.SquareRoot), 0.0012),
        ["percent of differential"] = (Range(RangeScale.Linear), 0.0012),
        ["percent range on an inclined tube"] = (new TubeRead(Range(RangeScale.SquareRoot), new ManometerTube(826, 0.2, 0.01)), 0.0012),
        ["plate on a vertical tube"] = (new TubeRead(PlenumPlate.Round(0.05, 0.61), new ManometerTube(999.97)), 0.0012),
        ["orifice on an inclined tube"] = (new TubeRead(new OrificePlate(0.1023, 0.060, OrificeTaps.Corner), new ManometerTube(826, 0.3)), 0.0017),
        ["laminar element"] = (new LaminarElement(2.5e-5, 1.81e-5), 0.0006),
        ["laminar element with entries"] = (new LaminarElement(2.5e-5, 1.81e-5, 4e4), 0.0006),
        ["readout, actual at the meter"] = (DirectReadout.ActualAtMeter, 0.0012),
        ["readout, actual at a state"] = (DirectReadout.ActualAtState(100_000, 288.15), 0.0012),
        ["readout, standard air"] = (DirectReadout.StandardAirCorrected(StandardAir.Default), 0.0012),
        ["readout, restated"] = (DirectReadout.Restated(StandardAir.Default, 6974.49), 0.0012),
        ["readout, assumed density"] = (DirectReadout.AssumedDensity(1.2), 0.0012),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    public static TheoryData<string> DifferentialNames => [.. All.Where(m => m.Value.Meter is IDifferentialMeter).Select(m => m.Key)];

    public static PercentRange Range(RangeScale scale) => new(0.09, 6974.49, new StandardAir(98_000, 296.15, 0.4), scale, 5000);
}
