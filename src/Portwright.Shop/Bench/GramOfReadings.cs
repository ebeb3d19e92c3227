namespace Portwright.Shop.Bench;

/// <summary>
/// Readings of plates with the covariance that their shared causes give them, ready to be asked how far they lie from a bench that leaks so much,
/// and one that changed before a check: squares of distances in standard deviations (Mahalanobis).
/// </summary>
internal sealed class GramOfReadings
{
    /// <summary>No two readings agree better than to a millionth: keeps the likelihood of exact ones finite.</summary>
    private const double Floor = 1e-6;

    private const double ManyDegrees = 1e5;

    /// <summary>Logarithm of the largest likelihood that is told from larger ones.</summary>
    private const double Largest = 300;

    private readonly int[] _check;
    private readonly double[] _off, _hole;
    private readonly double[,] _root;
    private readonly double _calibrationHole, _degrees, _free;
    private readonly double[] _offSolved, _leakSolved;

    /// <param name="levels">Standard deviation of what each plate on its range reads at all; empty where that is known.</param>
    /// <param name="shared">Standard deviation of what all share, as a share.</param>
    /// <param name="hole">Area (m2) that leaks are held against.</param>
    /// <param name="calibrationHole">That area over the plate's at the calibration; 0 where a leak then does not matter.</param>
    public GramOfReadings(IReadOnlyList<(int Check, PlateTotal Plate)> readings, double[] levels, double shared, double hole, double calibrationHole)
    {
        _check = [.. readings.Select(r => r.Check)];
        _off = [.. readings.Select(r => Math.Log(r.Plate.Ratio.Value))];
        _hole = [.. readings.Select(r => hole / r.Plate.Certified)];
        _calibrationHole = calibrationHole;
        _degrees = readings.Select(r => r.Plate.Ratio.EffectiveDegreesOfFreedom).DefaultIfEmpty(double.PositiveInfinity).Min();
        string[] of = [.. readings.Select(r => $"{r.Plate.Plate} on {r.Plate.Range}".ToUpperInvariant())];
        _free = _off.Length - (levels.Length > 0 ? of.Distinct().Count() : 0);
        _root = Root(readings, (i, j) => shared * shared + (levels.Length > 0 && of[i] == of[j] ? levels[i] * levels[j] : 0));
        _offSolved = Solved(_off);
        _leakSolved = Solved([.. _hole.Select(h => h - calibrationHole)]);
    }

    /// <summary>Of a bench that leaked this much (as a logarithm of flow) all along.</summary>
    public double Sound(double leak) => Dot(_offSolved, _offSolved) - 2 * leak * Dot(_offSolved, _leakSolved) + leak * leak * Dot(_leakSolved, _leakSolved);

    /// <summary>Likelihood over that at the least distance. The scatter itself is known only so well (multivariate Student), and the more readings, the better they tell it.</summary>
    public double Likelihood(double distance, double least) => Math.Exp(Math.Min(Largest, _degrees > ManyDegrees
        ? (least - distance) / 2
        : (_degrees + _free) / 2 * Math.Log((1 + least / _degrees) / (1 + distance / _degrees))));

    /// <summary>A change just before a check.</summary>
    public Step StepBefore(int check) => new(
        this,
        Solved([.. _check.Select(c => c >= check ? 1.0 : 0)]),
        Solved([.. _check.Select((c, i) => (c < check ? _hole[i] : 0) - _calibrationHole)]),
        Solved([.. _check.Select((c, i) => c >= check ? _hole[i] : 0)]));

    private static double[,] Root(IReadOnlyList<(int Check, PlateTotal Plate)> readings, Func<int, int, double> also)
    {
        var n = readings.Count;
        Dictionary<string, double>[] causes =
        [
            .. readings.Select(r => r.Plate.Ratio.Contributions.GroupBy(c => c.Source).ToDictionary(g => g.Key, g => g.Sum(c => c.Amount) / r.Plate.Ratio.Value)),
        ];
        var root = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = also(i, j) + (i == j ? Floor * Floor : 0);
                foreach (var (source, amount) in causes[i])
                {
                    sum += causes[j].TryGetValue(source, out var other) ? amount * other : 0;
                }

                for (var k = 0; k < j; k++)
                {
                    sum -= root[i, k] * root[j, k];
                }

                root[i, j] = i == j ? Math.Sqrt(Math.Max(sum, Floor * Floor)) : sum / root[j, j];
            }
        }

        return root;
    }

    /// <summary>In standard deviations of their own, independent of each other (Cholesky).</summary>
    private double[] Solved(double[] x)
    {
        var y = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var left = x[i];
            for (var k = 0; k < i; k++)
            {
                left -= _root[i, k] * y[k];
            }

            y[i] = left / _root[i, i];
        }

        return y;
    }

    private static double Dot(double[] one, double[] two)
    {
        var sum = 0.0;
        for (var i = 0; i < one.Length; i++)
        {
            sum += one[i] * two[i];
        }

        return sum;
    }

    /// <summary>Distances of the readings from a bench that changed at one place, as squares.</summary>
    internal sealed class Step
    {
        private readonly double _offOff, _offLeak, _leakLeak, _stepOff, _stepLeak, _stepStep, _offBefore, _offAfter, _beforeBefore, _beforeAfter, _afterAfter;

        public Step(GramOfReadings of, double[] step, double[] before, double[] after)
        {
            (_offOff, _offLeak, _leakLeak) = (Dot(of._offSolved, of._offSolved), Dot(of._offSolved, of._leakSolved), Dot(of._leakSolved, of._leakSolved));
            (_stepOff, _stepLeak, _stepStep) = (Dot(step, of._offSolved), Dot(step, of._leakSolved), Dot(step, step));
            (_offBefore, _offAfter) = (Dot(of._offSolved, before), Dot(of._offSolved, after));
            (_beforeBefore, _beforeAfter, _afterAfter) = (Dot(before, before), Dot(before, after), Dot(after, after));
        }

        /// <summary>The leak stayed and the meter moved, by a normal shift: distance, what its unknown size costs, and the shift as it then is.</summary>
        public (double Distance, double Shrink, double Mean, double Spread) Moved(double leak, double by)
        {
            var (whole, towards, much) = (_offOff - 2 * leak * _offLeak + leak * leak * _leakLeak, _stepOff - leak * _stepLeak, 1 + by * by * _stepStep);
            return (whole - by * by * towards * towards / much, 1 / Math.Sqrt(much), by * by * towards / much, by / Math.Sqrt(much));
        }

        /// <summary>The meter stayed and the leak went from one to another.</summary>
        public double Leaked(double from, double to) =>
            _offOff - 2 * from * _offBefore - 2 * to * _offAfter + from * from * _beforeBefore + 2 * from * to * _beforeAfter + to * to * _afterAfter;
    }
}
