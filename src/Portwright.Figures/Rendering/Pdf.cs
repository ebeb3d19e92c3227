using SkiaSharp;

namespace Portwright.Figures;

/// <summary>Drawings as pages of one PDF: lines stay lines, letters stay letters, the font goes with them.</summary>
public static class Pdf
{
    /// <summary>One page a drawing; the drawing's unit is the point, 1/72 inch.</summary>
    /// <param name="created">The date in the file; null leaves it out, so that the same drawings give the same file.</param>
    public static byte[] Render(IReadOnlyList<Drawing> pages, Theme? theme = null, DateTimeOffset? created = null)
    {
        ArgumentOutOfRangeException.ThrowIfZero(pages.Count, nameof(pages));
        theme ??= Theme.White;
        using var stream = new MemoryStream();
        var about = new SKDocumentPdfMetadata
        {
            Title = pages[0].Title,
            Subject = pages[0].Description,
            Creator = "Portwright",
            Producer = "Portwright",
            RasterDpi = 300,
            EncodingQuality = 101,
            Creation = created?.DateTime,
            Modified = created?.DateTime,
        };
        using (var document = SKDocument.CreatePdf(stream, about))
        {
            foreach (var page in pages)
            {
                var canvas = document.BeginPage((float)page.Width, (float)page.Height);
                if (theme != Theme.White) canvas.Clear(SKColor.Parse(theme.Ground));
                new Painter(canvas, theme).Paint(page.Marks);
                document.EndPage();
            }

            document.Close();
        }

        return stream.ToArray();
    }
}
