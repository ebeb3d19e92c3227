using CsCheck;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests;

public sealed class FlowOverLiftTests
{
    private static readonly FigureSize[] Sizes = [FigureSize.Wide, FigureSize.Narrow, FigureSize.Paper];

    private static readonly string[] Names = ["cut {0}", "cut {0}, bowl", "cut {0} after the long weekend of blending"];

    private static readonly Gen<(FlowPlot Plot, int Cuts)> AnySheet =
        from cuts in Gen.Int[0, 6]
        from read in Gen.Int[0, 16]
        from lifts in Gen.Int[1, 16]
        from step in Gen.Double[0.02, 0.08]
        from tops in Gen.Double[3, 900].Array[cuts + 1]
        from close in Gen.Bool
        from doubt in Gen.Double[0.0005, 0.08]
        from cam in Gen.Double[0.2, 0.9]
        from named in Gen.Int[0, 2]
        select Make(cuts, read, lifts, step, tops, close, doubt, cam, Names[named]);

    [Fact]
    public void No_label_is_cut_off_or_lies_over_another_whatever_the_sheet() => AnySheet.Sample(s =>
    {
        foreach (var size in Sizes)
        {
            foreach (var units in Enum.GetValues<UnitSystem>())
                DrawingChecks.IsReadable(FlowOverLift.Draw(s.Plot, size, units), size == FigureSize.Narrow ? 11 : 7);
        }
    }, iter: 400);

    [Fact]
    public void Every_curve_drawn_is_named_at_its_end() => AnySheet.Sample(s =>
    {
        foreach (var size in Sizes)
        {
            var words = FlowOverLift.Draw(s.Plot, size).Texts().Select(t => t.Words).ToList();
            foreach (var line in s.Plot.Ghosts()) Assert.Contains(words, w => w.TrimEnd('…').Length > 2 && line.Name.StartsWith(w.TrimEnd('…').TrimEnd(), StringComparison.Ordinal));
        }
    }, iter: 100);

    [Fact]
    public void Nothing_is_drawn_past_the_last_reading()
    {
        var plot = Invented.Growing();
        var drawing = FlowOverLift.Draw(plot, FigureSize.Wide);
        var line = drawing.Seen().OfType<Polyline>().Single(p => p.Stroke is { Role: Role.Blue, Type: LineType.Continuous });
        var dots = drawing.Seen().OfType<Circle>().Where(c => c.Fill == Role.Blue).ToList();
        Assert.Equal(6, dots.Count);
        Assert.Equal(dots.Max(d => d.Centre.X), line.Places.Max(p => p.X), 1e-6);
        Assert.Equal(dots.Min(d => d.Centre.X), line.Places.Min(p => p.X), 1e-6);
    }

    [Fact]
    public void A_real_gain_is_a_filled_triangle_up_and_a_real_loss_one_down()
    {
        var better = FlowOverLift.Draw(Invented.Plot(Invented.Cut("cut 3", 270, Invented.Lifts), [Invented.Cut("cut 2", 240, Invented.Lifts)]), FigureSize.Wide);
        var worse = FlowOverLift.Draw(Invented.Plot(Invented.Cut("cut 3", 210, Invented.Lifts), [Invented.Cut("cut 2", 240, Invented.Lifts)]), FigureSize.Wide);
        Assert.All(Triangles(better), t => Assert.True(PointsUp(t)));
        Assert.All(Triangles(worse), t => Assert.False(PointsUp(t)));
        // One a lift and one before the words.
        Assert.Equal(Invented.Lifts.Length + 1, Triangles(better).Count);
        Assert.Contains(better.Texts(), t => t.Words == "real gain");
        Assert.Contains(worse.Texts(), t => t.Words == "real loss");
    }

