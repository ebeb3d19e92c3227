using System.Xml.Linq;
using CsCheck;
using Portwright.Geometry;
using Portwright.Geometry.Views;
using Portwright.Shop.Units;
using SkiaSharp;

namespace Portwright.Figures.Tests.Ports;

public sealed class SectionTests
{
    private static readonly double[] Widths = [300, 344, 390, 480, 560, 760];

    private static readonly SectionShows[] Kinds = Enum.GetValues<SectionShows>();

    [Fact]
    public void A_section_is_readable_from_phone_to_desk_in_every_view()
    {
        var bare = InventedPorts.Bare(true);
        foreach (var (survey, station) in new[] { (InventedPorts.Faulty, InventedPorts.Faulty.At("D")), (InventedPorts.Faulty, InventedPorts.Faulty.At("C")), (InventedPorts.Faulty, InventedPorts.Faulty.At("F")), (bare, bare.At("B")) })
        {
            foreach (var view in View.All)
            {
                foreach (var what in Kinds)
                {
                    foreach (var width in Widths) DrawingChecks.IsReadable(SectionDrawing.Of(survey, station, view, what, UnitSystem.UsCustomary, width), 11);
                }
            }
        }
    }

    [Fact]
    public void A_place_of_the_drawing_is_the_metal_it_was_drawn_from_in_every_view() =>
        Gen.Select(Gen.Double[0, 12], Gen.Double[0, 0.02], Gen.Int[0, 7], Gen.OneOf(Gen.Const(300.0), Gen.Const(390.0), Gen.Const(760.0))).Sample((bearing, depth, view, width) =>
        {
            var survey = InventedPorts.Faulty;
            var frame = SectionDrawing.FrameOf(survey, survey.At("D"), View.All[view], width);
            var metal = frame.Outline.PointAt(bearing, depth);
            Assert.True(frame.Metal(frame.At(metal)).To(metal) < 1e-9);
        });

    [Fact]
    public void The_same_reading_lies_on_the_same_metal_in_four_views()
    {
        var survey = InventedPorts.Faulty;
        var station = survey.At("D");
        var places = station.Ring!.Readings.Select(r => r.Place).ToList();
        foreach (var view in InventedPorts.FourViews)
        {
            var frame = SectionDrawing.FrameOf(survey, station, view);
            var dots = SectionDrawing.Of(survey, station, view, SectionShows.Speeds, UnitSystem.UsCustomary).Seen().OfType<Circle>()
                .Where(c => c is { Fill: Role.Ground, Outline.Role: Role.Ink }).Select(c => frame.Metal(c.Centre)).ToList();
            Assert.Equal(places.Count, dots.Count);
            Assert.All(places, p => Assert.Contains(dots, d => d.To(p) < 1e-9));
        }
    }

    [Fact]
    public void The_fastest_reading_stands_on_the_side_of_the_screen_the_view_puts_its_metal()
    {
        var survey = InventedPorts.Faulty;
        var station = survey.At("D");
        var fastest = station.Ring!.Readings.Where(r => r.Reading.Fact.Bearing is 1.5 or 4.5 or 7.5 or 10.5).MaxBy(r => r.Speed)!;
        var words = Print.Bare(fastest.Speed, Dimension.Speed, UnitSystem.UsCustomary, 0);
        foreach (var view in View.All)
        {
            var drawing = SectionDrawing.Of(survey, station, view, SectionShows.Speeds, UnitSystem.UsCustomary);
            var label = drawing.Texts().First(t => t.Words == words).Bounds().Centre;
            var hours = view.ToScreen(fastest.Reading.Fact.Bearing!.Value);
            Assert.Equal(hours is > 0.25 and < 5.75, label.X > drawing.Width / 2);
            // Roof and floor are named at the edge they lie at.
            var (roof, floor) = (drawing.Texts().Single(t => t.Words == "roof").At.Y, drawing.Texts().Single(t => t.Words == "floor").At.Y);
            Assert.Equal(view.Lying == Lying.Upright, roof < floor);
            Assert.Equal(view.ToScreen(new PlanePoint(1, 0)).X > 0, drawing.Texts().Single(t => t.Words == "centre side").Bounds().Centre.X > drawing.Width / 2);
        }
    }

    [Fact]
    public void Every_reading_has_its_number_and_every_ball_its_words()
    {
        foreach (var width in new[] { 344.0, 560 })
        {
            foreach (var letter in new[] { "C", "D" })
            {
                var station = InventedPorts.Faulty.At(letter);
                var speeds = SectionDrawing.Of(InventedPorts.Faulty, station, new View(), SectionShows.Speeds, UnitSystem.UsCustomary, width).Texts().Select(t => t.Words).ToList();
                // The slowest of all may be the laziest place's own label.
                Assert.All(station.Ring!.Readings, r => Assert.Contains(speeds, s => s.Contains(Print.Bare(r.Speed, Dimension.Speed, UnitSystem.UsCustomary, 0), StringComparison.Ordinal)));
                var balls = SectionDrawing.Of(InventedPorts.Faulty, station, new View(), SectionShows.Balls, UnitSystem.UsCustomary, width).Texts().Count(t => t.Words.Contains(" of ", StringComparison.Ordinal) && t.Weight == Weight.SemiBold || t.Words.StartsWith("rose ", StringComparison.Ordinal));
                Assert.Equal(4, balls);
                var walls = SectionDrawing.Of(InventedPorts.Faulty, station, new View(), SectionShows.Walls, UnitSystem.UsCustomary, width).Texts().Count(t => t.Words.StartsWith('.'));
                Assert.Equal(4, walls);
            }
        }
    }

