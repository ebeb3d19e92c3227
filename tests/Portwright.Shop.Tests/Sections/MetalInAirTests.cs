using Portwright.Engine.Runs;
using Portwright.Geometry;
using Portwright.Shop.Entering;
using Portwright.Shop.Findings;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sections;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Sections;

/// <summary>What stands in the air of a section is taken off its area, rubs on the air, and is said.</summary>
public sealed class MetalInAirTests
{
    private readonly SimulatedBench _bench = new(Ranges.OfEachKind[1]);

    // On paper: 30 × 40 = 1200; the stem π/4 × 8² = 50.2655, the boss 10 × 6 = 60: open 1089.7345 mm². The wall 140, the stem π × 8 = 25.1327, the boss 32 less
    // twice the 10 that hang on the roof = 12: wetted 177.1327 mm. 4 × 1089.7345 / 177.1327 = 24.6083 mm.
    [Fact]
    public void A_stem_and_a_boss_on_the_roof_come_off_area_wall_and_hydraulic_diameter_as_on_paper()
    {
        var section = Reduced(Stem(8), Boss(10, 6, onWall: 10));
        Assert.Equal(1089.7345e-6, section.Area.Value, 1e-10);
        Assert.Equal(177.1327e-3, section.Shape.Perimeter, 1e-7);
        Assert.Equal(24.6083e-3, section.HydraulicDiameter, 1e-7);
        Assert.Equal(1200e-6, section.WithinWall.Value, 1e-12);
        Assert.Equal(["stem", "guide boss"], section.InAir.Select(i => i.Name));
        Assert.Equal(50.2655e-6, section.InAir[0].Area, 1e-10);
    }

    [Fact]
    public void A_section_without_any_is_what_it_was()
    {
        var section = Reduced();
        Assert.Equal(section.Area, section.WithinWall);
        Assert.Equal(4 * 1200e-6 / 0.14, section.HydraulicDiameter, 1e-12);
        Assert.Empty(section.InAir);
    }

    /// <summary>π/2 × 8 mm times a step of .001 in over √12: one diameter is one reading.</summary>
    [Fact]
    public void The_stems_one_diameter_is_in_doubt_once()
    {
        var with = Reduced(Stem(8)).Area.Contributions.Single(c => c.Source.EndsWith("stem: diameter", StringComparison.Ordinal));
        Assert.Equal(Math.PI / 2 * 0.008 * 25.4e-6 / Math.Sqrt(12), Math.Abs(with.Amount), 1e-12);
    }

    [Fact]
    public void A_boss_hangs_from_the_roof_and_a_stem_stands_in_the_middle_unless_it_is_said_where()
    {
        var section = Reduced(Stem(8), Boss(10, 6));
        Assert.True(section.InAir[0].Outline.Centroid.To(new PlanePoint(0, 0)) < 1e-9);
        Assert.True(section.InAir[1].Outline.Centroid.To(new PlanePoint(0, 0.017)) < 1e-9);
        var said = Reduced(Stem(8) with { Up = Typed.Of(10, "mm"), In = Typed.Of(9, "mm") });
        // 9 in from the cylinder-wall side of 30 is 6 to that side of the middle; 10 up of 40 is 10 under it.
        Assert.True(said.InAir[0].Outline.Centroid.To(new PlanePoint(-0.006, -0.010)) < 1e-9);
        Assert.Equal(Reduced(Stem(8)).Area.Value, said.Area.Value, 1e-15);
    }

    [Fact]
    public void A_plane_that_leans_takes_a_leaning_stem_off()
    {
        var section = Section(Stem(8)) with { Tilt = Typed.Of(Math.PI / 9, "rad") };
        Assert.Equal((1200e-6 - Math.PI * 16e-6) * Math.Cos(Math.PI / 9), SectionShape.Of(section, out _)!.Area, 1e-12);
    }

