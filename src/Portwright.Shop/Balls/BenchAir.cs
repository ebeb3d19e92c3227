using Portwright.Physics.Drag;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Balls;

/// <summary>The air and the ball of one ball check, alike at every place, so that they cancel where two places are compared.</summary>
internal sealed class BenchAir
{
    private readonly Kept<BenchCard> _bench;

    public BenchAir(Reductions reductions, Kept<BallCheck> check, HeldReading held, Physics.Drag.BallCalibration? calibration)
    {
        _bench = reductions.Ledger.Get<BenchCard>(check.Fact.Setting.Bench);
        (Check, Held, Calibration) = (check, held, calibration);
        Diameter = BallSize.Of(check.Fact.Ball);
    }

    public Kept<BallCheck> Check { get; }

    public HeldReading Held { get; }

    public Physics.Drag.BallCalibration? Calibration { get; }

    public Estimate Diameter { get; }

    /// <summary>The flow of an effective area (m2) as the bench card restates it, m3/s.</summary>
    public double Restated(double effectiveArea) => RestatedFlow.VolumeFlow(
        effectiveArea, _bench.Fact.RestatedAt, _bench.Fact.StandardAir.Air(), Check.Fact.Setting.Direction);

    /// <param name="effectiveArea">Of the port without the ball, m2.</param>
    public BallAir AirAt(string place, SectionStream stream, Estimate area, double effectiveArea)
    {
        var doubt = _bench.Fact.Doubt;
        var room = Held.Conditions.Room;
        var density = Estimate.Exact(stream.Density)
            .With(new Contribution(Sources.Barometer(_bench.Id), stream.Density * doubt.Barometer / room.Pressure, double.PositiveInfinity, ContributionKind.Weather))
            .With(new Contribution(Sources.Thermometer(_bench.Id), -stream.Density * doubt.Temperature / room.Temperature, double.PositiveInfinity, ContributionKind.Weather));
        // The flow without the ball is known far better than what a ball should take of it: its own doubt is in the measured fall.
        var flow = Estimate.Exact(effectiveArea * Held.MassFlux / stream.Density);
        var pressure = Estimate.Exact(Held.TestPressure).With(new Contribution(
            Sources.TestPressureGauge(_bench.Id), doubt.TestPressure, double.PositiveInfinity, ContributionKind.Calibration));
        return new BallAir(place, Diameter, Estimate.Ratio(flow, area), area, density, flow, pressure, room.DynamicViscosity);
    }
}
