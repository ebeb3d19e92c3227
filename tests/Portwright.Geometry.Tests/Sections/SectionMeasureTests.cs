using CsCheck;
using Portwright.Geometry.Sections;
using Portwright.Geometry.Working;

namespace Portwright.Geometry.Tests.Sections;

public sealed class SectionMeasureTests
{
    [Fact]
    public void The_wall_line_in_chords_keeps_the_area_of_the_closed_form() =>
        SectionShapes.Any.Sample(section =>
        {
            Assert.Null(section.Problem());
            Assert.Equal(1, section.Outline().Area / section.Area, 1e-9);
            Assert.Equal(1, section.Outline().Perimeter / section.Perimeter, 4e-4);
            Assert.Equal(1, section.Outline().Moments.Ixx / section.Moments.Ixx, 2e-3);
            Assert.Equal(0, section.Outline().Centroid.To(section.Moments.Centroid), 2e-6);
        });

    [Theory]
    [InlineData(7.2e-11)]
    [InlineData(1e-9)]
    [InlineData(1e-13)]
    [InlineData(0)]
    public void A_corner_too_small_to_see_costs_the_wall_line_no_area(double radius)
    {
        var section = new WidthsSection([new(0, 0.021), new(0.011, 0.029), new(0.044, 0.024)], radius);
        Assert.Equal(1, section.Outline().Area / section.Area, 1e-11);
    }

    [Fact]
    public void The_working_adds_up_to_the_area_with_islands_and_tilt() =>
        Gen.Select(SectionShapes.Any, SectionShapes.EvenRectangle, Gen.Double[-0.5, 0.5]).Sample((section, boss, tilt) =>
        {
            var whole = section with { Tilt = tilt, Islands = [new("guide boss", boss, section.Moments.Centroid)] };
            var lines = whole.Working();
            var sum = lines.Sum(l => l.Effect switch { Effect.Adds => l.Result.Value, Effect.TakesOff => -l.Result.Value, _ => 0 });
            Assert.Equal(whole.MeasuredArea, sum, 1e-12);
            Assert.Equal(Effect.Total, lines[^1].Effect);
            Assert.Equal(whole.Area, lines[^1].Result.Value, 1e-15);
            Assert.Equal(whole.Area, sum * Math.Cos(tilt), 1e-12);
        });

    [Fact]
    public void The_rectangle_of_a_notebook_prints_as_it_stands_there()
    {
        const double inch = 0.0254;
        static string Print(Quantity q) => q.Dimension switch
        {
            Dimension.Length => (q.Value / inch).ToString("0.000", System.Globalization.CultureInfo.InvariantCulture),
            Dimension.Area => (q.Value / inch / inch).ToString("0.000", System.Globalization.CultureInfo.InvariantCulture),
            _ => q.Value.ToString(System.Globalization.CultureInfo.InvariantCulture),
        };
        // 1.250 x 2.100 = 2.625; (4 - 3.1416) x .375^2 = .8584 x .140625 = .1207, by hand.
        var lines = new RectangleSection(1.25 * inch, 2.1 * inch, 0.375 * inch).Working();
        Assert.Equal(["rectangle: 1.250 × 2.100 = 2.625", "four corners: (4 − π) × 0.375² = 0.121", "area: the sum so far = 2.504"],
            lines.Select(l => $"{l.Label}: {l.Sum(Print)} = {Print(l.Result)}"));
        Assert.Equal([Effect.Adds, Effect.TakesOff, Effect.Total], lines.Select(l => l.Effect));
    }

    [Fact]
    public void A_formula_worked_with_its_given_numbers_gives_its_result() =>
        SectionShapes.Any.Sample(section =>
        {
            foreach (var line in section.Working().Where(l => l.Formula == "{0} × {1}"))
                Assert.Equal(line.Result.Value, line.Given[0].Value * line.Given[1].Value, 1e-15);
        });

    [Fact]
    public void A_caliper_that_reads_long_makes_the_area_twice_as_much_too_large() =>
        Gen.OneOf(SectionShapes.Oval, SectionShapes.Racetrack, SectionShapes.Traced, SectionShapes.Template).Sample(section =>
        {
            var doubt = AreaUncertainty.Of(section, 0, 0.001);
            Assert.Equal(0.002 * section.Area, doubt.Standard, 1e-7 * section.Area);
        });

    [Fact]
    public void The_area_moves_with_a_reading_as_its_sensitivity_says() =>
        Gen.Select(Gen.Double[0.02, 0.05], Gen.Double[0.03, 0.06], Gen.Double[0.001, 0.008]).Sample((w, h, r) =>
        {
            // Closed forms: d(w h - (4 - pi) r^2) and d(pi/4 w h); JCGM 100:2008, 5.1.3.
            Assert.Equal([h, w, -2 * (4 - Math.PI) * r], new RectangleSection(w, h, r).Sensitivities, (a, b) => Math.Abs(a - b) < 1e-10);
            Assert.Equal([Math.PI / 4 * h, Math.PI / 4 * w], new OvalSection(w, h).Sensitivities, (a, b) => Math.Abs(a - b) < 1e-10);
            Assert.Equal([h / 2, h / 2, (w + 2 * w) / 2], new TrapezoidSection(w, 2 * w, h, 0).Sensitivities, (a, b) => Math.Abs(a - b) < 1e-10);
        });

