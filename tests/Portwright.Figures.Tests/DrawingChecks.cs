namespace Portwright.Figures.Tests;

/// <summary>Asks a drawing what a person would see at once: is a text cut off, does one lie over another.</summary>
internal static class DrawingChecks
{
    public static void IsReadable(Drawing drawing, double smallest = 0)
    {
        var room = new Box(0, 0, drawing.Width, drawing.Height).Grown(0.01);
        var texts = drawing.Texts().ToList();
        Assert.NotEmpty(texts);
        foreach (var text in texts)
        {
            Assert.True(room.Holds(text.Bounds()), $"'{text.Words}' leaves the drawing {drawing.Width} x {drawing.Height}: {text.Bounds()}");
            Assert.True(text.Size >= smallest, $"'{text.Words}' is {text.Size} high, under {smallest}");
        }

        // Letters never fill their line's room to the edge; what is compared is the room without that air.
        var boxes = texts.Select(t => (t.Words, Box: t.Bounds() is var b ? b with { Y = b.Y + 0.12 * t.Size, Height = b.Height - 0.24 * t.Size } : b)).ToList();
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var j = i + 1; j < boxes.Count; j++)
                Assert.False(boxes[i].Box.Overlaps(boxes[j].Box), $"'{boxes[i].Words}' lies over '{boxes[j].Words}'");
        }

        foreach (var tip in drawing.Touchables().SelectMany(t => t.Tip).OfType<Text>())
            Assert.True(room.Holds(tip.Bounds()), $"'{tip.Words}' leaves the drawing");
    }
}
