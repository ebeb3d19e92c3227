using CsCheck;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Figures.Tests;

public sealed class OtherFigureTests
{
    [Fact]
    public void Coefficients_are_readable_at_every_size_and_named_at_their_ends()
    {
        foreach (var lifts in new[] { 1, 2, 5, 12, 20 })
        {
            var sheet = new InventedShop(lifts, lifts: lifts, mornings: false).Sheet();
            var takes = sheet.ThroatTakesOver / sheet.Port.Fact.Valve!.HeadDiameter;
            foreach (var size in new[] { FigureSize.Wide, FigureSize.Narrow, FigureSize.Paper with { Height = 170 } })
            {
                var drawing = DischargeCoefficients.Draw(sheet.Windows, takes, size);
                DrawingChecks.IsReadable(drawing);
                Assert.Superset(new HashSet<string> { "on window", "on curtain", "on throat" }, drawing.Texts().Select(t => t.Words).ToHashSet());
            }
        }
    }

    [Fact]
    public void A_control_chart_is_readable_whatever_the_mornings() =>
        Gen.Select(Gen.Double[-0.02, 0.02].Array[1, 80], Gen.Bool).Sample((values, wild) =>
        {
            var chart = PlateChart.Of("P-38", "large", [.. values.Select((v, i) => (new DateOnly(2025, 1, 1).AddDays(i), Estimate.Exact(1 + v * (wild && i == values.Length - 1 ? 9 : 1))))]);
            DrawingChecks.IsReadable(PlateControlChart.Draw(chart, FigureSize.Wide with { Height = 360 }));
            DrawingChecks.IsReadable(PlateControlChart.Draw(chart, FigureSize.Narrow with { Height = 280 }), 11);
        }, iter: 200);

    [Fact]
    public void A_morning_outside_the_limits_is_marked_by_shape_and_by_word()
    {
        var values = Enumerable.Range(0, 30).Select(i => i == 29 ? 1.03 : 1 + 0.001 * (i % 3 - 1)).ToArray();
        var chart = PlateChart.Of("P-38", "large", [.. values.Select((v, i) => (new DateOnly(2025, 1, 1).AddDays(i), Estimate.Exact(v)))]);
        var drawing = PlateControlChart.Draw(chart, FigureSize.Wide);
        Assert.Contains(drawing.Texts(), t => t.Words == "outside the limits");
        Assert.Single(drawing.Seen().OfType<Area>(), a => a.Fill == Role.Thin);
        Assert.Contains("stop", drawing.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_head_is_readable_and_touchable_from_phone_to_desk()
    {
        var head = new InventedShop(words: " of a very long name").Board().Heads[0];
        foreach (var width in new[] { 300.0, 344, 420, 560, 760, 1010, 1400 })
        {
            var drawing = HeadDrawing.Draw(head, p => $"/port/{p.Port.Id}", width);
            Assert.True(drawing.Width <= width + 0.01);
            DrawingChecks.IsReadable(drawing, 11);
            Assert.Equal(8, drawing.Touchables().Count());
            Assert.All(drawing.Touchables(), t => Assert.True(t.Hit.Width >= 44 && t.Hit.Height >= 44 && t.Href is not null));
            Assert.All(drawing.Touchables(), a => Assert.All(drawing.Touchables(), b => Assert.True(a == b || !a.Hit.Overlaps(b.Hit))));
        }
    }

    [Fact]
    public void A_port_says_its_name_its_flow_its_doubt_and_its_state()
    {
        var drawing = HeadDrawing.Draw(new InventedShop().Board().Heads[0], _ => "/", 1010);
        Assert.Contains(drawing.Touchables(), t => System.Text.RegularExpressions.Regex.IsMatch(t.Title, @": intake 2, head B: [\d.]+ ± [\d.]+ cfm at \.514, cut 3, \+"));
        Assert.Contains(drawing.Touchables(), t => t.Title == "ex 4, not started: exhaust 4, head B: not started");
        Assert.Contains(drawing.Touchables(), t => t.Title.Contains("on the bench, 5 lifts left", StringComparison.Ordinal));
    }

    [Fact]
    public void A_port_is_called_first_by_the_letters_drawn_in_it()
    {
        var drawing = HeadDrawing.Draw(new InventedShop().Board().Heads[0], _ => "/", 1010);
        Assert.All(drawing.Touchables(), t => Assert.StartsWith(
            string.Join(", ", t.Marks.OfType<Text>().Select(w => w.Words).Where(w => w.Any(char.IsAsciiLetterOrDigit))) + ": ", t.Title, StringComparison.Ordinal));
        Assert.Contains(drawing.Touchables(), t => System.Text.RegularExpressions.Regex.IsMatch(t.Title, @"^in 2, \d+, cut 3, \+[^:]*: intake 2, head B: "));
    }

    [Fact]
    public void Letters_read_without_the_picture_do_not_run_together()
    {
        var head = System.Xml.Linq.XDocument.Parse(Svg.Page(HeadDrawing.Draw(new InventedShop().Board().Heads[0], _ => "/", 1010)), System.Xml.Linq.LoadOptions.PreserveWhitespace);
        Assert.All(head.Descendants().Where(e => e.Name.LocalName == "a"), a => Assert.Matches("^(in|ex) [1-4] ([0-9]+|–) ", a.Value));
    }

    [Fact]
    public void An_intake_is_drawn_taller_than_an_exhaust()
    {
        var shapes = HeadDrawing.Draw(new InventedShop().Board().Heads[0], _ => "/", 1010).Seen().OfType<Area>().Where(a => a.Outline is { Role: Role.Ink }).ToList();
        var heights = shapes.Select(s => s.Places.Max(p => p.Y) - s.Places.Min(p => p.Y)).ToList();
        Assert.Equal(8, heights.Count);
        Assert.Equal(4, heights.Count(h => h > heights.Average()));
    }

    [Fact]
    public void The_day_shows_its_latest_readings_whatever_the_room() =>
        Gen.Select(Gen.Int[0, 14].Array[0, 12], Gen.Double[300, 1400]).Sample((groups, width) =>
        {
            var day = groups.Select((n, i) => new DayGroup($"intake {i + 1}, cut {i % 4}", [.. Enumerable.Range(1, n).Select(k => new DayDot($".{k:00}0", null, $"{i}-{k}"))], i == groups.Length - 1)).ToList();
            var drawing = DayStrip.Draw(day, width);
            DrawingChecks.IsReadable(drawing, 11);
            if (day.LastOrDefault(g => g.Dots.Count > 0) is { } last) Assert.Contains(drawing.Touchables(), t => t.Key == last.Dots[^1].Key);
            Assert.All(drawing.Touchables(), t => Assert.True(t.Hit.Right <= width));
        }, iter: 300);

    [Fact]
    public void The_orientation_mark_fills_the_port_spoken_of()
    {
        var mark = OrientationMark.Draw([PortKind.Intake, PortKind.Exhaust, PortKind.Intake], 2);
        var filled = Assert.Single(mark.Seen().OfType<Area>(), a => a.Fill == Role.Blue);
        Assert.True(filled.Places.Min(p => p.X) > mark.Seen().OfType<Area>().Where(a => a.Fill is null).Max(a => a.Places.Max(p => p.X)));
    }
}
