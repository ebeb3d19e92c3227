using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Drag;

/// <summary>The expected fall of flow when a ball is held in air that is attached to the wall and moves at the local speed.</summary>
/// <remarks>
/// The ball pushes the air back with F = CD C 1/2 rho u^2 pi d^2/4; the wake turns F u of the stream's power into heat; spread over the flow Q
/// that is a loss of total pressure F u/Q. In series with the port at a test pressure the bench holds, 1/Ae'^2 = 1/Ae^2 + K/A^2, the flow becomes
/// Q/sqrt(1 + x) with x = F u/(Q dp): drag power over the stream's power at the test pressure. For a small loss the fall is x/2. Derivation, hand-worked cases
/// and what is left out: docs/theory/balls.md. Incompressible: at Mach 0.35 that is good to about 3 percent of the loss.
/// </remarks>
public static class BallLoss
{
    /// <summary>
    /// Standard uncertainty of the loss, relative, for a port being no straight pipe: bend, shear across the ball, a wall near one side of it,
    /// a wake that enters the valve. Judgement, no source; replace it when ports of known air have been tested. No unit.
    /// </summary>
    public const double PortUncertainty = 0.1;

    public const string DragSource = "sphere drag correlations", ConfinementSource = "ball in a closed section";

    /// <summary>The chain of figures, without doubt.</summary>
    /// <param name="diameter">m, zero or above.</param>
    /// <param name="speed">m/s, zero or above.</param>
    /// <param name="sectionArea">m2.</param>
    /// <param name="density">kg/m3.</param>
    /// <param name="viscosity">Pa s.</param>
    /// <param name="flow">m3/s.</param>
    /// <param name="testPressure">Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range, the ball wider than half the section, or its Reynolds number above 1e6.</exception>
    public static BallLossWorking Work(
        double diameter, double speed, double sectionArea, double density, double viscosity, double flow, double testPressure)
    {
        Require.NotNegative(diameter, nameof(diameter), "m");
        Require.NotNegative(speed, nameof(speed), "m/s");
        Require.Positive(sectionArea, nameof(sectionArea), "m2");
        Require.Positive(density, nameof(density), "kg/m3");
        Require.Positive(viscosity, nameof(viscosity), "Pa s");
        Require.Positive(flow, nameof(flow), "m3/s");
        Require.Positive(testPressure, nameof(testPressure), "Pa");
        var reynolds = density * speed * diameter / viscosity;
        // No ball or no speed: no force, whatever the coefficient, which grows without bound as 24/Re.
        if (reynolds == 0) return new(0, 0, default, new(1, 0), 0, 0, 0, 0);
        var ratio = diameter / Math.Sqrt(4 * sectionArea / Math.PI);
        var drag = SphereDragSpread.At(reynolds);
        var confinement = Confinement.At(ratio, drag.Mean);
        var force = drag.Mean * confinement.Factor * 0.5 * density * speed * speed * Math.PI / 4 * diameter * diameter;
        var pressureLoss = force * speed / flow;
        return new(reynolds, ratio, drag, confinement, force, pressureLoss, pressureLoss / testPressure, FallFromShare(pressureLoss / testPressure));
    }

    /// <summary>Fall of flow over flow for a loss that is the share <paramref name="x"/> of the test pressure: 1 - 1/sqrt(1 + x). No unit.</summary>
    /// <param name="x">Share of the test pressure, zero or above.</param>
    public static double FallFromShare(double x)
    {
        // 1 - 1/sqrt(1+x) written so that a small share keeps its digits.
        var root = Math.Sqrt(1 + x);
        return x / (root * (1 + root));
    }

    /// <summary>The share of the test pressure that a measured fall means: 1/(1 - fall)^2 - 1; below zero where the flow rose.</summary>
    /// <param name="fall">Share of the flow lost, 0 to below 1.</param>
    public static double ShareFromFall(double fall) => fall * (2 - fall) / ((1 - fall) * (1 - fall));