    [Fact]
    public void A_difference_inside_the_noise_is_a_hollow_circle_inside_the_grey_band()
    {
        var drawing = FlowOverLift.Draw(Invented.Plot(Invented.Cut("cut 3", 240.2, Invented.Lifts, 0.01), [Invented.Cut("cut 2", 240, Invented.Lifts, 0.01)]), FigureSize.Wide);
        Assert.Empty(Triangles(drawing));
        var band = Assert.Single(drawing.Seen().OfType<Area>(), a => a.Fill == Role.Noise);
        var circles = drawing.Seen().OfType<Circle>().Where(c => c is { Fill: Role.Ground, Outline.Role: Role.Blue, Outline.Type: LineType.Continuous }).ToList();
        Assert.Equal(Invented.Lifts.Length + 1, circles.Count);
        Assert.All(circles.Take(Invented.Lifts.Length), c => Assert.InRange(c.Centre.Y, band.Places.Min(p => p.Y), band.Places.Max(p => p.Y)));
        Assert.Contains(drawing.Texts(), t => t.Words == "inside the noise");
    }

    [Fact]
    public void Too_few_readings_have_their_own_shape_and_words()
    {
        var drawing = FlowOverLift.Draw(Invented.Plot(Invented.Cut("cut 3", 262, [.2], degrees: 0.5), [Invented.Cut("cut 2", 240, [.2], degrees: 0.5)]), FigureSize.Wide);
        Assert.Contains(drawing.Seen().OfType<Circle>(), c => c.Outline is { Type: LineType.Dotted });
        Assert.Contains(drawing.Texts(), t => t.Words == "not enough readings");
    }

    [Fact]
    public void Earlier_cuts_are_told_apart_by_line_type()
    {
        var types = FlowOverLift.Draw(Invented.WholeSweep(), FigureSize.Wide).Seen().OfType<Polyline>().Where(p => p.Stroke.Role == Role.Quiet).Select(p => p.Stroke.Type).ToList();
        Assert.Equal(3, types.Count);
        Assert.Equal(3, types.Distinct().Count());
    }

    [Fact]
    public void What_closing_showed_is_dashed_and_what_only_opened_has_no_such_line()
    {
        static int Dashed(FlowPlot plot) => FlowOverLift.Draw(plot, FigureSize.Wide).Seen().OfType<Polyline>().Count(p => p.Stroke is { Role: Role.Ink, Type: LineType.Dashed });
        var plot = Invented.WholeSweep();
        Assert.Equal((0, 1), (Dashed(plot), Dashed(plot with { Closing = [.. plot.Now!.Dots.Select(d => (d.Lift, 0.98 * d.Flow))] })));
    }

    [Fact]
    public void Lifts_already_read_have_heavy_ticks_and_those_to_come_light_ones()
    {
        var drawing = FlowOverLift.Draw(Invented.Growing(), FigureSize.Wide);
        Assert.Equal(6, drawing.Seen().OfType<Segments>().Count(s => s.Stroke is { Role: Role.Ink, Width: > 2 }));
    }

    [Fact]
    public void An_empty_figure_shows_what_goes_there_and_says_so()
    {
        var drawing = FlowOverLift.Draw(Invented.Plot(null, [], name: "cut 0"), FigureSize.Narrow);
        Assert.Contains("No reading of cut 0 yet", string.Join(' ', drawing.Texts().Select(t => t.Words)), StringComparison.Ordinal);
        Assert.DoesNotContain(drawing.Seen(), m => m is Circle);
        // No number that could be taken for a flow.
        Assert.DoesNotContain(drawing.Texts(), t => t.Words is "50" or "100");
    }

