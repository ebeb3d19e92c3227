using System.Collections.Concurrent;
using SkiaSharp;

namespace Portwright.Figures;

/// <summary>IBM Plex Sans Condensed as shipped inside the program (SIL Open Font License 1.1). No font of the machine is ever used.</summary>
/// <remarks>Its figures are all of one width, so columns of numbers stand under each other.</remarks>
public static class Typeface
{
    /// <summary>The family's name, for a style sheet.</summary>
    public const string Family = "IBM Plex Sans Condensed";

    /// <summary>The licence text that goes with the font files.</summary>
    public const string LicenceFile = "OFL.txt";

    private static readonly ConcurrentDictionary<Weight, SKTypeface> Faces = new();
    private static readonly ConcurrentDictionary<Weight, SKFont> Rulers = new();

    /// <summary>File name of one weight, <c>woff2</c> for pages.</summary>
    public static string FileName(Weight weight, string format = "woff2") => $"IBMPlexSansCondensed-{weight}.{format}";

    /// <summary>Bytes of a file shipped in <c>Fonts/</c>, such as <c>IBMPlexSansCondensed-Regular.woff2</c> or <c>OFL.txt</c>; null for any other name.</summary>
    public static byte[]? File(string name)
    {
        using var stream = typeof(Typeface).Assembly.GetManifestResourceStream(name);
        if (stream is null) return null;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    internal static SKTypeface Face(Weight weight) => Faces.GetOrAdd(weight, w =>
    {
        using var data = SKData.CreateCopy(Woff.ToSfnt(File(FileName(w, "woff"))!));
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException($"The {w} font inside the program could not be read.");
    });

    /// <summary>Width at size 1.</summary>
    internal static double Measure(string words, Weight weight)
    {
        // Measured large without hinting, then scaled: the width is the same at every size, as in a page and on paper.
        const float ruler = 1000;
        var font = Rulers.GetOrAdd(weight, w => new SKFont(Face(w), ruler) { Hinting = SKFontHinting.None, LinearMetrics = true, Subpixel = true });
        lock (font) return font.MeasureText(words) / ruler;
    }
}
