using System.Collections.Immutable;
using SkiaSharp;

namespace Portwright.Figures;

/// <summary>Paints the marks of a drawing on a canvas: a picture or a sheet of paper.</summary>
internal sealed class Painter(SKCanvas canvas, Theme theme)
{
    public void Paint(IEnumerable<Mark> marks)
    {
        foreach (var mark in marks) One(mark);
    }

    private void One(Mark mark)
    {
        switch (mark)
        {
            case Segments s:
                using (var paint = Lined(s.Stroke))
                {
                    foreach (var (from, to) in s.Pieces) canvas.DrawLine(P(from), P(to), paint);
                }

                break;
            case Polyline p:
                using (var path = Outline(p.Places, false)) Draw(null, p.Stroke, paint => canvas.DrawPath(path, paint));
                break;
            case Area a:
                using (var path = Outline(a.Places, true)) Draw(a.Fill, a.Outline, paint => canvas.DrawPath(path, paint));
                break;
            case Circle c:
                Draw(c.Fill, c.Outline, paint => canvas.DrawCircle(P(c.Centre), (float)c.Radius, paint));
                break;
            case RoundedBox b:
                var rect = SKRect.Create((float)b.Box.X, (float)b.Box.Y, (float)b.Box.Width, (float)b.Box.Height);
                Draw(b.Fill, b.Outline, paint => canvas.DrawRoundRect(rect, (float)b.Radius, (float)b.Radius, paint));
                break;
            case Shades s: Shaded(s); break;
            case Text t: Letters(t); break;
            case Named n: Paint(n.Marks); break;
            case Touchable t: Paint(t.Marks); break;
            default: throw new ArgumentOutOfRangeException(nameof(mark), mark.GetType().Name, "A mark this painter knows.");
        }
    }

    private void Shaded(Shades shades)
    {
        canvas.Save();
        using var within = Outline(shades.Within, true);
        canvas.ClipPath(within, SKClipOperation.Intersect, true);
        foreach (var layer in shades.Layers)
        {
            using var path = new SKPath { FillType = SKPathFillType.EvenOdd };
            foreach (var ring in layer.Rings) path.AddPoly([.. ring.Select(P)], true);
            using var paint = new SKPaint { Color = SKColor.Parse(layer.Colour), IsAntialias = true, Style = SKPaintStyle.Fill };
            canvas.DrawPath(path, paint);
        }

        canvas.Restore();
    }

    private void Letters(Text t)
    {
        using var font = new SKFont(Typeface.Face(t.Weight), (float)t.Size)
        {
            Hinting = SKFontHinting.None,
            LinearMetrics = true,
            Subpixel = true,
            Edging = SKFontEdging.Antialias,
        };
        using var paint = Filled(t.Role);
        var align = t.Anchor switch { Anchor.Start => SKTextAlign.Left, Anchor.Middle => SKTextAlign.Center, _ => SKTextAlign.Right };
        canvas.DrawText(t.Words, (float)t.At.X, (float)t.At.Y, align, font, paint);
    }

    private void Draw(Role? fill, Stroke? stroke, Action<SKPaint> draw)
    {
        if (fill is { } f)
        {
            using var paint = Filled(f);
            draw(paint);
        }

        if (stroke is not { } s) return;
        using var line = Lined(s);
        draw(line);
    }

    private SKPaint Filled(Role role) => new() { Color = SKColor.Parse(theme.Of(role)), IsAntialias = true, Style = SKPaintStyle.Fill };

    private SKPaint Lined(Stroke stroke)
    {
        var paint = new SKPaint
        {
            Color = SKColor.Parse(theme.Of(stroke.Role)),
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = (float)stroke.Width,
            StrokeJoin = SKStrokeJoin.Round,
        };
        var dashes = stroke.Dashes();
        if (dashes.Length > 0) paint.PathEffect = SKPathEffect.CreateDash([.. dashes.Select(d => (float)d)], 0);
        return paint;
    }

    private static SKPath Outline(ImmutableArray<Place> places, bool closed)
    {
        var path = new SKPath();
        if (!places.IsEmpty) path.AddPoly([.. places.Select(P)], closed);
        return path;
    }

    private static SKPoint P(Place p) => new((float)p.X, (float)p.Y);
}
