using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Runs;

/// <summary>One speed of the answer with the bench's doubt.</summary>
/// <param name="Torque">N m, whole engine.</param>
/// <param name="Power">W, whole engine.</param>
public sealed record EngineSpeed(OperatingPoint Point, Estimate Torque, Estimate Power)
{
    /// <summary>Torque and power come from one run: whatever moves one moves the other.</summary>
    private const string Source = "engine run, bench's doubts drawn";

    /// <summary>All drawn speeds, rising.</summary>
    public static IReadOnlyList<EngineSpeed> Of(EngineAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return
        [
            .. answer.Points.Select((p, i) =>
            {
                var torque = Doubted(p.Torque, answer.TorqueDoubt[i]);
                return new EngineSpeed(p, torque, Doubted(p.Power, answer.TorqueDoubt[i] * 2 * Math.PI * p.TurnsASecond));
            }),
        ];
    }

    /// <summary>rad/s, as speeds are printed from.</summary>
    public double RotationalSpeed => 2 * Math.PI * Point.TurnsASecond;

    private static Estimate Doubted(double value, double standard) => standard > 0 ? new(value, [new(Source, standard)]) : Estimate.Exact(value);
}
