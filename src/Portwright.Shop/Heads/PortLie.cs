using Portwright.Shop.Record;

namespace Portwright.Shop.Heads;

/// <summary>How one port lies in its head.</summary>
/// <param name="Port">As it lies, its mirrored or not included.</param>
/// <param name="First">The lowest-numbered port of its kind in the head: the one the others are said to be the mirror image of.</param>
public sealed record PortLie(Guid Id, Port Port, Port First)
{
    private bool IsFirst => Port.Cylinder == First.Cylinder;

    /// <summary>Which half of its cylinder it lies in, seen from the intakes' flange, head upright: -1 left, +1 right.</summary>
    public int HalfSeen(HeadLay lay)
    {
        ArgumentNullException.ThrowIfNull(lay);
        // The centre of the cylinder is on the port's centre side; from the other side of the head left is right.
        var leftOfCentre = !Port.Mirrored;
        if (Port.Kind == PortKind.Exhaust && lay.Exhausts == ExhaustSide.Across) leftOfCentre = !leftOfCentre;
        return leftOfCentre ? -1 : 1;
    }

    /// <summary>Against the first of its kind: <c>mirror image of intake 1</c>, <c>as intake 1</c>; of the first itself where its centre side lies.</summary>
    public string Words => IsFirst ? Side : Port.Mirrored == First.Mirrored ? $"as {First.Name}" : $"mirror image of {First.Name}";

    /// <summary>Seen from its own flange, head upright.</summary>
    public string Side => Port.Mirrored ? "centre side left" : "centre side right";

    /// <summary>All of it: <c>intake 2: mirror image of intake 1, centre side left seen from its flange</c>.</summary>
    public string Said => IsFirst ? $"{Port.Name}: {Side} seen from its flange" : $"{Port.Name}: {Words}, {Side} seen from its flange";

    /// <summary>Whether anybody has said how a head's ports lie; of a record older than the question, where one of them is a mirror image.</summary>
    public static bool IsTold(Head head, IEnumerable<Port> ports)
    {
        ArgumentNullException.ThrowIfNull(head);
        return head.Lay is not null || ports.Any(p => p.Mirrored);
    }

    /// <summary>The ports of a head along it, seen from the intakes' flange, from left to right.</summary>
    public static IReadOnlyList<PortLie> Along(IEnumerable<(Guid Id, Port Port)> ports, HeadLay lay)
    {
        ArgumentNullException.ThrowIfNull(lay);
        var all = ports.ToList();
        return
        [
            .. all.Select(p => new PortLie(p.Id, p.Port, all.Where(o => o.Port.Kind == p.Port.Kind).MinBy(o => o.Port.Cylinder).Port))
                .OrderBy(l => lay.FromRight ? -l.Port.Cylinder : l.Port.Cylinder).ThenBy(l => l.HalfSeen(lay)).ThenBy(l => l.Port.Kind),
        ];
    }

    /// <summary>A doubt where intake and exhaust of a cylinder would lie in one half of it; null where none does.</summary>
    public static string? Clash(IReadOnlyList<PortLie> along, HeadLay lay)
    {
        ArgumentNullException.ThrowIfNull(along);
        var cylinders = along.GroupBy(l => l.Port.Cylinder)
            .Where(c => c.Select(l => l.Port.Kind).Distinct().Count() == 2 && c.Select(l => l.HalfSeen(lay)).Distinct().Count() == 1)
            .Select(c => c.Key).Order().ToList();
        if (cylinders.Count == 0) return null;
        var which = cylinders.Count == 1 ? $"cylinder {cylinders[0]}" : $"cylinders {string.Join(", ", cylinders)}";
        return $"In {which} intake and exhaust now lie in the same half, one behind the other. That is so where the valves stand across the head; where they stand in a row along it, one of the two is the other way round.";
    }
}
