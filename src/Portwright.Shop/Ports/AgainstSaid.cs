using Portwright.Shop.Reduction;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>This cut against the last and the first, band by band.</summary>
internal static class AgainstSaid
{
    public static Part? Of(PortAtCut port)
    {
        Values[] blocks = [.. new[] { port.Sheet.AgainstLast, port.Sheet.AgainstFirst }.OfType<CutComparison>().Select(Bands).Where(b => b.Rows.Count > 0)];
        return blocks.Length == 0 ? null : new Part("against", $"By band of lift", blocks);
    }

    private static Values Bands(CutComparison against)
    {
        var number = against.Last.Cut.Fact.Number;
        return new Values($"bands-against-cut-{number}", [.. against.Curves.Bands.Select(b => new NamedValue(
            b.Band.Name.Replace(' ', '-'),
            b.TestedFrom < b.TestedTo
                ? (Sentence)$"{b.Band.Name}, {Quantity.Lift(b.TestedFrom)} to {Quantity.Lift(b.TestedTo)}, less cut {number}"
                : $"{b.Band.Name}, at {Quantity.Lift(b.TestedFrom)}, less cut {number}",
            VerdictWords.Said(b.Difference, budget: PortNumber.LessKey(against, b.Band)),
            VerdictWords.ShapeOf(b.Difference)))]);
    }
}