    [Fact]
    public void A_place_to_touch_is_as_large_as_a_finger_apart_from_the_next_and_inside_the_drawing()
    {
        foreach (var width in Widths)
        {
            foreach (var (survey, letter) in new[] { (InventedPorts.Faulty, "C"), (InventedPorts.Faulty, "D"), (InventedPorts.Faulty, "F"), (InventedPorts.Bare(true), "B") })
            {
                var drawing = SectionDrawing.Of(survey, survey.At(letter), new View(), SectionShows.Balls, UnitSystem.UsCustomary, width);
                var touches = drawing.Touchables().ToList();
                Assert.Equal(13, touches.Count);
                Assert.All(touches, t =>
                {
                    Assert.True(t.Hit.Width >= 44 && t.Hit.Height >= 44);
                    Assert.Equal(t.Hit.Width / 2, t.Corner);
                    Assert.True(new Box(0, 0, drawing.Width, drawing.Height).Holds(t.Hit), $"{t.Title} {t.Hit}");
                });
                Assert.All(touches, a => Assert.All(touches, b => Assert.True(a == b || Far(a.Hit.Centre, b.Hit.Centre) >= 43.99, $"{letter} {width}: {a.Title} {b.Title}")));
            }
        }
    }

    [Fact]
    public void A_place_to_touch_says_its_metal_and_its_side_and_carries_the_recorded_bearing()
    {
        var survey = InventedPorts.Healthy;
        Touchable At(View view, string key) => SectionDrawing.Of(survey, survey.At("D"), view, SectionShows.Flags, UnitSystem.UsCustomary, href: b => $"/flag/{b}").Touchables().Single(t => t.Key == key);
        Assert.StartsWith("3 o'clock, centre side, right", At(new View(), "bearing-3").Title, StringComparison.Ordinal);
        Assert.StartsWith("3 o'clock, centre side, left", At(new View(SeenFrom.Chamber), "bearing-3").Title, StringComparison.Ordinal);
        Assert.StartsWith("12 o'clock, roof, bottom: flag still", At(new View(Lying: Lying.Inverted), "bearing-12").Title, StringComparison.Ordinal);
        Assert.StartsWith("middle", At(new View(), "bearing-middle").Title, StringComparison.Ordinal);
        Assert.Equal("/flag/7", At(new View(), "bearing-7").Href);
        Assert.Equal("/flag/", At(new View(), "bearing-middle").Href);
        foreach (var view in View.All)
        {
            var frame = SectionDrawing.FrameOf(survey, survey.At("D"), view);
            foreach (var hour in Enumerable.Range(1, 12))
            {
                // Where the finger lands is on the recorded bearing.
                var metal = frame.Metal(At(view, $"bearing-{hour}").Hit.Centre);
                Assert.True(Shop.Walls.WallState.Apart(frame.Outline.PlaceOf(metal).BearingHours, hour) < 1e-6);
            }
        }
    }

    [Fact]
    public void Colours_of_the_map_are_never_outside_the_wall()
    {
        var survey = InventedPorts.Faulty;
        var station = survey.At("D");
        foreach (var view in InventedPorts.FourViews)
        {
            var whole = SectionDrawing.Of(survey, station, view, SectionShows.Speeds, UnitSystem.UsCustomary);
            var map = whole.Seen().OfType<Shades>().First();
            using var picture = SKBitmap.Decode(Png.Render(whole with { Marks = [map] }, Theme.Paper, 1));
            var ground = SKColor.Parse(Theme.Paper.Ground);
            var frame = SectionDrawing.FrameOf(survey, station, view);
            var (inside, painted) = (0, 0);
            for (var x = 0; x < picture.Width; x++)
            {
                for (var y = 0; y < picture.Height; y++)
                {
                    var metal = frame.Metal(new Place(x + 0.5, y + 0.5));
                    var pixel = frame.Metal(new Place(x + 1.5, y + 0.5)).To(metal);
                    var coloured = picture.GetPixel(x, y) != ground;
                    if (!frame.Outline.Contains(metal))
                    {
                        Assert.True(!coloured || frame.Outline.DistanceToWall(metal) < pixel, $"{x} {y}");
                        continue;
                    }

                    inside++;
                    if (coloured) painted++;
                }
            }

            Assert.Equal(inside, painted);
        }
    }