    [Fact]
    public void Caliper_steps_become_doubt_by_the_square_root_of_twelve()
    {
        var section = new RectangleSection(0.03, 0.05, 0) { Tilt = 0.3 };
        var doubt = AreaUncertainty.Of(section, 1e-4, 0.001, tiltDoubt: 0.02);
        var u = 1e-4 / Math.Sqrt(12);
        var expected = Math.Sqrt(Math.Pow(0.05 * u, 2) + Math.Pow(0.03 * u, 2) + Math.Pow(2 * 0.0015 * 0.001, 2)) * Math.Cos(0.3);
        Assert.Equal(Math.Sqrt(expected * expected + Math.Pow(0.0015 * Math.Sin(0.3) * 0.02, 2)), doubt.Standard, 1e-12);
        Assert.Equal(["width", "height", "caliper scale", "tilt"], doubt.Contributions.Select(c => c.Name));
        Assert.Throws<ArgumentException>(() => AreaUncertainty.Of(section, [1e-4]));
    }

    [Fact]
    public void Doubt_by_propagation_agrees_with_readings_drawn_at_random()
    {
        var section = new RectangleSection(0.0318, 0.0533, 0.0095) { Tilt = 0.2, Islands = [new("boss", new RectangleSection(0.012, 0.018, 0), new(0, 0.04))] };
        double[] u = [5e-5, 5e-5, 4e-4, 1e-4, 1e-4];
        var random = new Random(7);
        double Draw() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var areas = Enumerable.Range(0, 20000).Select(_ =>
            (new RectangleSection(0.0318 + u[0] * Draw(), 0.0533 + u[1] * Draw(), 0.0095 + u[2] * Draw()).MeasuredArea
                - (0.012 + u[3] * Draw()) * (0.018 + u[4] * Draw())) * Math.Cos(0.2)).ToArray();
        var mean = areas.Average();
        var spread = Math.Sqrt(areas.Sum(a => (a - mean) * (a - mean)) / (areas.Length - 1));
        // Twenty thousand draws know a standard deviation to 0.5 percent.
        Assert.Equal(1, spread / AreaUncertainty.Of(section, u).Standard, 0.02);
    }

    [Fact]
    public void A_boss_hanging_on_the_wall_wets_only_its_free_edges()
    {
        var port = new RectangleSection(0.03, 0.05, 0);
        var boss = port with { Islands = [new("guide boss", new RectangleSection(0.01, 0.006, 0), new(0, 0.047), AgainstWall: 0.01)] };
        Assert.Equal(port.Area - 0.00006, boss.Area, 1e-12);
        Assert.Equal(port.Perimeter + 2 * 0.006, boss.Perimeter, 1e-12);
    }

    [Fact]
    public void Widths_at_two_heights_are_a_rectangle() =>
        Gen.Select(Gen.Double[0.02, 0.05], Gen.Double[0.02, 0.05], Gen.Double[0, 0.009]).Sample((w, h, r) =>
            Assert.Equal(new RectangleSection(w, h, r).Area, new WidthsSection([new(0, w), new(h, w)], r).Area, 1e-15));

    [Fact]
    public void A_square_racetrack_is_a_circle_and_so_is_an_egg_of_one_radius()
    {
        Assert.Equal(OvalSection.Round(0.04).Area, new RacetrackSection(0.04, 0.04).Area, 1e-15);
        Assert.Equal(new RacetrackSection(0.04, 0.06).Area, new EggSection(0.02, 0.02, 0.06).Area, 1e-15);
        Assert.Equal(new RacetrackSection(0.06, 0.04).Perimeter, new RacetrackSection(0.04, 0.06).Perimeter, 1e-15);
        Assert.Equal(new RacetrackSection(0.04, 0.06).Area, new RectangleSection(0.04, 0.06, 0.02).Area, 1e-15);
    }

    public static TheoryData<SectionMeasure, string> Mistyped => new()
    {
        { new RectangleSection(0, 0.05, 0), "width" },
        { new RectangleSection(0.03, double.NaN, 0), "height" },
        { new RectangleSection(0.03, 0.05, 0.016), "corner radius" },
        { new RectangleSection(0.03, 0.05, -0.001), "corner radius" },
        { new OvalSection(0.03, -1), "height" },
        { new EggSection(0.02, 0.01, 0.03), "height" },
        { new WidthsSection([new(0, 0.03)], 0), "widths" },
        { new WidthsSection([new(0, 0.03), new(0, 0.03)], 0), "height 2" },
        { new WidthsSection([new(0, 0.03), new(0.01, 0), new(0.02, 0.03)], 0), "width 2" },
        { new TracedSection([new(0, 0), new(1, 1), new(1, 0), new(0, 1)]), "outline" },
        { new OvalSection(0.03, 0.03) { Tilt = 1.6 }, "tilt" },
        { new OvalSection(0.03, 0.03) { Islands = [new("stem", OvalSection.Round(0.04), default)] }, "islands" },
        { new OvalSection(0.03, 0.03) { Islands = [new("stem", OvalSection.Round(-0.04), default)] }, "stem: width" },
    };

    [Theory]
    [MemberData(nameof(Mistyped))]
    public void What_makes_no_section_is_named_by_its_field(SectionMeasure section, string field)
    {
        var problem = section.Problem();
        Assert.Equal(field, problem?.Field);
        Assert.EndsWith(".", problem!.Cure);
    }
}
