using System.Globalization;

namespace Portwright.Figures;

/// <summary>
/// Colours of a map of speeds: cividis, lightness rises evenly from dark blue to yellow, read alike with and without colour vision
/// (J. R. Nuñez, C. R. Anderton, R. S. Renslow, PLoS ONE 13(7) (2018) e0199239). Every eighth of the published 256 colours, straight between.
/// </summary>
public static class SpeedColours
{
    /// <summary>Steps a map is drawn in: finer ones are not told apart.</summary>
    public const int Steps = 24;

    private static readonly int[] Published =
    [
        0x00224e, 0x00285b, 0x002e6a, 0x053371, 0x1a386f, 0x273e6e, 0x32436d, 0x3b496c, 0x434e6c, 0x4b546c, 0x535a6d,
        0x5a5f6e, 0x61656f, 0x686a71, 0x6f7073, 0x767676, 0x7d7c78, 0x838179, 0x8b8778, 0x928d78, 0x9a9376, 0xa29975,
        0xaaa073, 0xb2a670, 0xbbad6d, 0xc3b369, 0xccba64, 0xd4c15f, 0xddc858, 0xe6d051, 0xefd748, 0xf8df3c, 0xfee838,
    ];

    /// <summary>The colour of a share of the range, 0 the slowest to 1 the fastest; what lies outside takes the end's colour.</summary>
    public static string Of(double share)
    {
        var at = Math.Clamp(double.IsNaN(share) ? 0 : share, 0, 1) * (Published.Length - 1);
        var low = Math.Min((int)at, Published.Length - 2);
        var part = at - low;
        int Mix(int shift) => (int)Math.Round((1 - part) * (Published[low] >> shift & 255) + part * (Published[low + 1] >> shift & 255));
        return "#" + (Mix(16) << 16 | Mix(8) << 8 | Mix(0)).ToString("x6", CultureInfo.InvariantCulture);
    }

    /// <summary>The colour of one of the <see cref="Steps"/> steps.</summary>
    public static string Step(int step) => Of((step + 0.5) / Steps);
}
