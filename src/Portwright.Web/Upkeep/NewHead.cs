using Portwright.Shop.Heads;
using Portwright.Shop.Record;

namespace Portwright.Web.Upkeep;

/// <summary>A bare head as received: one intake and one exhaust a cylinder, each at cut 0.</summary>
public static class NewHead
{
    /// <param name="lay">How it lies; null where nobody has said.</param>
    /// <param name="mirrored">Which ports are mirror images; heeded where it was said how the head lies.</param>
    public static IReadOnlyList<Entry> Entries(
        Guid job, string name, int cylinders, string material, int place, DateTimeOffset now, string hand, HeadLay? lay = null, MirrorPattern mirrored = MirrorPattern.None)
    {
        var head = Guid.CreateVersion7(now);
        var entries = new List<Entry> { Entry.About(head, job, new Head(name, material, Place: place, Lay: lay), now, hand) };
        for (var cylinder = 1; cylinder <= cylinders; cylinder++)
        {
            foreach (var kind in new[] { PortKind.Intake, PortKind.Exhaust })
            {
                var port = Guid.CreateVersion7(now);
                entries.Add(Entry.About(port, job, new Port(head, kind, cylinder, lay is not null && MirrorPatterns.IsMirrored(mirrored, kind, cylinder, cylinders, lay.Exhausts)), now, hand));
                entries.Add(Entry.About(Guid.CreateVersion7(now), job, AsReceived(port, now), now, hand));
            }
        }

        return entries;
    }

    /// <summary>Cut 0 of a port.</summary>
    public static Cut AsReceived(Guid port, DateTimeOffset now) => new(port, 0, "as received", DateOnly.FromDateTime(now.DateTime));
}
