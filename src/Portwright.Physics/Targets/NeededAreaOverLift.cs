using Portwright.Physics.Crank;

namespace Portwright.Physics.Targets;

/// <summary>Needed effective area of a cylinder's inlet valves over their lift, at a chosen inlet Mach index.</summary>
/// <remarks>
/// At each lift the port must pass what the piston asks for at that lift or below, opening or closing, whichever is more: the demand of equation 2.11 of Heywood (1988) carried over to
/// the lift of the same crank angle, never falling. The curve is as high as gives the index its value over the whole event (<see cref="MachTargets.MeanArea"/>), so that the two rules say
/// one thing; the pressure lost at the piston's fastest moment follows from it (<see cref="NeededArea.LossAt"/>).
/// </remarks>
public sealed class NeededAreaOverLift
{
    private readonly double[] _lifts, _areas;

    private NeededAreaOverLift(double[] lifts, double[] areas, double mach) => (this._lifts, this._areas, PeakMach) = (lifts, areas, mach);

    /// <summary>Piston's fastest demand over highest needed area and speed of sound, no unit.</summary>
    public double PeakMach { get; }

    /// <param name="bore">m, above zero.</param>
    /// <param name="opens">Crank angle, rad after top dead centre of gas exchange.</param>
    /// <param name="closes">Above <paramref name="opens"/>, rad.</param>
    /// <param name="lift">Lift (m) at a crank angle (rad).</param>
    /// <param name="revolutionsASecond">1/s, above zero.</param>
    /// <param name="index">Taylor's inlet Mach index, above zero, no unit.</param>
    /// <param name="speedOfSound">Before the port, m/s, above zero.</param>
    /// <param name="parts">Equal parts of the event, 2 or more.</param>
    /// <returns>Null where the valve is shut during the whole intake stroke.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static NeededAreaOverLift? Of(
        double bore, SliderCrank crank, double opens, double closes, Func<double, double> lift, double revolutionsASecond, double index, double speedOfSound, int parts = 720)
    {
        ArgumentNullException.ThrowIfNull(crank);
        ArgumentNullException.ThrowIfNull(lift);
        if (!(closes > opens) || !double.IsFinite(closes - opens)) Require.Refuse(closes, nameof(closes), "above the opening angle, in rad");
        if (parts < 2) Require.Refuse(parts, nameof(parts), "2 or more");
        double[] heights = new double[parts + 1], demands = new double[parts + 1];
        for (var i = 0; i <= parts; i++)
        {
            var angle = opens + (closes - opens) * i / parts;
            heights[i] = lift(angle);
            demands[i] = angle < 0 || angle > crank.BottomAngle ? 0 : PistonDemand.At(bore, crank, revolutionsASecond, angle);
        }

        Array.Sort(heights, demands);
        for (var i = 1; i <= parts; i++) demands[i] = Math.Max(demands[i], demands[i - 1]);
        var peak = demands[parts];
        if (!(peak > 0)) return null;
        // Equal parts of angle stay equal weights in the order of lift; at both ends the valve is shut and asks for nothing.
        var mean = demands.Sum() / parts;
        var scale = MachTargets.MeanArea(bore, crank.Stroke, revolutionsASecond, speedOfSound, index) / mean;
        return new(heights, [.. demands.Select(d => d * scale)], 1 / (scale * speedOfSound));
    }

    /// <summary>Needed effective area at a lift (m), m2; that of the highest lift above it.</summary>
    /// <param name="lift">m.</param>
    public double At(double lift)
    {
        var i = Array.BinarySearch(_lifts, lift);
        if (i >= 0) return _areas[i];
        var above = ~i;
        if (above == 0) return 0;
        if (above == _lifts.Length) return _areas[^1];
        var share = (lift - _lifts[above - 1]) / (_lifts[above] - _lifts[above - 1]);
        return _areas[above - 1] + share * (_areas[above] - _areas[above - 1]);
    }
}
