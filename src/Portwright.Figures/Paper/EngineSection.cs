using Portwright.Shop.Findings;
using Portwright.Shop.Plan;
using Portwright.Shop.Runs;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>What a sheet says of the engine in words and rows, the same on page and paper.</summary>
internal static class EngineSection
{
    public const string Heading = "In this engine";

    /// <summary>Over the rows of <see cref="Targets"/>.</summary>
    public static IReadOnlyList<string> Heads { get; } = ["What the engine asks", "wanted", "measured", ""];

    /// <summary>The results in sentences, or the one that says nothing was run.</summary>
    public static IReadOnlyList<string> Said(PortInEngine engine, UnitSystem units)
    {
        if (engine.Question is not { } question) return ["Not run: the engine plan is not complete, or this cut was swept at too few lifts."];
        if (engine.Answer is not { } answer) return ["Not run yet with this cut. The job's engine page runs it, or portwright sheet --engine."];
        List<string> said = [EngineSentences.Best(answer, units)];
        if (answer.Warning.Length > 0) said.Add(answer.Warning);
        if (engine is { Gain: { } gain, Before.Cut.Fact.Number: var before }) said.Add($"This cut against cut {before}: {EngineSentences.Gain(gain, units)}.");
        said.Add(EngineSentences.Pays(answer, units));
        var assumed = EngineSentences.Assumed(question, units);
        said.AddRange(question.Cautions.Select(c => FindingWords.Show(c, units)));
        said.Add($"Breathes through {EngineSentences.Port(question, Shop.Record.PortKind.Intake)} and {EngineSentences.Port(question, Shop.Record.PortKind.Exhaust)}; {EngineSentences.Layout(question)}. "
            + (assumed.Count == 0 ? "Nothing was assumed." : $"Assumed: {string.Join(" ", assumed.Take(2))}{(assumed.Count > 2 ? $" And {assumed.Count - 2} more." : "")}"));
        return said;
    }

    /// <summary>For small print.</summary>
    public static string Small => string.Join(' ', EngineAnswer.NotKnown);

    /// <summary>How much of what is asked the port already gives; empty where that is nothing.</summary>
    public static string Met(PortInEngine engine) => Held(engine).Count(t => t.Answer == TargetAnswer.Within) switch
    {
        0 => "",
        1 => "One more target is met.",
        var n => $"{n} more targets are met; the engine's targets page of the port lists them.",
    };

    /// <summary>What is not yet as wanted, a row each; flow over lift is left to its curve.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Targets(PortInEngine engine, UnitSystem units) =>
    [
        .. Held(engine).Where(t => t.Answer != TargetAnswer.Within)
            .Select(t => (IReadOnlyList<string>)[FindingWords.Show(t.What, units), t.WantedWords(units), t.MeasuredWords(units), t.AnswerWords]),
    ];

    private static IEnumerable<EngineTarget> Held(PortInEngine engine) => engine.Targets.Where(t => t.Answer != TargetAnswer.None && t.Dimension != Dimension.VolumeFlow);
}