    /// <summary>The expected fall of flow over flow, with its doubt cause by cause.</summary>
    /// <param name="air">A ball in air; see <see cref="BallAir.Problem"/>.</param>
    /// <param name="calibration">The same ball in a straight pipe on this bench; takes the place of drag correlations and confinement.</param>
    /// <exception cref="ArgumentException">The air has a <see cref="BallAir.Problem"/>.</exception>
    public static ExpectedBallLoss Expected(BallAir air, BallCalibration? calibration = null)
    {
        if (air.Problem is { } problem) throw new ArgumentException(problem, nameof(air));
        var working = Work(air.Diameter.Value, air.Speed.Value, air.SectionArea.Value, air.Density.Value, air.Viscosity, air.Flow.Value, air.TestPressure.Value);
        if (working.Share == 0) return new(Estimate.Exact(0), Estimate.Exact(0), working, calibration);
        var share = Propagation.Propagate(new ShareModel(air.Viscosity),
            air.Diameter, air.Speed, air.SectionArea, air.Density, air.Flow, air.TestPressure);
        if (calibration is null)
        {
            share = share
                .With(new(DragSource, share.Value * working.Drag.RelativeUncertainty, Shape: InputShape.Rectangular))
                .With(new(ConfinementSource, share.Value * working.Confinement.RelativeUncertainty, Shape: InputShape.Rectangular));
        }
        else
        {
            // What the calibration leaves in doubt is only how drag and confinement change from the pipe to here.
            var drag = SphereDragSpread.Ratio(working.Reynolds, calibration.Reynolds);
            var walls = Confinement.Ratio(working.DiameterRatio, calibration.DiameterRatio, working.Drag.Mean);
            share = share.Multiply(calibration.Factor);
            share = share
                .With(new($"{DragSource}, pipe to port", share.Value * drag.RelativeUncertainty, Shape: InputShape.Rectangular))
                .With(new($"{ConfinementSource}, pipe to port", share.Value * walls.RelativeUncertainty, Shape: InputShape.Rectangular));
        }
        share = share.With(new($"{air.Place}: a port is no pipe", share.Value * PortUncertainty));
        var fall = Estimate.Linear(FallFromShare(share.Value), (0.5 * Math.Pow(1 + share.Value, -1.5), share));
        return new(share, fall, working, calibration);
    }

    private readonly record struct ShareModel(double Viscosity) : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> x) =>
            x[0] < 0 || x[1] < 0 ? double.NaN : Work(x[0], x[1], x[2], x[3], Viscosity, x[4], x[5]).Share;
    }
}

/// <summary>The figures of an expected ball loss in the order a porter would work them out by hand.</summary>
/// <param name="Reynolds">No unit.</param>
/// <param name="DiameterRatio">Ball over the round tube of the section's area, no unit.</param>
/// <param name="Drag">Drag coefficient in free air.</param>
/// <param name="Confinement">Factor of the section on it.</param>
/// <param name="Force">N.</param>
/// <param name="PressureLoss">Of total pressure, Pa.</param>
/// <param name="Share">Of the test pressure, no unit.</param>
/// <param name="Fall">Of the flow, over the flow, no unit.</param>
public readonly record struct BallLossWorking(
    double Reynolds, double DiameterRatio, SphereDragSpread Drag, Confinement Confinement, double Force, double PressureLoss, double Share, double Fall)
{
    /// <summary>True where published drag figures part by half and more: a smaller ball would say more.</summary>
    public bool PastDragCrisis => Reynolds > SphereDragSpread.DragCrisis;
}

/// <summary>What a ball should take from the flow where the air is attached.</summary>
/// <param name="Share">Loss over test pressure.</param>
/// <param name="Fall">Fall of flow (or of effective area) over flow.</param>
/// <param name="Working">Of the uncalibrated figure.</param>
/// <param name="Calibration">The pipe it was corrected by, if any.</param>
public sealed record ExpectedBallLoss(Estimate Share, Estimate Fall, BallLossWorking Working, BallCalibration? Calibration)
{
    /// <summary>The fall in the unit of the reference flow (or effective area), which is taken without its own doubt: its scale cancels in a comparison.</summary>
    /// <param name="referenceFlow">Flow without the ball, in any unit; the answer is in the same.</param>
    public Estimate Loss(double referenceFlow) => Fall.Scale(referenceFlow);
}
