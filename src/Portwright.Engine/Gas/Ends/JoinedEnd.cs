namespace Portwright.Engine.Gas.Ends;

/// <summary>A pipe's end that is joined to a reservoir through an opening, and what the network keeps of it during a step.</summary>
internal sealed class JoinedEnd(PipeEnd end, Reservoir beyond, Opening opening)
{
    private readonly double _perArea = 1 / end.Area;

    public PipeEnd End { get; } = end;

    public Reservoir Beyond { get; } = beyond;

    public Opening Opening { get; } = opening;

    public double Area { get; } = end.Area;

    /// <summary>Which of the network's reservoirs it is.</summary>
    public int Place { get; set; }

    /// <summary>Burnt share of the gas at the pipe's end and of that beyond.</summary>
    public double BurntInside { get; private set; }

    public double BurntBeyond { get; private set; }

    /// <summary>Writes what the solver needs into its rows.</summary>
    public unsafe void Write(OpeningRows rows, int i, double step)
    {
        var edge = End.Edge;
        var rest = Beyond.Midway(step);
        var gas = End.Pipe.Gas;
        (BurntInside, BurntBeyond) = (edge.Burnt, rest.Burnt);
        rows[OpeningRows.Density][i] = edge.Density;
        rows[OpeningRows.Velocity][i] = edge.Velocity;
        rows[OpeningRows.Pressure][i] = edge.Pressure;
        rows[OpeningRows.K][i] = gas.HeatCapacityRatio;
        rows[OpeningRows.RestPressure][i] = rest.Pressure;
        rows[OpeningRows.RestDensity][i] = rest.Pressure / (gas.GasConstant * rest.Temperature);
        rows[OpeningRows.ShareIn][i] = Math.Clamp(Opening.AreaIntoPipe * _perArea, 0, 1);
        rows[OpeningRows.ShareOut][i] = Math.Clamp(Opening.AreaOutOfPipe * _perArea, 0, 1);
    }
}
