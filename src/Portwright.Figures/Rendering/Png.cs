using SkiaSharp;

namespace Portwright.Figures;

/// <summary>Drawings as pictures.</summary>
public static class Png
{
    /// <summary>A picture of the drawing.</summary>
    /// <param name="scale">Picture points to one unit of the drawing, above 0 and at most 8.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is outside its range.</exception>
    public static byte[] Render(Drawing drawing, Theme theme, double scale = 2)
    {
        if (!(scale is > 0 and <= 8)) throw new ArgumentOutOfRangeException(nameof(scale), scale, "Above 0 and at most 8.");
        var info = new SKImageInfo((int)Math.Ceiling(drawing.Width * scale), (int)Math.Ceiling(drawing.Height * scale));
        using var surface = SKSurface.Create(info);
        surface.Canvas.Clear(SKColor.Parse(theme.Ground));
        surface.Canvas.Scale((float)scale);
        new Painter(surface.Canvas, theme).Paint(drawing.Marks);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
