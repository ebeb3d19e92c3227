namespace Portwright.Mutants;

/// <summary>Which mutants are tried: those over metal all, of every other folder its share of the rest, drawn by a seed.</summary>
internal static class Sample
{
    public static IReadOnlyList<Mutant> Of(IReadOnlyList<Mutant> all, int size, int seed)
    {
        var over = all.Where(Metal.Holds).ToList();
        var rest = all.Except(over).GroupBy(m => m.Folder).OrderBy(g => g.Key, StringComparer.Ordinal).ToList();
        var wanted = Math.Max(0, size - over.Count);
        var whole = Math.Max(1, rest.Sum(g => g.Count()));
        return [.. over, .. rest.SelectMany(g => Drawn([.. g], (int)Math.Ceiling((double)wanted * g.Count() / whole), seed))];
    }

    private static IEnumerable<Mutant> Drawn(Mutant[] of, int count, int seed)
    {
        new Random(seed).Shuffle(of);
        return of.Take(count).OrderBy(m => m.File, StringComparer.Ordinal).ThenBy(m => m.Line);
    }
}
