namespace Portwright.Judging.Ports;

/// <summary>How the throat takes over from the valve at high lift.</summary>
public enum Takeover
{
    None,
    Soft,
    Sharp,
}

/// <summary>A law under the throat's lid: the flow never passes it. A sharp corner is a plain lid, a soft one bends over it.</summary>
public sealed record ThroatCorner(FlowLaw Below, double Lid, Takeover Corner) : FlowLaw
{
    private const double Bend = 10;

    public override double At(double lift)
    {
        var below = Below.At(lift);
        return Corner switch
        {
            Takeover.None => below,
            Takeover.Sharp => Math.Min(below, Lid),
            _ => below <= 0 ? 0 : Math.Pow(Math.Pow(below, -Bend) + Math.Pow(Lid, -Bend), -1 / Bend),
        };
    }
}
