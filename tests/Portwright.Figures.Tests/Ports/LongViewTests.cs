using System.Xml.Linq;
using Portwright.Geometry.Views;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests.Ports;

public sealed class LongViewTests
{
    private static readonly double[] Widths = [300, 344, 390, 560, 760, 1000];

    [Fact]
    public void A_long_view_is_readable_from_phone_to_desk_in_every_view()
    {
        foreach (var survey in new[] { InventedPorts.Faulty, InventedPorts.Healthy, InventedPorts.Bare(true), InventedPorts.Bare(false) })
        {
            foreach (var view in View.All)
            {
                foreach (var width in Widths)
                {
                    var drawing = LongViewDrawing.Of(survey, survey.Stations.FirstOrDefault()?.Station.Id, view, UnitSystem.UsCustomary, width);
                    Assert.Equal(width, drawing.Width);
                    DrawingChecks.IsReadable(drawing, 11);
                }
            }
        }
    }

    [Fact]
    public void Every_station_answers_a_finger_and_none_takes_anothers_touch()
    {
        foreach (var width in Widths)
        {
            var survey = InventedPorts.Faulty;
            var touch = LongViewDrawing.Of(survey, null, new View(), UnitSystem.Si, width, s => $"/station/{s.Station.Id}").Touchables().ToList();
            Assert.Equal(survey.Stations.Count, touch.Count);
            Assert.All(touch, t => Assert.True(t.Hit.Width >= 44 && t.Hit.Height >= 44 && t.Hit.X >= 0 && t.Hit.Right <= width && t.Hit.Y >= 0));
            Assert.All(touch, a => Assert.All(touch, b => Assert.True(a == b || !a.Hit.Overlaps(b.Hit))));
            Assert.All(survey.Stations, s => Assert.Contains(touch, t => t.Href == $"/station/{s.Station.Id}" && t.Key == $"station-{s.Station.Id:N}" && t.Title.StartsWith($"{s.Letter}: Section {s.Letter}", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void The_chosen_station_is_filled_and_says_so()
    {
        var survey = InventedPorts.Healthy;
        var drawing = LongViewDrawing.Of(survey, survey.At("D").Station.Id, new View(), UnitSystem.UsCustomary);
        var chosen = Assert.Single(drawing.Touchables(), t => t.Marks.OfType<Circle>().Any(c => c.Fill == Role.Blue));
        Assert.StartsWith("D: Section D, short side, 2.677 in from the flange, area ", chosen.Title, StringComparison.Ordinal);
        Assert.EndsWith(", chosen", chosen.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_measured_is_dashed_and_marked_and_what_is_measured_is_neither()
    {
        static bool Dashed(Drawing d) => d.Seen().OfType<Polyline>().Any(p => p.Stroke is { Role: Role.Ink, Type: LineType.Dashed, Width: > 1.5 });
        static bool Said(Drawing d) => string.Join(' ', d.Texts().Select(t => t.Words)).Contains("usual shape, not", StringComparison.Ordinal);
        var bare = LongViewDrawing.Of(InventedPorts.Bare(false), null, new View(), UnitSystem.UsCustomary);
        Assert.True(Dashed(bare) && Said(bare));
        Assert.DoesNotContain(bare.Seen().OfType<Polyline>(), p => p.Stroke is { Role: Role.Ink, Type: LineType.Continuous, Width: > 2 } && p.Places.Length > 2);
        Assert.Contains("not measured", bare.Description, StringComparison.Ordinal);
        Assert.Contains(bare.Texts(), t => t.Words.Contains("No station yet", StringComparison.Ordinal));
        // Measured from the flange on: only the last stretch before the seat is not.
        var healthy = LongViewDrawing.Of(InventedPorts.Healthy, null, new View(), UnitSystem.UsCustomary);
        Assert.Contains(healthy.Seen().OfType<Polyline>(), p => p.Stroke is { Role: Role.Ink, Type: LineType.Continuous } && p.Places.Length > 60);
    }

    [Fact]
    public void Turning_the_head_over_puts_the_roof_down_and_the_other_end_puts_the_flange_right()
    {
        var survey = InventedPorts.Healthy;
        Place Letter(View view, string letter) => LongViewDrawing.Of(survey, null, view, UnitSystem.UsCustomary).Touchables().Single(t => t.Title.StartsWith(letter + ":", StringComparison.Ordinal)).Hit.Centre;
        Place Flange(View view) => LongViewDrawing.Of(survey, null, view, UnitSystem.UsCustomary).Texts().Single(t => t.Words == "flange").At;
        var (flange, chamber) = (new View(), new View(SeenFrom.Chamber));
        Assert.True(Letter(flange, "A").X < Letter(flange, "F").X && Flange(flange).X < 200);
        Assert.True(Letter(chamber, "A").X > Letter(chamber, "F").X && Flange(chamber).X > 500);
        // In the bend the letters fall towards the seat; turned over they rise.
        Assert.True(Letter(flange, "F").Y > Letter(flange, "B").Y);
        Assert.True(Letter(flange.TurnedOver(), "F").Y < Letter(flange.TurnedOver(), "B").Y);
    }

    [Fact]
    public void Torn_off_air_and_thin_metal_are_told_by_shape_and_word()
    {
        var drawing = LongViewDrawing.Of(InventedPorts.Faulty, null, new View(), UnitSystem.UsCustomary);
        var words = string.Join(' ', drawing.Texts().Select(t => t.Words));
        Assert.Contains("torn off", words, StringComparison.Ordinal);
        Assert.Contains("thin, .094 in of metal", words, StringComparison.Ordinal);
        Assert.Contains("smallest section", words, StringComparison.Ordinal);
        Assert.Contains(drawing.Seen().OfType<Circle>(), c => c.Fill == Role.Brass);
        Assert.Contains("The air is torn off the short side at D.", drawing.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_view_in_a_page_is_a_group_of_links_with_names()
    {
        var survey = InventedPorts.Faulty;
        var svg = XDocument.Parse(Svg.Page(LongViewDrawing.Of(survey, null, new View(), UnitSystem.UsCustomary, 760, _ => "/x")));
        Assert.Equal("group", (string?)svg.Root!.Attribute("role"));
        Assert.Contains("6 stations, 6 of them measured", (string?)svg.Root.Attribute("aria-label"), StringComparison.Ordinal);
        Assert.Equal(6, svg.Descendants().Count(e => e.Name.LocalName == "a"));
        Assert.DoesNotContain(svg.Descendants().Attributes(), a => a.Name.LocalName is "style" or "fill");
    }
}
