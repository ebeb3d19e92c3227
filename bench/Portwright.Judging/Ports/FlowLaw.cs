namespace Portwright.Judging.Ports;

/// <summary>
/// Effective area over lift as a port really has it, before its throat takes over. None of the laws is a constant share of the valve window: the program under trial must not meet its own model.
/// </summary>
public abstract record FlowLaw
{
    /// <summary>m2 at a lift (m).</summary>
    public abstract double At(double lift);
}

/// <summary>What the laws are drawn to: one valve and what its port passes wide open.</summary>
/// <param name="Head">Diameter of the valve, m.</param>
/// <param name="Top">Highest lift tested, m.</param>
/// <param name="Most">Effective area there, m2.</param>
/// <param name="Low">Discharge coefficient on the curtain at the lowest lifts.</param>
public sealed record FlowDesign(double Head, double Top, double Most, double Low)
{
    /// <summary>Slope of the effective area over lift just off the seat, m.</summary>
    public double Slope => Low * Math.PI * Head;
}
