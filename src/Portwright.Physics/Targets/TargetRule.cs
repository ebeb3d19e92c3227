namespace Portwright.Physics.Targets;

/// <summary>What a target rests on.</summary>
public enum TargetBasis
{
    /// <summary>An equation of a named source, or of geometry or mechanics.</summary>
    Published,

    /// <summary>A habit of the trade with no source that could be checked.</summary>
    CommonPractice,
}

/// <summary>Where a target comes from, to be said beside its figure.</summary>
/// <param name="Name">As a porter would say it.</param>
/// <param name="Source">Author, work, year and equation; from memory where so.</param>
/// <param name="Caution">What it leaves out.</param>
public sealed record TargetRule(string Name, TargetBasis Basis, string Source, string Caution);

/// <summary>Every rule of this folder.</summary>
public static class TargetRules
{
    public static IReadOnlyList<TargetRule> All { get; } =
    [
        PistonDemand.Rule, MachTargets.Rule, SectionSpeed.Rule, SectionSpeed.LimitRule, NeededArea.Rule, TimeArea.Rule, FlowBalance.Rule,
        FlowBalance.PowerRule, ThroatShare.Rule, RunnerTuning.QuarterWaveRule, RunnerTuning.EchoRule, RunnerTuning.VesselRule,
        VesselResonance.Rule, PortVolume.Rule,
    ];
}

/// <summary>A range of the trade, ends included.</summary>
public readonly record struct UsualRange(double Low, double High)
{
    public bool Holds(double value) => value >= Low && value <= High;
}
