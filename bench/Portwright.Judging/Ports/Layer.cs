namespace Portwright.Judging.Ports;

/// <summary>How the speed falls off towards the wall.</summary>
/// <param name="Power">n of the power law depth^(1/n); null: the log law.</param>
public sealed record Layer(double? Power)
{
    /// <summary>Speed over that at the greatest depth.</summary>
    /// <param name="share">Depth over the greatest depth, 0 to 1.</param>
    public double At(double share)
    {
        share = Math.Clamp(share, 1e-4, 1);
        if (Power is { } n) return Math.Pow(share, 1 / n);
        // u+ = ln(y+)/0.41 + 5 at a depth of 1500 wall units, as in a port at bench speeds; straight to nothing under 12 of them.
        const double most = 1500, edge = 12;
        static double Law(double y) => Math.Log(y) / 0.41 + 5;
        var y = share * most;
        return (y < edge ? Law(edge) * y / edge : Law(y)) / Law(most);
    }
}
