using Portwright.Shop.Families;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>The ports of a job against each other: what each shows alone, and what the castings share.</summary>
internal static class SetSaid
{
    public static Part? Of(IReadOnlyList<PortAtCut> ports)
    {
        var rows = ports.Select(Row).OfType<IReadOnlyList<Cell>>().ToList();
        var shared = CastingShape.Of([.. ports.Select(p => p.Survey)]);
        List<Block> blocks = [];
        if (rows.Count > 0)
        {
            blocks.Add(new Table(
                "set",
                $"Flow of each port against its sisters of the same kind, as far on, over the lifts all were swept at",
                [new("port", $"port"), new("sisters", $"sisters"), new("against", $"against their middle", Dimension.Fraction, Strong: true), new("sound", $"a sound one within", Dimension.Fraction), new("verdict", $"verdict"), new("chance", $"chance it is low")],
                rows,
                $"A sound port lies within as much as its sisters differ, its own set-up counted in."));
        }

        blocks.AddRange(shared.Select((s, i) => new Paragraph(FormattableString.Invariant($"shared-{i + 1}"), s)));
        return blocks.Count == 0 ? null : new Part("set", $"The set", blocks);
    }

    private static IReadOnlyList<Cell>? Row(PortAtCut port)
    {
        if (FlowAgainstSisters.Of(port.Survey) is not { Sisters: > 1 } against) return null;
        var off = Math.Exp(against.Level - against.LevelFamily.Mean) - 1;
        var within = 2 * against.LevelFamily.Deviation;
        var chance = port.Spoken.FirstOrDefault(f => f.Rule is LowAgainstSisters)?.Confidence ?? 0;
        Sentence verdict = chance >= Confidence.Stated ? (Sentence)$"low" : Math.Abs(off) <= within ? (Sentence)$"like its sisters" : off > 0 ? (Sentence)$"high" : $"perhaps low";
        return
        [
            new(Sentence.Plain($"{port.Sheet.Head.Fact.Name} {port.Sheet.Port.Fact.Name}")),
            new($"{against.Sisters}"),
            new($"{Quantity.Share(off) with { Signed = true }}"),
            new($"{Quantity.Share(within).About(2)}"),
            new(verdict),
            new($"{Quantity.Ratio(chance).About(2)}"),
        ];
    }
}
