namespace Portwright.Physics.Uncertainty;

/// <summary>A named range of lift.</summary>
/// <param name="From">Lower end, in the unit of the lifts.</param>
/// <param name="To">Upper end, above the lower, in the unit of the lifts.</param>
public sealed record LiftBand(string Name, double From, double To)
{
    /// <summary>The tested range in thirds: low, mid and high lift.</summary>
    /// <param name="from">In the unit of the lifts.</param>
    /// <param name="to">In the unit of the lifts.</param>
    public static LiftBand[] Thirds(double from, double to)
    {
        var third = (to - from) / 3;
        return [new("low lift", from, from + third), new("mid lift", from + third, to - third), new("high lift", to - third, to)];
    }
}