    [Fact]
    public void What_cannot_stand_there_is_named_with_its_cure()
    {
        Assert.StartsWith("The guide stands in the stem: that area would be taken off twice.", Problem(Stem(8), new(MetalInAirKind.Guide, SectionForm.Oval, [Typed.Of(12, "mm")])), StringComparison.Ordinal);
        Assert.StartsWith("The middle of the stem lies outside the section.", Problem(Stem(8) with { In = Typed.Of(31, "mm") }), StringComparison.Ordinal);
        Assert.StartsWith("A guide boss wants one diameter", Problem(new MetalInAir(MetalInAirKind.GuideBoss, SectionForm.Racetrack, [Typed.Of(8, "mm")])), StringComparison.Ordinal);
        Assert.StartsWith("The stem's diameter is 0.", Problem(Stem(0)), StringComparison.Ordinal);
        Assert.Contains("more area than the section has", Problem(Boss(40, 31)), StringComparison.Ordinal);
        Assert.Contains("longer than the edge itself", Problem(Boss(10, 6, onWall: 17)), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_bosses_are_told_apart_by_their_numbers() =>
        Assert.Equal(
            ["guide boss: width", "guide boss: height", "guide boss 2: width", "guide boss 2: height"],
            Shape(Boss(4, 6) with { In = Typed.Of(5, "mm") }, Boss(4, 6) with { In = Typed.Of(25, "mm") }).Readings.Select(r => r.Name).Where(n => n.StartsWith("guide", StringComparison.Ordinal) && !n.Contains("radius", StringComparison.Ordinal)));

    /// <summary>The usual share of throat to valve is one of the bore: a stem in it makes no small throat.</summary>
    [Fact]
    public void A_stem_noted_in_the_throat_leaves_the_throats_share_of_the_valve()
    {
        var cut = _bench.Cut(0);
        var throat = _bench.Add(new Station(_bench.PortId, "E", 0.09, Role: StationRole.Throat));
        var section = new Section(cut, throat, SectionForm.Oval, [Typed.Of(44, "mm"), Typed.Of(44, "mm")]);
        var id = _bench.Add(section);
        var before = ThroatShare.Of(PortSurvey.Of(_bench.Ledger, _bench.PortId))!;
        _bench.Put(Amend.Correct(_bench.Ledger.Get<Section>(id), section with { InAir = [Stem(8)] }, SimulatedBench.Morning, "", "the stem stands in it"));
        var with = ThroatShare.Of(PortSurvey.Of(_bench.Ledger, _bench.PortId))!;
        Assert.Equal(before.Share.Value, with.Share.Value, 1e-12);
        Assert.Equal(before.Share.StandardUncertainty, with.Share.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void The_sheet_says_what_was_taken_off_and_how_much()
    {
        var cut = _bench.Cut(0);
        _bench.Read(_bench.Sweep(cut), 0.008, 0.0006);
        _bench.Add(Section(Stem(8), Boss(10, 6, onWall: 10)) with { Cut = cut, Station = _bench.Add(new Station(_bench.PortId, "C", 0.05)) });
        var document = PortDocument.Of(PortAtCut.Of(new Reductions(_bench.Ledger), _bench.PortId, null, new NothingKept()));
        var table = document.Parts.SelectMany(p => p.Blocks).OfType<Table>().Single(t => t.Key == "sections");
        Assert.Equal("In C stem (50.3 mm²) and guide boss (60.0 mm²) stand in the air, taken off its area; hydraulic diameter 24.61 mm.", table.Note.In(UnitSystem.Si));
        Assert.Contains("area 1089.7 ±", string.Join(' ', table.Rows.SelectMany(r => r.Select(c => $"area {c.Text.In(UnitSystem.Si)}"))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_written_before_it_was_asked_has_none_and_one_written_now_comes_back_whole()
    {
        const string old = """{"type":"section","cut":"11111111-1111-1111-1111-111111111111","station":"22222222-2222-2222-2222-222222222222","form":"Oval","readings":[{"value":1.2,"unit":"in","text":"1.2"},{"value":1.9,"unit":"in","text":"1.9"}]}""";
        Assert.Null(Assert.IsType<Section>(System.Text.Json.JsonSerializer.Deserialize(old, RecordJson.Default.Fact)).InAir);
        var now = Section(Boss(10, 6, onWall: 10) with { Up = Typed.Of(30, "mm") });
        var text = System.Text.Json.JsonSerializer.Serialize<Fact>(now, RecordJson.Default.Fact);
        var back = Assert.IsType<Section>(System.Text.Json.JsonSerializer.Deserialize(text, RecordJson.Default.Fact)).InAir!;
        Assert.Equal((MetalInAirKind.GuideBoss, SectionForm.Rectangle, 30.0, 10.0), (back[0].Kind, back[0].Form, back[0].Up!.Value, back[0].OnWall!.Value));
        Assert.Equal([10.0, 6.0], back[0].Sizes.Select(s => s.Value));
    }

    [Theory]
    [InlineData("314", ".314")]
    [InlineData("3.14", ".314")]
    public void A_stem_that_is_not_the_valves_is_asked_about(string typed, string meant)
    {
        var around = Surroundings.None.With(EnteredValve.Stem, 0.314 * 0.0254);
        Assert.Equal(meant, Assert.IsType<Ask>(EntryJudge.Of(EnteredPort.StemInAir, typed, UnitSystem.UsCustomary, around)).Likely[0].Text.TrimStart('0'));
        Assert.IsType<Take>(EntryJudge.Of(EnteredPort.StemInAir, ".314", UnitSystem.UsCustomary, around));
    }

    [Fact]
    public void Where_the_limits_of_the_new_boxes_lie()
    {
        bool Taken(EnteredField field, double si, Surroundings around) => EntryJudge.Of(field, FormattableString.Invariant($"{si * 1e3:R} mm"), UnitSystem.Si, around) is Take;
        var across = Surroundings.None.With(EnteredPort.Width, 0.04).With(EnteredValve.Stem, 0.008).With(EnteredPort.MetalInAir, 0.01);
        Assert.True(Taken(EnteredPort.StemInAir, 0.00745, across) && !Taken(EnteredPort.StemInAir, 0.00743, across));
        Assert.True(Taken(EnteredPort.StemInAir, 0.00855, across) && !Taken(EnteredPort.StemInAir, 0.00857, across));
        Assert.True(Taken(EnteredPort.StemInAir, 0.0044, Surroundings.None) && !Taken(EnteredPort.StemInAir, 0.0042, Surroundings.None));
        Assert.True(Taken(EnteredPort.StemInAir, 0.0127, Surroundings.None) && !Taken(EnteredPort.StemInAir, 0.0129, Surroundings.None));
        Assert.True(Taken(EnteredPort.MetalInAir, 0.0319, across) && !Taken(EnteredPort.MetalInAir, 0.0321, across));
        Assert.True(Taken(EnteredPort.MetalInAir, 0.0016, across) && !Taken(EnteredPort.MetalInAir, 0.0014, across));
        Assert.True(Taken(EnteredPort.MetalInAir, 0.0299, Surroundings.None) && !Taken(EnteredPort.MetalInAir, 0.0301, Surroundings.None));
        Assert.True(Taken(EnteredPort.PlaceInAir, 0.0399, across) && !Taken(EnteredPort.PlaceInAir, 0.0401, across));
        Assert.True(Taken(EnteredPort.OnWall, 0.0159, across) && !Taken(EnteredPort.OnWall, 0.0161, across));
    }

    private sealed class NothingKept : IKeptPoints
    {
        public OperatingPoint? Find(string key) => null;

        public void Keep(string key, OperatingPoint point)
        {
        }
    }

    private static MetalInAir Stem(double diameter) => new(MetalInAirKind.Stem, SectionForm.Oval, [Typed.Of(diameter, "mm")]);

    private static MetalInAir Boss(double width, double height, double? onWall = null) =>
        new(MetalInAirKind.GuideBoss, SectionForm.Rectangle, [Typed.Of(width, "mm"), Typed.Of(height, "mm")], OnWall: onWall is { } edge ? Typed.Of(edge, "mm") : null);

    private static Section Section(params MetalInAir[] inAir) =>
        new(Guid.Empty, Guid.Empty, SectionForm.Rectangle, [Typed.Of(30, "mm"), Typed.Of(40, "mm")], InAir: inAir.Length > 0 ? inAir : null);

    private static Geometry.Sections.SectionMeasure Shape(params MetalInAir[] inAir) => SectionShape.Of(Section(inAir), out _)!;

    private static string Problem(params MetalInAir[] inAir)
    {
        Assert.Null(SectionShape.Of(Section(inAir), out var problem));
        return problem;
    }

    private static ReducedSection Reduced(params MetalInAir[] inAir)
    {
        var station = new Kept<Station>(Guid.Empty, new Station(Guid.Empty, "C", 0.05), null!, 1);
        return ReducedSection.From(station, new Kept<Section>(Guid.Empty, Section(inAir), null!, 1), null!, out _)!;
    }
}
