namespace Portwright.Mutants;

/// <summary>Folders whose figures are tried, and the tests that speak of them: run before all others.</summary>
internal static class Folders
{
    public static IReadOnlyDictionary<string, string[]> Tests { get; } = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["Walls"] = ["Metal.*", "Findings.Weighed.*"],
        ["Diagnosis"] = ["Metal.*", "Findings.Weighed.*"],
        ["Findings"] = ["Findings.Weighed.*", "Cutting.WorthOfAReading", "Findings.GainByHand", "Findings.DemandOfTheEngine"],
        ["Findings/Rules"] = ["Findings.Weighed.*", "Findings.ClosureInWords", "Metal.*"],
        ["Families"] = ["Families.*", "Findings.Weighed.*"],
        ["Judgement"] = ["Judgement.*", "Findings.Weighed.*"],
        ["Cutting"] = ["Cutting.*"],
        ["Balls"] = ["Balls.*", "Findings.Weighed.WeighedAir"],
        ["Bench"] = ["Bench.*", "Findings.Weighed.WeighedMeasurement", "Findings.BenchChangedBetweenChecks", "Trials.EntriesRefused"],
        ["Reduction"] = ["Reduction.*", "Bench.*"],
        ["Targets"] = ["Targets.*"],
        ["Trials"] = ["Trials.*"],
    };

    public static IReadOnlyList<string> Near(Mutant mutant) => Metal.Holds(mutant) ? ["Metal.*", "Findings.WallGuardTests"] : Tests[mutant.Folder];
}
