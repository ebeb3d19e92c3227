namespace Portwright.Mutants;

/// <summary>What stands between a cut and the water: here every mutant is tried and every one must be killed.</summary>
internal static class Metal
{
    private static readonly string[] Files = ["Walls/WallState.cs", "Walls/WallLimit.cs", "Findings/Rules/ThinMetal.cs", "Diagnosis/PortFindings.cs"];

    private static readonly string[] Guesses = ["PerhapsThroatOrBowl", "IsUnsure"];

    /// <summary>Said of the hours round a port a cut reaches.</summary>
    public const string Reach = "reach of a cut";

    public static bool Guards(string source, string method) => Files.Contains(source) || Array.Exists(Guesses, g => method.Contains(g, StringComparison.Ordinal));

    public static bool Holds(Mutant mutant) => Guards($"{mutant.Folder}/{mutant.File}", mutant.Method) || mutant.What.StartsWith(Reach, StringComparison.Ordinal);
}
