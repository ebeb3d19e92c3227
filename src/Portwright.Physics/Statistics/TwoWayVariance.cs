namespace Portwright.Physics.Statistics;

/// <summary>Whether the levels of the two factors are the ones asked about, or a sample of many.</summary>
public enum FactorEffects
{
    /// <summary>These very levels matter (these four ports): both factors are tested against the repeats.</summary>
    Fixed,

    /// <summary>A sample (some operators of many): both factors are tested against the interaction.</summary>
    Random,
}

/// <summary>
/// Two-way analysis of variance with equal repeats in every cell (Montgomery, Design and Analysis of Experiments,
/// chapters on factorial designs and on random effects).
/// </summary>
/// <param name="Rows">Levels of the first factor.</param>
/// <param name="Columns">Levels of the second factor.</param>
/// <param name="Repeats">Repeats in each cell, at least 2.</param>
public sealed record TwoWayVariance(
    FactorEffects Effects,
    int Rows,
    int Columns,
    int Repeats,
    double SumOfSquaresRows,
    double SumOfSquaresColumns,
    double SumOfSquaresInteraction,
    double SumOfSquaresError)
{
    public int DegreesOfFreedomRows => Rows - 1;

    public int DegreesOfFreedomColumns => Columns - 1;

    public int DegreesOfFreedomInteraction => DegreesOfFreedomRows * DegreesOfFreedomColumns;

    public int DegreesOfFreedomError => Rows * Columns * (Repeats - 1);

    public double SumOfSquaresTotal => SumOfSquaresRows + SumOfSquaresColumns + SumOfSquaresInteraction + SumOfSquaresError;

    public double MeanSquareRows => SumOfSquaresRows / DegreesOfFreedomRows;

    public double MeanSquareColumns => SumOfSquaresColumns / DegreesOfFreedomColumns;

    public double MeanSquareInteraction => SumOfSquaresInteraction / DegreesOfFreedomInteraction;

    public double MeanSquareError => SumOfSquaresError / DegreesOfFreedomError;

    public double FRows => MeanSquareRows / Against;

    public double FColumns => MeanSquareColumns / Against;

    public double FInteraction => MeanSquareInteraction / MeanSquareError;

    public double PRows => Fisher.UpperTail(FRows, DegreesOfFreedomRows, AgainstDegreesOfFreedom);

    public double PColumns => Fisher.UpperTail(FColumns, DegreesOfFreedomColumns, AgainstDegreesOfFreedom);

    public double PInteraction => Fisher.UpperTail(FInteraction, DegreesOfFreedomInteraction, DegreesOfFreedomError);

    /// <summary>Variance of one reading in a cell.</summary>
    public double VarianceError => MeanSquareError;

    /// <summary>Variance components of random effects by the mean squares; 0 where the estimate is negative.</summary>
    public double VarianceInteraction => Math.Max(0, (MeanSquareInteraction - MeanSquareError) / Repeats);

    public double VarianceRows => Math.Max(0, (MeanSquareRows - MeanSquareInteraction) / (Repeats * Columns));

    public double VarianceColumns => Math.Max(0, (MeanSquareColumns - MeanSquareInteraction) / (Repeats * Rows));

    private double Against => Effects == FactorEffects.Random ? MeanSquareInteraction : MeanSquareError;

    private int AgainstDegreesOfFreedom => Effects == FactorEffects.Random ? DegreesOfFreedomInteraction : DegreesOfFreedomError;

    /// <param name="cells">Readings by row, column and repeat: 2 or more of each, the same number everywhere.</param>
    /// <exception cref="ArgumentException">The table has gaps or is too small.</exception>
    public static TwoWayVariance Of(IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> cells, FactorEffects effects)
    {
        var (rows, columns) = (cells.Count, cells.Count > 0 ? cells[0].Count : 0);
        var repeats = columns > 0 ? cells[0][0].Count : 0;
        if (rows < 2 || columns < 2 || repeats < 2 || cells.Any(r => r.Count != columns || r.Any(c => c.Count != repeats)))
            throw new ArgumentException("At least 2 rows, 2 columns and 2 repeats are needed, the same number in every cell.", nameof(cells));

        // Deviations from one reading keep the digits that differ.
        var origin = cells[0][0][0];
        var cell = cells.Select(r => r.Select(c => c.Average(x => x - origin)).ToArray()).ToArray();
        var row = cell.Select(r => r.Average()).ToArray();
        var column = Enumerable.Range(0, columns).Select(j => cell.Average(r => r[j])).ToArray();
        var grand = row.Average();
        double interaction = 0, error = 0;
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                interaction += Square(cell[i][j] - row[i] - column[j] + grand);
                foreach (var x in cells[i][j]) error += Square(x - origin - cell[i][j]);
            }
        }
        return new(effects, rows, columns, repeats,
            repeats * columns * row.Sum(m => Square(m - grand)),
            repeats * rows * column.Sum(m => Square(m - grand)),
            repeats * interaction,
            error);
    }

    private static double Square(double x) => x * x;
}
