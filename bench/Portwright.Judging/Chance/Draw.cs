namespace Portwright.Judging.Chance;

/// <summary>One made shop's own chance: the same seed and number make the same shop.</summary>
public sealed class Draw
{
    private readonly Random _random;

    public Draw(long seed, long number)
    {
        // SplitMix64's last step: neighbouring numbers must not make neighbouring shops.
        var z = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL + (ulong)number * 0xBF58476D1CE4E5B9UL + 0x94D049BB133111EBUL);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        _random = new Random(unchecked((int)(z ^ (z >> 31))));
    }

    public double Between(double least, double most) => least + (most - least) * _random.NextDouble();

    /// <summary>A whole number, both ends in.</summary>
    public int Whole(int least, int most) => _random.Next(least, most + 1);

    public bool Chance(double share) => _random.NextDouble() < share;

    /// <summary>From a bell curve about nothing.</summary>
    public double Normal(double deviation)
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        return deviation * radius * Math.Cos(2 * Math.PI * _random.NextDouble());
    }

    /// <summary>A factor about 1 whose logarithm scatters by <paramref name="deviation"/>.</summary>
    public double Factor(double deviation) => Math.Exp(Normal(deviation));

    public T Of<T>(params ReadOnlySpan<T> choices) => choices[_random.Next(choices.Length)];

    /// <summary>Some of them, none twice, in their order.</summary>
    public IReadOnlyList<T> Some<T>(IReadOnlyList<T> of, int count)
    {
        var left = Enumerable.Range(0, of.Count).ToList();
        while (left.Count > Math.Max(0, count)) left.RemoveAt(_random.Next(left.Count));
        return [.. left.Select(i => of[i])];
    }

    public Guid Name()
    {
        Span<byte> bytes = stackalloc byte[16];
        _random.NextBytes(bytes);
        return new Guid(bytes);
    }
}
