using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What was assumed, left out or could be better; and what can hurt someone or ruin the casting.</summary>
internal static class RemarksSaid
{
    public static Part? Of(PortAtCut port)
    {
        Sentence[] remarks = [.. port.Sheet.Remarks.Concat(port.Survey.Remarks).Concat(ConfirmedSaid.Of(port)).Distinct()];
        return remarks.Length == 0 ? null
            : new Part("remarks", $"To know about these figures", [.. remarks.Select((r, i) => new Paragraph(FormattableString.Invariant($"remark-{i + 1}"), r))]);
    }

    public static Sentence[] AllCautions(PortAtCut port) => [.. port.Sheet.Cautions.Concat(EngineSaid.Cautions(port)).Distinct()];

    public static Part? Cautions(PortAtCut port)
    {
        var cautions = AllCautions(port);
        return cautions.Length == 0 ? null
            : new Part("cautions", $"Take care", [.. cautions.Select((c, i) => new Caution(FormattableString.Invariant($"caution-{i + 1}"), c))]);
    }
}
