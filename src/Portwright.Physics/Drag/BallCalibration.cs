using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Drag;

/// <summary>The same ball held on the axis of a plain straight pipe of known section on this bench: measured loss over expected loss there.</summary>
/// <param name="Factor">Measured over expected, without the doubt of published drag and confinement, which it replaces.</param>
/// <param name="Reynolds">Of the ball in the pipe, no unit.</param>
/// <param name="DiameterRatio">Ball over pipe, no unit.</param>
public sealed record BallCalibration(Estimate Factor, double Reynolds, double DiameterRatio)
{
    /// <summary>The factor from one reading in the pipe.</summary>
    /// <param name="pipe">The ball in the pipe; speed on the axis.</param>
    /// <param name="measured">Fall of flow over flow seen there, from <see cref="BallResponse.MeasuredFall"/>.</param>
    /// <exception cref="ArgumentException">The air has a <see cref="BallAir.Problem"/>, no loss is expected, or the measured fall is not above twice its
    /// standard uncertainty: such a factor would say nothing.</exception>
    public static BallCalibration From(BallAir pipe, Estimate measured)
    {
        if (pipe.Problem is { } problem) throw new ArgumentException(problem, nameof(pipe));
        if (!(measured.Value > 2 * measured.StandardUncertainty && measured.Value < 1))
            throw new ArgumentException("The fall measured in the pipe is not clear of its own doubt. Use a larger ball or more readings.", nameof(measured));
        var share = Estimate.Linear(BallLoss.ShareFromFall(measured.Value), (2 * Math.Pow(1 - measured.Value, -3), measured));
        var expected = BallLoss.Expected(pipe);
        if (expected.Share.Value == 0) throw new ArgumentException("No loss is expected in this pipe: ball and air speed must be above zero.", nameof(pipe));
        // Drag and confinement are what is being calibrated, and a pipe is a pipe: those three leave the budget.
        var plain = new Estimate(expected.Share.Value,
            [.. expected.Share.Contributions.Where(c =>
                c.Source is not (BallLoss.DragSource or BallLoss.ConfinementSource) && c.Source != $"{pipe.Place}: a port is no pipe")]);
        return new(Estimate.Ratio(share, plain), expected.Working.Reynolds, expected.Working.DiameterRatio);
    }
}
