namespace Portwright.Engine.Gas.Ends;

/// <summary>What stands between a pipe's end and a reservoir: a valve or throttle, by its measured effective area in each direction, or nothing.</summary>
/// <remarks>
/// The areas may be set anew before every step. An area of the pipe's own section or more is a free open end; zero is shut.
/// </remarks>
public sealed class Opening
{
    /// <summary>An end of the pipe's full section.</summary>
    public static Opening Free() => new() { AreaIntoPipe = double.PositiveInfinity, AreaOutOfPipe = double.PositiveInfinity };

    /// <summary>Effective area for flow from the reservoir into the pipe, m2, zero or above.</summary>
    public double AreaIntoPipe { get; set; }

    /// <summary>Effective area for flow from the pipe into the reservoir, m2, zero or above.</summary>
    public double AreaOutOfPipe { get; set; }

    /// <summary>Mass flow into the pipe during the last step, kg/s; negative out of it.</summary>
    public double MassFlow { get; internal set; }
}
