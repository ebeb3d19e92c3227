namespace Portwright.Judging.Ports;

/// <summary>A law drawn to pass a given flow at a given lift, whatever its corner took off.</summary>
public sealed record Scaled(FlowLaw Law, double Factor) : FlowLaw
{
    public static Scaled To(FlowLaw law, FlowDesign design) => new(law, design.Most / law.At(design.Top));

    public override double At(double lift) => Factor * Law.At(lift);
}
