namespace Portwright.Judging.Ports;

/// <summary>
/// Past a peak near full lift the flow falls again, gently: a parabola's top on a rising curve. All sisters do it alike, so it is the casting's shape and no port's fault; it stays under half a percent.
/// </summary>
public sealed record FallOff(FlowLaw Rising, double Peak, double Top, double Share) : FlowLaw
{
    public override double At(double lift)
    {
        var level = Rising.At(Peak);
        if (lift >= Peak)
        {
            var over = (lift - Peak) / (Top - Peak);
            return level * (1 - Share * over * over);
        }

        // Bent level over the last fifth before the peak, so that no corner stands there.
        var from = 0.8 * Peak;
        if (lift <= from) return Rising.At(lift);
        var (start, rise) = (Rising.At(from), (Rising.At(from) - Rising.At(from - 1e-5)) / 1e-5 * (Peak - from));
        var t = (lift - from) / (Peak - from);
        return (2 * t * t * t - 3 * t * t + 1) * start + (t * t * t - 2 * t * t + t) * rise + (-2 * t * t * t + 3 * t * t) * level;
    }
}
