using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Reference.Gas;

/// <summary>
/// What follows when two gases at different states suddenly touch: exact for perfect gases, also with different heat capacity ratios left and right.
/// Truth for the pipe solver.
/// </summary>
/// <remarks>
/// Source: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics (3rd ed., 2009), chapter 4: pressure equation 4.5, sampling 4.5.
/// The states must not part so fast that a vacuum forms between them (equation 4.40).
/// </remarks>
public sealed class ExactRiemann
{
    private readonly GasState _left, _right;
    private readonly double _kLeft, _kRight;

    /// <exception cref="ArgumentOutOfRangeException">The gases part so fast that a vacuum forms.</exception>
    public ExactRiemann(GasState left, GasState right, double heatCapacityRatioLeft, double heatCapacityRatioRight)
    {
        (_left, _right, _kLeft, _kRight) = (left, right, heatCapacityRatioLeft, heatCapacityRatioRight);
        double soundLeft = left.SoundSpeed(_kLeft), soundRight = right.SoundSpeed(_kRight);
        var parting = right.Velocity - left.Velocity;
        var limit = 2 * soundLeft / (_kLeft - 1) + 2 * soundRight / (_kRight - 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(parting, limit, nameof(right));

        // The sum of both waves' velocity changes grows with pressure: halve the bracket, let the secant hurry where it may.
        double low = 0, high = Math.Max(left.Pressure, right.Pressure);
        while (Excess(high) < 0) high *= 2;
        var p = 0.5 * (low + high);
        for (var i = 0; i < 200 && high - low > 0; i++)
        {
            var excess = Excess(p);
            if (excess < 0) low = p;
            else high = p;
            var slope = (Excess(p * (1 + 1e-7)) - excess) / (p * 1e-7);
            var next = p - excess / slope;
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.Abs(next - p) <= 1e-16 * p) break;
            p = next;
        }

        StarPressure = p;
        var (changeLeft, densityLeft) = Wave(left, _kLeft, p);
        var (changeRight, densityRight) = Wave(right, _kRight, p);
        StarVelocity = 0.5 * (left.Velocity + right.Velocity + changeRight - changeLeft);
        (StarDensityLeft, StarDensityRight) = (densityLeft, densityRight);
    }

    public ExactRiemann(GasState left, GasState right, double heatCapacityRatio)
        : this(left, right, heatCapacityRatio, heatCapacityRatio)
    {
    }

    /// <summary>Pressure between the two waves, Pa.</summary>
    public double StarPressure { get; }

    /// <summary>Velocity between the two waves, with which the gases' border moves, m/s.</summary>
    public double StarVelocity { get; }

    public double StarDensityLeft { get; }

    public double StarDensityRight { get; }

    /// <summary>The gas at position over time since the touch, m/s.</summary>
    public GasState At(double speed)
    {
        if (speed <= StarVelocity) return Side(_left, _kLeft, StarDensityLeft, StarVelocity, speed);
        // The right side is the left side seen in a mirror.
        var seen = Side(_right with { Velocity = -_right.Velocity }, _kRight, StarDensityRight, -StarVelocity, -speed);
        return seen with { Velocity = -seen.Velocity };
    }

    private GasState Side(GasState state, double k, double starDensity, double starVelocity, double speed)
    {
        var sound = state.SoundSpeed(k);
        var star = state with { Density = starDensity, Velocity = starVelocity, Pressure = StarPressure };
        if (StarPressure > state.Pressure)
        {
            // Equation 4.52: speed of the shock.
            var shock = state.Velocity - sound * Math.Sqrt((k + 1) / (2 * k) * StarPressure / state.Pressure + (k - 1) / (2 * k));
            return speed < shock ? state : star;
        }

        if (speed < state.Velocity - sound) return state;
        if (speed > starVelocity - star.SoundSpeed(k)) return star;
        // Equation 4.56: inside the fan.
        var ratio = 2 / (k + 1) + (k - 1) / ((k + 1) * sound) * (state.Velocity - speed);
        return new(
            state.Density * Math.Pow(ratio, 2 / (k - 1)),
            2 / (k + 1) * (sound + (k - 1) / 2 * state.Velocity + speed),
            state.Pressure * Math.Pow(ratio, 2 * k / (k - 1)),
            state.Burnt);
    }

    private double Excess(double p) =>
        Wave(_left, _kLeft, p).Change + Wave(_right, _kRight, p).Change + _right.Velocity - _left.Velocity;

    private static (double Change, double Density) Wave(in GasState state, double k, double p)
    {
        var (change, density) = WaveCurve<OneLane>.Across(state.Density, state.Pressure, state.SoundSpeed(k), k, p);
        return (change, density);
    }
}
