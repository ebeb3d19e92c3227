using Portwright.Physics.Drag;
using Portwright.Physics.Rings;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;

namespace Portwright.Shop.Balls;

/// <summary>The same ball in a plain straight pipe on the bench: what drag and confinement really cost there.</summary>
public static class BallInPipe
{
    /// <summary>Measured over expected; null where the readings cannot tell.</summary>
    public static Physics.Drag.BallCalibration? Factor(Reductions reductions, Kept<Record.BallCalibration> calibration)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        ArgumentNullException.ThrowIfNull(calibration);
        var fact = calibration.Fact;
        if (fact.Without.Count == 0 || fact.With.Count == 0)
        {
            return null;
        }

        try
        {
            var setting = new BenchSetting(fact.Bench, FlowDirection.Draw, Units.Typed.Of(0, "in"), fact.TestPressure, fact.Range);
            var held = new HeldReading(reductions, Guid.Empty, setting, fact.Air, BenchMoment.Of(reductions.Ledger, calibration, fact.Date));
            Estimate Mean(IReadOnlyList<Units.Typed> readings, string what) =>
                Estimate.Mean([.. readings.Select((r, i) => held.EffectiveArea(r, $"{Sources.CalibrationOf(calibration.Id)} {what} {i}"))]);
            var without = Mean(fact.Without, "without");
            var fall = BallResponse.MeasuredFall(without, null, Mean(fact.With, "with"), Sources.CalibrationOf(calibration.Id));
            var bore = fact.Pipe.Si(Units.Dimension.Length);
            var area = Math.PI / 4 * bore * bore;
            if (held.StreamIn(area, without.Value) is not { } stream)
            {
                return null;
            }

            // On the axis the air of a developed pipe is faster than the mean; the profile's share is doubted by a third of itself.
            var axis = 1 / PipeProfile.MeanOverAxis(PipeProfile.SeventhPower);
            var speed = Estimate.Exact(stream.Speed * axis).With(new Contribution(
                Sources.PipeProfile, stream.Speed * (axis - 1) / 3, double.PositiveInfinity, ContributionKind.Other));
            var air = new BallAir(
                Sources.CalibrationOf(calibration.Id),
                BallSize.Of(fact.Ball),
                speed,
                Estimate.Exact(area),
                Estimate.Exact(stream.Density),
                Estimate.Exact(without.Value * held.MassFlux / stream.Density),
                Estimate.Exact(held.TestPressure),
                held.Conditions.Room.DynamicViscosity);
            return Physics.Drag.BallCalibration.From(air, fall);
        }
        catch (ArgumentException)
        {
            // A calibration whose readings cannot tell leaves the published figures, with their doubt, in place.
            return null;
        }
    }
}
