namespace Portwright.Judging.Ports;

/// <summary>A place where one port's air is faster or slower than its sisters': a bell round a clock hour, full at the wall and nothing in the middle.</summary>
/// <param name="Bearing">Clock hour of its middle.</param>
/// <param name="HalfWidth">Of the bell, hours.</param>
/// <param name="Factor">On the speed at the wall there.</param>
public sealed record Patch(double Bearing, double HalfWidth, double Factor)
{
    public double At(double hour, double outwards)
    {
        var apart = Math.Abs(hour - Bearing) % 12;
        apart = Math.Min(apart, 12 - apart);
        var near = Math.Exp(-0.5 * apart * apart / (HalfWidth * HalfWidth)) * Math.Min(1, 1.6 * outwards);
        return 1 + (Factor - 1) * near;
    }
}
