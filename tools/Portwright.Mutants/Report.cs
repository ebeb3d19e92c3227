namespace Portwright.Mutants;

/// <summary>The table by folder and who survived.</summary>
internal static class Report
{
    /// <summary>Share of the mutants that must be killed; over metal all.</summary>
    private const double Wanted = 0.8;

    /// <returns>True where enough were killed, and over metal all.</returns>
    public static bool Write(IReadOnlyList<(Mutant Mutant, Fate Fate)> fates)
    {
        Console.WriteLine();
        Console.WriteLine("| folder | mutants | killed | survived |");
        Console.WriteLine("|---|---|---|---|");
        foreach (var folder in fates.GroupBy(f => Metal.Holds(f.Mutant) ? "over metal" : f.Mutant.Folder).OrderBy(g => g.Key != "over metal").ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            Console.WriteLine($"| {folder.Key} | {folder.Count()} | {folder.Count(f => f.Fate == Fate.Killed)} | {folder.Count(f => f.Fate == Fate.Survived)} |");
        }

        Console.WriteLine();
        var survived = fates.Where(f => f.Fate == Fate.Survived).ToList();
        survived.ForEach(f => Console.WriteLine($"survived: {f.Mutant}"));
        var killed = fates.Count - survived.Count;
        Console.WriteLine($"{killed} of {fates.Count} mutants killed, {(fates.Count > 0 ? 100 * killed / fates.Count : 0)} percent; {survived.Count(f => Metal.Holds(f.Mutant))} over metal survived.");
        return killed >= Wanted * fates.Count && !survived.Exists(f => Metal.Holds(f.Mutant));
    }
}
