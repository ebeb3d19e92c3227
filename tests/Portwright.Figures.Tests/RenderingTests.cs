using System.Xml.Linq;
using SkiaSharp;

namespace Portwright.Figures.Tests;

public sealed class RenderingTests
{
    private const string Hostile = "</text><script>alert(1)</script> \" onload='x' & \u0000\u001b\u202eevil \ud800 ]]>";

    private static Drawing HostileDrawing() =>
        FlowOverLift.Draw(Invented.Plot(Invented.Cut(Hostile, 250, Invented.Lifts), [Invented.Cut(Hostile + "2", 240, Invented.Lifts)], name: Hostile), FigureSize.Wide);

    [Fact]
    public void Svg_is_well_formed_whatever_a_person_typed()
    {
        foreach (var svg in new[] { Svg.Page(HostileDrawing()), Svg.Standalone(HostileDrawing(), Theme.Lamp), Svg.Page(HostileDrawing(), HostileDrawing()) })
        {
            var document = XDocument.Parse(svg);
            Assert.DoesNotContain(document.Descendants(), e => e.Name.LocalName == "script");
            Assert.DoesNotContain(document.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
            Assert.DoesNotContain('\u202e', svg);
        }
    }

    [Fact]
    public void A_figure_in_a_page_has_no_style_attribute_and_no_colour_of_its_own()
    {
        foreach (var drawing in new[] { HostileDrawing(), HeadDrawing.Draw(new InventedShop().Board().Heads[0], _ => "/port?a=1&b=2", 760) })
        {
            var document = XDocument.Parse(Svg.Page(drawing));
            Assert.DoesNotContain(document.Descendants().Attributes(), a => a.Name.LocalName == "style");
            Assert.DoesNotContain(document.Descendants().Attributes(), a => a.Name.LocalName is "fill" or "stroke");
            Assert.DoesNotContain(document.Descendants(), e => e.Name.LocalName == "style");
        }
    }

    [Fact]
    public void Every_class_a_figure_uses_is_in_its_style_sheet()
    {
        var classes = XDocument.Parse(Svg.Page(FlowOverLift.Draw(Invented.WholeSweep(), FigureSize.Wide))).Descendants()
            .SelectMany(e => ((string?)e.Attribute("class") ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries)).Distinct();
        Assert.All(classes, c => Assert.Contains("." + c, Svg.StyleSheet, StringComparison.Ordinal));
        Assert.All(Enum.GetNames<Role>(), r => Assert.Contains(".f-" + r.ToLowerInvariant(), Svg.StyleSheet, StringComparison.Ordinal));
    }

    [Fact]
    public void A_point_to_touch_can_be_reached_by_keyboard_and_has_a_name()
    {
        XNamespace ns = "http://www.w3.org/2000/svg";
        var flow = XDocument.Parse(Svg.Page(FlowOverLift.Draw(Invented.Growing(), FigureSize.Wide)));
        var points = flow.Descendants(ns + "g").Where(g => (string?)g.Attribute("class") == "pw-touch").ToList();
        Assert.Equal(12, points.Count);
        Assert.All(points, p => Assert.Equal("0", (string?)p.Attribute("tabindex")));
        Assert.All(points, p => Assert.False(string.IsNullOrEmpty((string?)p.Attribute("aria-label"))));
        Assert.Equal("group", (string?)flow.Root!.Attribute("role"));
        var head = XDocument.Parse(Svg.Page(HeadDrawing.Draw(new InventedShop().Board().Heads[0], p => $"/port/{p.Port.Id}?x=1&y=2", 760)));
        Assert.Equal(8, head.Descendants(ns + "a").Count(a => ((string?)a.Attribute("href"))!.EndsWith("?x=1&y=2", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_file_of_its_own_carries_its_colours_and_its_letters()
    {
        var svg = Svg.Standalone(FlowOverLift.Draw(Invented.WholeSweep(), FigureSize.Wide), Theme.Lamp);
        Assert.Contains(Theme.Lamp.Blue, svg, StringComparison.Ordinal);
        Assert.Contains("data:font/woff2;base64,", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("pw-touch", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("font/woff2", Svg.Standalone(FlowOverLift.Draw(Invented.WholeSweep(), FigureSize.Wide), Theme.Lamp, embedFont: false), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2.5)]
    public void A_picture_has_the_size_asked_and_shows_the_curve_in_blue(double scale)
    {
        var drawing = FlowOverLift.Draw(Invented.WholeSweep(), FigureSize.Wide);
        using var picture = SKBitmap.Decode(Png.Render(drawing, Theme.Paper, scale));
        Assert.Equal((int)(760 * scale), picture.Width);
        Assert.Equal((int)(560 * scale), picture.Height);
        var blue = SKColor.Parse(Theme.Paper.Blue);
        Assert.True(picture.Pixels.Count(p => p == blue) > 300 * scale);
        Assert.Equal(SKColor.Parse(Theme.Paper.Ground), picture.GetPixel(1, picture.Height - 2));
    }

    [Fact]
    public void Colours_of_both_themes_can_be_read_on_their_ground()
    {
        foreach (var theme in new[] { Theme.Paper, Theme.Lamp, Theme.White })
        {
            foreach (var role in new[] { Role.Ink, Role.Quiet, Role.Blue, Role.Brass, Role.Thin })
            {
                // WCAG 2.2, 1.4.3: 4.5 to 1 for text.
                Assert.True(Contrast(theme.Of(role), theme.Ground) >= 4.5, $"{role} on {theme.Name}: {Contrast(theme.Of(role), theme.Ground):F2}");
                Assert.True(Contrast(theme.Of(role), theme.Panel) >= 4.5, $"{role} on a panel of {theme.Name}");
            }
        }
    }

    [Fact]
    public void Figures_of_numbers_are_all_of_one_width()
    {
        foreach (var weight in Enum.GetValues<Weight>())
            Assert.Single("0123456789".Select(d => Math.Round(Lettering.Width(d.ToString(), 100, weight), 6)).Distinct());
    }

    [Fact]
    public void The_font_has_every_letter_the_figures_use()
    {
        using var face = SKTypeface.FromData(SKData.CreateCopy(Woff.ToSfnt(Typeface.File("IBMPlexSansCondensed-Regular.woff")!)));
        Assert.Equal("IBM Plex Sans Condensed", face.FamilyName);
        Assert.All("±−–…°²³µ·×%/äöüßéñł", c => Assert.NotEqual(0, face.GetGlyph(c)));
    }

    [Fact]
    public void The_licence_goes_with_the_font() =>
        Assert.Contains("SIL Open Font License", System.Text.Encoding.UTF8.GetString(Typeface.File(Typeface.LicenceFile)!), StringComparison.Ordinal);

    [Fact]
    public void A_file_that_is_no_font_is_refused() => Assert.Throws<InvalidDataException>(() => Woff.ToSfnt(new byte[100]));

    [Fact]
    public void Words_too_long_are_cut_with_an_ellipsis_and_letters_are_never_halved()
    {
        var fit = Lettering.Fit("intake 👩‍🔧👩‍🔧👩‍🔧👩‍🔧 of a long name", 12, 60);
        Assert.True(Lettering.Width(fit, 12) <= 60);
        Assert.EndsWith("…", fit, StringComparison.Ordinal);
        Assert.Equal(fit, Lettering.Clean(fit));
        Assert.All(Lettering.Wrap(new string('x', 400) + " " + Hostile, 10, 80), l => Assert.True(Lettering.Width(l, 10) <= 80));
    }

    private static double Contrast(string a, string b)
    {
        var (x, y) = (Luminance(SKColor.Parse(a)), Luminance(SKColor.Parse(b)));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(SKColor c)
    {
        static double Linear(byte v) => v / 255.0 <= 0.04045 ? v / 255.0 / 12.92 : Math.Pow((v / 255.0 + 0.055) / 1.055, 2.4);
        return 0.2126 * Linear(c.Red) + 0.7152 * Linear(c.Green) + 0.0722 * Linear(c.Blue);
    }
}
