using Portwright.Shop.Record;
using Portwright.Shop.Runs;
using Portwright.Shop.Targets;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>The port in its engine: what the run says, what the engine asks of the port, what was assumed.</summary>
internal static class EngineSaid
{
    public static Part? Of(PortAtCut port)
    {
        var engine = port.Engine;
        List<Block> blocks = [];
        if (engine.Answer is { } answer)
        {
            blocks.Add(new Paragraph("best", EngineSentences.Best(answer)));
            if (!answer.Warning.IsEmpty) blocks.Add(new Paragraph("warning", answer.Warning));
            if (engine is { Gain: { } gain, Before.Cut.Fact.Number: var before })
                blocks.Add(new Values("gain", [new("mean-torque", $"mean torque, less cut {before}", EngineSentences.Gain(gain))]));
            blocks.Add(new Paragraph("pays", EngineSentences.Pays(answer)));
            blocks.Add(new Figure("torque-and-power", FigureKind.TorqueAndPower, $"Torque and power over engine speed, {answer.Points.Count} speeds from {EngineSentences.Rpm(answer.Points[0].TurnsASecond)} to {EngineSentences.Rpm(answer.Points[^1].TurnsASecond)}."));
            blocks.Add(new Figure("worth-over-lift", FigureKind.WorthOverLift, $"What one percent more area at each lift is worth in mean torque."));
        }
        else if (port.Sheet.Flow is not null)
        {
            blocks.Add(new Paragraph("not-run", engine.Question is null
                ? (Sentence)$"Not run: the engine plan is not complete, or this cut was swept at too few lifts."
                : $"Not run yet with this cut: the job's engine page runs it."));
        }

        Held[] held = [.. engine.Targets.Select((t, i) => new Held(t, i, t.Dimension == Dimension.VolumeFlow ? TargetAnswer.None : t.Answer)).Where(t => t.Answer != TargetAnswer.None)];
        if (Targets(held) is { } targets) blocks.Add(targets);
        foreach (var (open, i) in held.Where(t => t.Answer is TargetAnswer.Short or TargetAnswer.Over && !t.Target.ToDo.IsEmpty).Select((t, i) => (t.Target, i)))
            blocks.Add(new Paragraph(FormattableString.Invariant($"target-{i + 1}"), $"{open.What}: {open.Words}"));
        var met = held.Count(t => t.Answer == TargetAnswer.Within);
        if (met > 0) blocks.Add(new Paragraph("met", met == 1 ? $"One target is met." : (Sentence)$"{met} targets are met."));
        return blocks.Count == 0 ? null : new Part("engine", $"In this engine", blocks);
    }

    /// <summary>What can break the engine, whatever the run says.</summary>
    public static IEnumerable<Sentence> Cautions(PortAtCut port) => port.Engine.Question?.CautionsOf(port.Engine.Kind) ?? [];

    public static Part? ForTheEngineer(PortAtCut port)
    {
        if (port.Engine is not { Question: { } question, Answer: not null }) return null;
        List<Block> blocks =
        [
            new Paragraph("breathes", $"Breathes through {EngineSentences.Port(question, PortKind.Intake)} and {EngineSentences.Port(question, PortKind.Exhaust)}; {EngineSentences.Layout(question)}."),
            .. EngineSentences.Assumed(question).Select((s, i) => new Paragraph(FormattableString.Invariant($"assumed-{i + 1}"), s)),
            .. EngineAnswer.NotKnown.Select((s, i) => new Paragraph(FormattableString.Invariant($"not-known-{i + 1}"), s)),
        ];
        return new Part("engine-assumed", $"What the engine run rests on", blocks, Reader.Engineer);
    }

    /// <summary>What is not yet as wanted; flow over lift is left to its curve.</summary>
    private static Table? Targets(Held[] held)
    {
        Held[] open = [.. held.Where(t => t.Answer != TargetAnswer.Within)];
        return open.Length == 0 ? null : new Table(
            "targets",
            $"What the engine asks",
            [new("what", $"what"), new("wanted", $"wanted"), new("measured", $"measured or planned", Strong: true), new("answer", $"")],
            [.. open.Select(t => (IReadOnlyList<Cell>)[new(t.Target.What), new(t.Target.WantedSaid), new(t.Target.MeasuredBy(PortNumber.TargetKey(t.Index))), new(Sentence.Plain(t.Target.AnswerWords))])],
            Sentence.Empty);
    }

    /// <summary>A target something was held against, with its place among all and its answer, which takes a while to work out.</summary>
    private sealed record Held(EngineTarget Target, int Index, TargetAnswer Answer);
}
