namespace Portwright.Judging.Ports;

/// <summary>One slope while the seat is the narrow place, another while the port is, with a bend of some width between them.</summary>
public sealed record TwoSlopes(double First, double Second, double Knee, double Width) : FlowLaw
{
    public static TwoSlopes Of(FlowDesign design, double knee, double width)
    {
        var second = (design.Most - design.Slope * knee) / (design.Top - knee);
        return new TwoSlopes(design.Slope, second, knee, width);
    }

    public override double At(double lift)
    {
        // The softened ramp: nothing below the knee, lift less knee above it.
        double Ramp(double x) => Width * Math.Log(1 + Math.Exp(Math.Min(40, x / Width)));
        return First * lift + (Second - First) * (Ramp(lift - Knee) - Ramp(-Knee));
    }
}
