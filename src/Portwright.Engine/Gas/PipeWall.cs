namespace Portwright.Engine.Gas;

/// <summary>What the wall does to the gas: friction, bends as extra friction, and heat.</summary>
/// <param name="Roughness">Height of the wall's roughness (equivalent sand grain), m; used where no fixed factor is given.</param>
/// <param name="FrictionFactor">A fixed Darcy friction factor (four times Fanning's); null takes it from roughness and Reynolds number, zero is a frictionless wall, no unit.</param>
/// <param name="BendLoss">Loss of all bends together in dynamic heads of the stream, spread over the pipe's length, no unit.</param>
/// <param name="Temperature">Wall temperature, K; null is a wall that passes no heat.</param>
public sealed record PipeWall(double Roughness, double? FrictionFactor = null, double BendLoss = 0, double? Temperature = null)
{
    /// <summary>No friction and no heat.</summary>
    public static readonly PipeWall Smooth = new(0, FrictionFactor: 0);
}
