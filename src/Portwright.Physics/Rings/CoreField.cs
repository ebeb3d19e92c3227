namespace Portwright.Physics.Rings;

/// <summary>Core speed (speed without its wall law) between the readings, by <see cref="Kriging"/>.</summary>
internal sealed class CoreField
{
    private readonly double[] _weights;

    /// <param name="values">Core speed at each place of the kriging, m/s.</param>
    public CoreField(Kriging kriging, double[] values)
    {
        Kriging = kriging;
        Mean = kriging.MeanOf(values);
        var off = values.Select(v => v - Mean).ToArray();
        _weights = kriging.Solve(off);
        for (var i = 0; i < off.Length; i++) SumOfSquares += off[i] * _weights[i];
    }

    public Kriging Kriging { get; }

    /// <summary>Generalised least squares mean, m/s.</summary>
    public double Mean { get; }

    /// <summary>Squares of the values about their mean, correlation taken out: over the count less one it estimates the variance of the field.</summary>
    public double SumOfSquares { get; }

    public double At(double px, double py)
    {
        var value = Mean;
        for (var i = 0; i < _weights.Length; i++) value += _weights[i] * Kriging.Correlation(i, px, py);
        return value;
    }

    /// <summary>See <see cref="Kriging.Row"/>.</summary>
    public void Row(double py, double x0, double step, Span<double> core) => Kriging.Row(py, x0, step, Mean, _weights, core);

    /// <summary>The field where the correlations with each place are known: one list a place.</summary>
    public double[] Over(double[][] correlations)
    {
        var field = new double[correlations[0].Length];
        Array.Fill(field, Mean);
        for (var i = 0; i < _weights.Length; i++)
        {
            ReadOnlySpan<double> of = correlations[i];
            for (var c = 0; c < field.Length; c++) field[c] += _weights[i] * of[c];
        }
        return field;
    }
}
