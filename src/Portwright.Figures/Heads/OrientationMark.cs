using Portwright.Shop.Record;
using Portwright.Shop.Sheets;

namespace Portwright.Figures;

/// <summary>The small mark beside the sentence that says where one is: the head, its ports, the one spoken of filled, and which way is up.</summary>
public static partial class OrientationMark
{
    /// <summary>Draws the mark, 28 high.</summary>
    /// <param name="kinds">The ports as they lie.</param>
    /// <param name="here">Which one is spoken of, from 0; null where none is.</param>
    public static Drawing Draw(IReadOnlyList<PortKind> kinds, int? here)
    {
        const double height = 28, step = 13;
        var count = Math.Max(1, kinds.Count);
        var head = new Box(1, 5, 8 + step * count, 18);
        var pen = new Pen();
        pen.Box(head, 3, null, new Stroke(Role.Quiet, 1.4));
        for (var i = 0; i < kinds.Count; i++)
        {
            var tall = kinds[i] == PortKind.Intake ? 12.0 : 8.5;
            var box = new Box(head.X + 4 + step * i + 2.2, head.Centre.Y - tall / 2, 8.5, tall);
            pen.Area(PortShape.Outline(box), i == here ? Role.Blue : null, new Stroke(i == here ? Role.Blue : Role.Quiet, 1.3));
        }

        var x = head.Right + 6;
        pen.Segments([(new(x, 24), new(x, 5)), (new(x, 5), new(x - 3.5, 10)), (new(x, 5), new(x + 3.5, 10))], new Stroke(Role.Quiet, 1.4));
        var words = here is { } n && n < kinds.Count ? $"Port {n + 1} of {kinds.Count} on its head, roof up." : "A head, roof up.";
        return pen.Done(x + 6, height, "Where the port lies", words);
    }

    /// <summary>The mark of one port of a head.</summary>
    public static Drawing Draw(HeadOnBoard head, Guid? port)
    {
        var at = head.Ports.ToList().FindIndex(p => p.Port.Id == port);
        return Draw([.. head.Ports.Select(p => p.Port.Fact.Kind)], at < 0 ? null : at);
    }
}
