namespace Portwright.Engine.Gas;

/// <summary>
/// The numbers of one pipe, one row a quantity, each row beginning on a 64-byte border with room before and after for what a whole vector reads.
/// </summary>
/// <remarks>
/// Room beyond the cells holds cold gas at rest that never changes (its 1/volume is zero), so that loops run over whole vectors without
/// tails or masks. The rows are pinned and allocated once: a step allocates nothing.
/// </remarks>
internal sealed unsafe class PipeMemory
{
    public const int Density = 0, Velocity = 1, Pressure = 2, Burnt = 3, Sound = 4;

    /// <summary>Four rows each: mass, momentum, energy, burnt mass a unit of volume, now and after the step.</summary>
    public const int Conserved = 5, Next = 9;

    /// <summary>Four rows each: the gas at both borders of a cell half a step ahead; the flow through the border at the cell's first side.</summary>
    public const int FirstEdge = 13, LastEdge = 17, Flow = 21;

    public const int FaceArea = 25, InverseVolume = 26, AreaSlope = 27, Friction = 28, Heat = 29;

    /// <summary>For friction from roughness: 1/(2 D), D, Haaland's roughness term, friction of the bends.</summary>
    public const int HalfPerDiameter = 30, Diameter = 31, RoughnessTerm = 32, Bend = 33;

    /// <summary>The gas beyond the cells has density 1 and hardly any pressure: too slow to matter for the time step.</summary>
    private const double ColdPressure = 1e-6;

    private const int Rows = 34, Before = 8, Line = 8;

    private readonly double** _rows;

    public PipeMemory(int cells)
    {
        Cells = cells;
        var stride = Before + (cells / Line + 1) * Line + Line;
        // Rows a multiple of 4096 bytes apart would fight for the same lines of the cache.
        if (stride % 512 == 0) stride += Line;
        Stride = stride;
        // The first line or more holds where the rows begin.
        const int table = (Rows + Line - 1) / Line * Line;
        Owner = GC.AllocateArray<double>(table + Rows * stride + Line, pinned: true);
        fixed (double* start = Owner)
        {
            var aligned = (double*)(((nint)start + 63) & ~(nint)63);
            _rows = (double**)aligned;
            for (var row = 0; row < Rows; row++) _rows[row] = aligned + table + row * stride + Before;
        }

        for (var row = 0; row < Rows; row++)
        {
            var value = row switch
            {
                Density or FirstEdge + Density or LastEdge + Density or Conserved or Next => 1,
                Pressure or FirstEdge + Pressure or LastEdge + Pressure or Conserved + 2 or Next + 2 => ColdPressure,
                Sound => Math.Sqrt(ColdPressure),
                Diameter => 1,
                _ => 0,
            };
            new Span<double>(_rows[row] - Before, stride).Fill(value);
        }
    }

    public int Cells { get; }

    /// <summary>From a number to the same cell's number in the next row.</summary>
    public nint Stride { get; }

    public double* this[int row] => _rows[row];

    /// <summary>Keeps the pinned array alive as long as the pointers into it.</summary>
    public double[] Owner { get; }

    /// <summary>Where the gas is kept now: the two sets of rows change places with every step.</summary>
    public int Now { get; private set; } = Conserved;

    public int Then => Now == Conserved ? Next : Conserved;

    public void Swap() => Now = Then;
}