    [Fact]
    public void A_touched_lift_says_its_flow_with_its_doubt_and_the_verdict()
    {
        var touch = FlowOverLift.Draw(Invented.Growing(), FigureSize.Wide).Touchables().Single(t => t.Title.StartsWith(".300:", StringComparison.Ordinal));
        Assert.Matches(@"^\.300: 19\d\.\d ± \d\.\d cfm; \+\d\.\d, ", touch.Title);
        Assert.True(touch.Hit.Width >= 24, "A finger needs 24 pixels.");
        var ghost = FlowOverLift.Draw(Invented.Growing(), FigureSize.Wide).Touchables().Single(t => t.Title.StartsWith(".600:", StringComparison.Ordinal));
        Assert.StartsWith(".600: cut 2 ", ghost.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_engine_asks_for_stands_behind_the_curves_and_is_named()
    {
        var drawing = FlowOverLift.Draw(Invented.WholeSweep() with { Wanted = Invented.Wanted(290, 0.512) }, FigureSize.Wide);
        var marks = drawing.Seen().ToList();
        var band = marks.FindIndex(m => m is Area { Fill: Role.Noise } area && area.Places.Length > 20);
        Assert.True(band >= 0 && band < marks.FindIndex(m => m is Polyline { Stroke.Role: Role.Blue }));
        Assert.Contains(drawing.Texts(), t => t.Words == "wanted at 6,400 rpm");
        var touch = drawing.Touchables().Single(t => t.Title.StartsWith(".300:", StringComparison.Ordinal));
        Assert.Contains(", wanted 221 to 265", touch.Title, StringComparison.Ordinal);
    }

    /// <summary>The rule of exhaust and intake speaks of one lift: a bar stands there, no text on it, and nothing is wanted beside it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_asked_at_one_lift_alone_is_a_bar_there(bool narrow)
    {
        var at = Invented.Wanted(290, 0.512).Line[^1];
        var wanted = new Shop.Targets.WantedFlow(Physics.Targets.FlowBalance.Rule, "70 to 80 % of intake", [at with { Least = 0.9 * at.Least, Most = at.Least }]);
        var drawing = FlowOverLift.Draw(Invented.WholeSweep() with { Wanted = wanted }, narrow ? FigureSize.Narrow : FigureSize.Wide);
        var bar = Assert.Single(drawing.Seen().OfType<RoundedBox>(), b => b.Fill == Role.Noise).Box;
        Assert.True(bar.Width < 20 && bar.Height > 8);
        Assert.Contains(drawing.Texts(), t => t.Words == wanted.Words);
        Assert.DoesNotContain(drawing.Touchables(), t => t.Title.Contains("wanted", StringComparison.Ordinal));
        DrawingChecks.IsReadable(drawing, narrow ? 11 : 7);
    }

    [Fact]
    public void A_plan_that_asks_for_far_too_much_does_not_squash_the_measured_curves()
    {
        var drawing = FlowOverLift.Draw(Invented.WholeSweep() with { Wanted = Invented.Wanted(9000, 0.512) }, FigureSize.Wide);
        var line = drawing.Seen().OfType<Polyline>().Single(p => p.Stroke is { Role: Role.Blue, Type: LineType.Continuous });
        Assert.True(line.Places[0].Y - line.Places[^1].Y > 40);
        DrawingChecks.IsReadable(drawing, 7);
    }

    private static List<Area> Triangles(Drawing drawing) => [.. drawing.Seen().OfType<Area>().Where(a => a.Fill == Role.Blue && a.Places.Length == 3)];

    private static bool PointsUp(Area triangle) => triangle.Places[0].Y < triangle.Places[1].Y;

    private static (FlowPlot, int) Make(int cuts, int read, int lifts, double step, double[] tops, bool close, double doubt, double cam, string named)
    {
        var all = Enumerable.Range(1, lifts).Select(i => Math.Round(step * i, 4)).ToArray();
        double Top(int i) => close ? tops[0] * (1 + 0.003 * i) : tops[i];
        string Name(int i) => named.Replace("{0}", i.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
        var earlier = Enumerable.Range(0, cuts).Select(i => Invented.Cut(Name(i), Top(i), all, doubt)).ToArray();
        (FlowLine, Estimate[])? now = read == 0 ? null : Invented.Cut(Name(cuts), Top(cuts), all[..Math.Min(read, lifts)], doubt, degrees: cuts % 2 == 0 ? 12 : 2);
        var plot = Invented.Plot(now, earlier, cam, all, Name(cuts));
        return (lifts % 2 == 0 ? plot with { Wanted = Invented.Wanted(tops[^1] * (0.5 + doubt * 30), cam) } : plot, cuts);
    }
}