    [Fact]
    public void Colours_at_the_readings_are_those_of_their_speeds()
    {
        var survey = InventedPorts.Faulty;
        var station = survey.At("D");
        var drawing = SectionDrawing.Of(survey, station, new View(), SectionShows.Speeds, UnitSystem.UsCustomary);
        using var picture = SKBitmap.Decode(Png.Render(drawing with { Marks = [drawing.Seen().OfType<Shades>().First()] }, Theme.Lamp, 1));
        var frame = SectionDrawing.FrameOf(survey, station, new View());
        var byBrightness = station.Ring!.Readings.Select(r => (r.Speed, Light: Lightness(picture.GetPixel((int)frame.At(r.Place).X, (int)frame.At(r.Place).Y)))).OrderBy(r => r.Speed).ToList();
        // Two speeds of one step may share a colour; a faster one is never darker by more than that step.
        Assert.All(byBrightness.Zip(byBrightness.Skip(1)), p => Assert.True(p.Second.Light >= p.First.Light - 3));
        Assert.True(byBrightness[^1].Light - byBrightness[0].Light > 30);
    }

    [Fact]
    public void The_map_of_colours_grows_lighter_with_every_step()
    {
        var light = Enumerable.Range(0, 257).Select(i => Lightness(SKColor.Parse(SpeedColours.Of(i / 256.0)))).ToList();
        Assert.All(light.Zip(light.Skip(1)), p => Assert.True(p.Second > p.First - 0.35));
        Assert.All(light.Zip(light.Skip(16)), p => Assert.True(p.Second > p.First));
        Assert.Equal("#00224e", SpeedColours.Of(0));
        Assert.Equal("#fee838", SpeedColours.Of(1));
    }

    [Fact]
    public void An_empty_section_shows_its_hours_and_says_what_goes_there()
    {
        var bare = InventedPorts.Bare(true);
        foreach (var what in Kinds)
        {
            var drawing = SectionDrawing.Of(bare, bare.At("B"), new View(), what, UnitSystem.UsCustomary, 390);
            var words = string.Join(' ', drawing.Texts().Select(t => t.Words));
            Assert.Matches("No (ring|ball|flag|wall point) yet", words);
            Assert.Contains("Usual shape, not measured", words, StringComparison.Ordinal);
            Assert.All(Enumerable.Range(1, 12), h => Assert.Contains(drawing.Texts(), t => t.Words == $"{h}"));
            Assert.Contains(drawing.Seen().OfType<Area>(), a => a.Outline is { Type: LineType.Dashed });
            Assert.Equal(13, drawing.Touchables().Count());
        }
    }

    [Fact]
    public void Whoever_does_not_see_the_section_is_told_what_is_in_it()
    {
        var survey = InventedPorts.Faulty;
        var balls = SectionDrawing.Of(survey, survey.At("D"), new View(), SectionShows.Balls, UnitSystem.UsCustomary);
        Assert.Equal("Section D, balls", balls.Title);
        Assert.Matches("6 o'clock, floor: ball rose by [0-9.]+ cfm where moving air would lose [0-9.]+ cfm: torn off", balls.Description);
        var walls = SectionDrawing.Of(survey, survey.At("C"), new View(), SectionShows.Walls, UnitSystem.UsCustomary);
        Assert.Contains("12 o'clock, roof: .094 in of metal, thin, water behind it", walls.Description, StringComparison.Ordinal);
        var page = XDocument.Parse(Svg.Page(SectionDrawing.Of(survey, survey.At("D"), new View(), SectionShows.Speeds, UnitSystem.UsCustomary)));
        Assert.Equal(13, page.Descendants().Count(e => (string?)e.Attribute("data-key") is { } k && k.StartsWith("bearing-", StringComparison.Ordinal) && !string.IsNullOrEmpty((string?)e.Attribute("aria-label"))));
        Assert.DoesNotContain(page.Descendants().Attributes(), a => a.Name.LocalName == "style");
        // Every cut-off line is named and found.
        var ids = page.Descendants().Where(e => e.Name.LocalName == "clipPath").Select(e => $"url(#{(string?)e.Attribute("id")})").ToHashSet();
        Assert.All(page.Descendants().Attributes("clip-path"), a => Assert.Contains(a.Value, ids));
    }

    private static double Far(Place a, Place b) => Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2));

    /// <summary>CIE 1976 lightness of an sRGB colour, 0 to 100.</summary>
    private static double Lightness(SKColor c)
    {
        static double Linear(byte v) => v / 255.0 <= 0.04045 ? v / 255.0 / 12.92 : Math.Pow((v / 255.0 + 0.055) / 1.055, 2.4);
        var y = 0.2126 * Linear(c.Red) + 0.7152 * Linear(c.Green) + 0.0722 * Linear(c.Blue);
        return y > 216.0 / 24389 ? 116 * Math.Cbrt(y) - 16 : y * 24389 / 27;
    }
}
