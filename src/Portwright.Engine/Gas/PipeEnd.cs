using System.Runtime.CompilerServices;

namespace Portwright.Engine.Gas;

/// <summary>One of a pipe's two ends.</summary>
public readonly record struct PipeEnd(Pipe Pipe, bool IsLast)
{
    public static PipeEnd First(Pipe pipe) => new(pipe, false);

    public static PipeEnd Last(Pipe pipe) => new(pipe, true);

    /// <summary>Section at the end, m2.</summary>
    public double Area => IsLast ? Pipe.Shape.FaceAreas[^1] : Pipe.Shape.FaceAreas[0];

    public override string ToString() => $"{(IsLast ? "last" : "first")} end of {Pipe.Name}";

    /// <summary>The gas at the end half a step ahead, velocity counted outwards; the slope may not carry its burnt share past none or all.</summary>
    internal unsafe GasState Edge
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get
        {
            var m = Pipe.Memory;
            var (row, cell, sign) = IsLast ? (PipeMemory.LastEdge, m.Cells - 1, 1) : (PipeMemory.FirstEdge, 0, -1);
            var edge = m[row] + cell;
            var next = m.Stride;
            return new(edge[0], sign * edge[next], edge[2 * next], Math.Clamp(edge[3 * next], 0, 1));
        }
    }

    /// <summary>Sets what flows through the end, given outwards.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal unsafe void SetFlow(in Ends.EndFlow flow)
    {
        var m = Pipe.Memory;
        var (face, sign) = IsLast ? (m.Cells, 1) : (0, -1);
        var through = m[PipeMemory.Flow] + face;
        var next = m.Stride;
        through[0] = sign * flow.Mass;
        through[next] = flow.Momentum;
        through[2 * next] = sign * flow.Energy;
        through[3 * next] = sign * flow.Burnt;
    }

    /// <summary>Lets nothing pass: the wall's pressure alone acts on the end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal unsafe void Close()
    {
        var m = Pipe.Memory;
        var next = m.Stride;
        var (row, cell, face, sign) = IsLast ? (PipeMemory.LastEdge, m.Cells - 1, m.Cells, 1.0) : (PipeMemory.FirstEdge, 0, 0, -1.0);
        double* edge = m[row] + cell, through = m[PipeMemory.Flow] + face;
        through[0] = 0;
        through[next] = Ends.ClosedEnd.Pressure(edge[0], sign * edge[next], edge[2 * next], Pipe.Numbers.K);
        through[2 * next] = 0;
        through[3 * next] = 0;
    }

    /// <summary>Fills the cell beyond a wall with the mirror image of the end cell, so that the end cell gets a slope.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal unsafe void Mirror()
    {
        var m = Pipe.Memory;
        var (beyond, cell) = IsLast ? (m.Cells, m.Cells - 1) : (-1, 0);
        double* from = m[PipeMemory.Density] + cell, to = m[PipeMemory.Density] + beyond;
        var next = m.Stride;
        to[0] = from[0];
        to[next] = -from[next];
        to[2 * next] = from[2 * next];
        to[3 * next] = from[3 * next];
    }

    /// <summary>Fills the cell beyond an end that is no wall with what the cells inside say: the smaller of two slopes, none where they disagree.</summary>
    /// <remarks>Van Leer's mean then sees a smooth continuation and no more.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal unsafe void Continue()
    {
        var m = Pipe.Memory;
        var (beyond, inward) = IsLast ? (m.Cells, -1) : (-1, 1);
        for (var row = 0; row < 4; row++)
        {
            var w = m[row] + beyond;
            double here = w[inward], a = w[2 * inward] - here, b = w[3 * inward] - w[2 * inward];
            w[0] = here - (a * b > 0 ? Math.Abs(a) < Math.Abs(b) ? a : b : 0);
        }

        // A steep fall towards the end must not continue below nothing.
        m[PipeMemory.Density][beyond] = Math.Max(m[PipeMemory.Density][beyond], 0.05 * m[PipeMemory.Density][beyond + inward]);
        m[PipeMemory.Pressure][beyond] = Math.Max(m[PipeMemory.Pressure][beyond], 0.05 * m[PipeMemory.Pressure][beyond + inward]);
    }
}
