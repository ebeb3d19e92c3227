namespace Portwright.Judging.Ports;

/// <summary>Rises to a level and stays there: (most^-n + (slope lift)^-n)^(-1/n). The larger n, the harder the turn into the plateau.</summary>
public sealed record Plateau(double Slope, double Most, double Hardness) : FlowLaw
{
    public override double At(double lift) =>
        lift <= 0 ? 0 : Math.Pow(Math.Pow(Most, -Hardness) + Math.Pow(Slope * lift, -Hardness), -1 / Hardness);

    /// <summary>The one that passes the design's flow at its highest lift.</summary>
    public static Plateau Of(FlowDesign design, double hardness)
    {
        var open = Math.Max(design.Slope * design.Top, design.Most * 1.02);
        return new Plateau(design.Slope, Math.Pow(Math.Pow(design.Most, -hardness) - Math.Pow(open, -hardness), -1 / hardness), hardness);
    }
}
