using System.Runtime.Intrinsics;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

/// <summary>The arithmetic of a step over the cells of one pipe, in three passes; how many cells at once is chosen once.</summary>
internal abstract class PipeKernel
{
    public static readonly PipeKernel One = new PipeKernel<OneLane>();

    public static readonly PipeKernel Four = new PipeKernel<FourLanes>();

    public static readonly PipeKernel Eight = new PipeKernel<EightLanes>();

    /// <summary>The widest that this machine works on in hardware.</summary>
    public static readonly PipeKernel Widest =
        Vector512.IsHardwareAccelerated ? Eight : Vector256.IsHardwareAccelerated ? Four : One;

    /// <summary>Cells worked on at once.</summary>
    public abstract int Lanes { get; }

    /// <summary>Slopes in the cells, and the gas at both borders of each cell half a step ahead.</summary>
    /// <param name="m">The pipe's rows; the cell before the first and the one after the last must hold what the slopes there need.</param>
    /// <param name="n">The pipe's constants.</param>
    /// <param name="step">Time step, s.</param>
    public abstract void Predict(PipeMemory m, in PipeNumbers n, double step);

    /// <summary>Flat cells that stay as they are: first order and safest, for the step that second order cannot take.</summary>
    public static unsafe void Flat(PipeMemory m)
    {
        for (var row = 0; row < 4; row++)
        {
            var cells = new ReadOnlySpan<double>(m[row], m.Cells);
            cells.CopyTo(new(m[PipeMemory.FirstEdge + row], m.Cells));
            cells.CopyTo(new(m[PipeMemory.LastEdge + row], m.Cells));
        }
    }

    /// <summary>Flow through all borders between cells; both ends are set by what stands there.</summary>
    public abstract void Flows(PipeMemory m, in PipeNumbers n);

    /// <summary>The gas after the step.</summary>
    /// <returns>The fastest wave, m/s; NaN where a cell is left without gas or pressure.</returns>
    public abstract double Update(PipeMemory m, in PipeNumbers n, double step);

    /// <summary>Friction and heat coefficients from the gas now in the pipe.</summary>
    public abstract void Wall(PipeMemory m, in PipeNumbers n);
}

/// <summary>Constants of one pipe.</summary>
/// <param name="K">Heat capacity ratio.</param>
/// <param name="R">Gas constant, J/(kg K).</param>
/// <param name="CellLength">m.</param>
/// <param name="WallHeat">Specific heat times the wall's temperature, J/kg.</param>
/// <param name="HeatPerFriction">Heat coefficient over friction coefficient, Pr^(-2/3); zero for a wall that passes no heat.</param>
internal readonly record struct PipeNumbers(double K, double R, double CellLength, double WallHeat, double HeatPerFriction)
{
    /// <summary>k - 1.</summary>
    public double KLess { get; } = K - 1;

    /// <summary>k/(k - 1).</summary>
    public double PerK { get; } = K / (K - 1);

    public double PerCellLength { get; } = 1 / CellLength;
}
