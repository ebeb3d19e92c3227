using System.Collections.Immutable;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Curves;

/// <summary>A value of a curve with its doubt.</summary>
/// <param name="IsExtrapolated">It lies outside the tested range; its doubt is that of the readings alone.</param>
public sealed record CurveEstimate(Estimate Estimate, bool IsExtrapolated);

/// <summary>A monotone curve through results that carry their doubt, cause by cause.</summary>
/// <remarks>
/// Each cause moves its points together: its share at x is half the distance between the curve through the points moved up
/// by it and the curve through the points moved down (JCGM 100:2008, 5.1.3 note 2, with the cause for the input). A cause that
/// shifts or scales all points shifts or scales the curve exactly. How the port flows between two tested lifts is
/// not known from the readings: that doubt is not in the figures.
/// </remarks>
public sealed class CurveOfEstimates
{
    private readonly MonotoneCubic _middle;
    private readonly (Contribution Cause, MonotoneCubic Up, MonotoneCubic Down)[] _moved;

    /// <param name="x">Strictly rising, at least 2 points, in any unit.</param>
    /// <param name="points">As many results.</param>
    /// <exception cref="ArgumentException">As <see cref="MonotoneCubic"/>.</exception>
    public CurveOfEstimates(ReadOnlySpan<double> x, ReadOnlySpan<Estimate> points)
    {
        Points = [.. points];
        var y = new double[points.Length];
        for (var i = 0; i < y.Length; i++) y[i] = points[i].Value;
        _middle = new(x, y);

        var causes = new SortedDictionary<string, (Contribution Cause, double[] Amounts)>(StringComparer.Ordinal);
        for (var i = 0; i < points.Length; i++)
        {
            foreach (var c in points[i].Contributions)
            {
                if (!causes.TryGetValue(c.Source, out var cause)) causes[c.Source] = cause = (c, new double[y.Length]);
                else causes[c.Source] = cause = (cause.Cause.Plus(c), cause.Amounts);
                cause.Amounts[i] = c.Amount;
            }
        }
        _moved = new (Contribution, MonotoneCubic, MonotoneCubic)[causes.Count];
        var (up, down, next) = (new double[y.Length], new double[y.Length], 0);
        foreach (var (cause, amounts) in causes.Values)
        {
            for (var i = 0; i < y.Length; i++) (up[i], down[i]) = (y[i] + amounts[i], y[i] - amounts[i]);
            _moved[next++] = (cause, new(x, up), new(x, down));
        }
    }

    /// <summary>The results the curve goes through.</summary>
    public ImmutableArray<Estimate> Points { get; }

    /// <summary>The curve of the values.</summary>
    public MonotoneCubic Values => _middle;

    /// <summary>First x tested, in the unit they were given in.</summary>
    public double From => _middle.From;

    /// <summary>Last x tested, in the unit they were given in.</summary>
    public double To => _middle.To;

    /// <param name="x">In the unit of the tested x.</param>
    public bool Covers(double x) => _middle.Covers(x);

    /// <summary>The result at x.</summary>
    /// <param name="x">In the unit of the tested x.</param>
    /// <exception cref="ArgumentOutOfRangeException">x is outside the tested range and extrapolation is refused.</exception>
    public CurveEstimate At(double x, Extrapolation outside = Extrapolation.Refused)
    {
        var value = _middle.At(x, outside);
        return new(Through(value.Value, curve => curve.At(x, outside).Value), value.IsExtrapolated);
    }

    /// <summary>Area under the curve from a to b, in units of the result times units of x.</summary>
    /// <param name="a">In the unit of the tested x.</param>
    /// <param name="b">In the unit of the tested x.</param>
    /// <exception cref="ArgumentOutOfRangeException">a or b is outside the tested range.</exception>
    public Estimate Area(double a, double b) => Through(_middle.Area(a, b), curve => curve.Area(a, b));

    /// <summary>Mean of the curve from a to b.</summary>
    /// <param name="a">In the unit of the tested x.</param>
    /// <param name="b">In the unit of the tested x.</param>
    /// <exception cref="ArgumentOutOfRangeException">a or b is outside the tested range, or b is not above a.</exception>
    public Estimate MeanOver(double a, double b)
    {
        if (!(b > a)) throw new ArgumentOutOfRangeException(nameof(b), b, $"A mean needs an end above its start, {a}.");
        return Area(a, b).Scale(1 / (b - a));
    }

    private Estimate Through(double value, Func<MonotoneCubic, double> read)
    {
        var contributions = ImmutableArray.CreateBuilder<Contribution>(_moved.Length);
        foreach (var (cause, up, down) in _moved) contributions.Add(cause with { Amount = (read(up) - read(down)) / 2 });
        return new(value, contributions.MoveToImmutable());
    }
}
