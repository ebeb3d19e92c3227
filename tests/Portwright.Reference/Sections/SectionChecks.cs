using Portwright.Geometry.Sections;

namespace Portwright.Reference.Sections;

/// <summary>Sections against plane geometry and a general geometry library (source beside each case).</summary>
public sealed class SectionChecks
{
    [Fact]
    public void Rounded_rectangles()
    {
        foreach (var c in SectionCase.Read("rounded"))
        {
            var corners = new CornerRadii(c.Metres("radius_roof_left_mm"), c.Metres("radius_roof_right_mm"), c.Metres("radius_floor_left_mm"), c.Metres("radius_floor_right_mm"));
            Check(c, new RectangleSection(c.Metres("width_mm"), c.Metres("height_mm"), corners), c.Metres("width_mm") / 2);
        }
    }

    [Fact]
    public void Racetracks()
    {
        foreach (var c in SectionCase.Read("stadium"))
            Check(c, new RacetrackSection(c.Metres("width_mm"), c.Metres("height_mm")), c.Metres("width_mm") / 2);
    }

    [Fact]
    public void Eggs()
    {
        foreach (var c in SectionCase.Read("egg"))
        {
            var egg = new EggSection(c.Metres("roof_radius_mm"), c.Metres("floor_radius_mm"), c.Metres("roof_radius_mm") + c.Metres("floor_radius_mm") + c.Metres("centre_distance_mm"));
            c.CheckLength("centroid_above_floor_centre_mm", egg.Moments.Centroid.Y - egg.FloorRadius);
            c.CheckLength("total_height_mm", egg.Height);
            CheckFigure(c, egg);
        }
    }

    [Fact]
    public void Ellipses()
    {
        foreach (var c in SectionCase.Read("ellipse"))
            CheckFigure(c, new OvalSection(2 * c.Metres("semi_axis_x_mm"), 2 * c.Metres("semi_axis_y_mm")));
    }

    [Fact]
    public void Trapezoids_and_the_porters_rectangle_plus_triangle()
    {
        foreach (var c in SectionCase.Read("trapezoid"))
        {
            double floor = c.Metres("floor_width_mm"), roof = c.Metres("roof_width_mm");
            var trapezoid = new TrapezoidSection(floor, roof, c.Metres("height_mm"), 0, c.Metres("roof_left_corner_x_mm") + roof / 2 - floor / 2);
            Check(c, trapezoid, floor / 2);
            c.CheckArea(trapezoid.Working().Single(l => l.Label == "rectangle").Result.Value, "rectangle_mm2");
            c.CheckArea(trapezoid.Working().Where(l => l.Label == "triangle").Sum(l => l.Result.Value), "triangle_mm2");
        }
    }

    [Fact]
    public void Traced_outlines()
    {
        foreach (var c in SectionCase.Read("polygon")) Check(c, new TracedSection(c.Wall("points_mm")), 0);
    }

    [Fact]
    public void An_island_is_taken_off_and_its_wall_is_wetted()
    {
        foreach (var c in SectionCase.Read("hole"))
        {
            var island = new TracedSection(c.Wall("island_mm"));
            Check(c, new TracedSection(c.Wall("outer_mm")) { Islands = [new("guide boss", island, island.Moments.Centroid)] }, 0);
        }
    }

    [Fact]
    public void A_throat_with_its_stem()
    {
        foreach (var c in SectionCase.Read("annulus"))
        {
            var throat = OvalSection.Round(c.Metres("throat_diameter_mm"));
            var section = throat with { Islands = [new("stem", OvalSection.Round(c.Metres("stem_diameter_mm")), throat.Moments.Centroid)] };
            c.CheckArea(section.Area);
            c.CheckLength("perimeter_mm", section.Perimeter);
            c.CheckLength("hydraulic_diameter_mm", section.HydraulicDiameter);
        }
    }

    [Fact]
    public void Tilted_planes()
    {
        foreach (var c in SectionCase.Read("tilt").Where(c => c.Inputs.ContainsKey("points_mm")))
        {
            var section = new TracedSection(c.Wall("points_mm")) { Tilt = c.In("tilt_deg") * Math.PI / 180, TiltAxis = c.In("tilt_axis_deg_from_x") * Math.PI / 180 };
            c.CheckArea(section.MeasuredArea, "measured_area_mm2");
            c.CheckArea(section.Area);
            c.CheckArea(section.SquaredOutline().Area);
            c.CheckLength("perimeter_mm", section.Perimeter);
            c.CheckLength("hydraulic_diameter_mm", section.HydraulicDiameter);
        }
    }

    [Fact]
    public void A_round_bore_cut_aslant_is_an_ellipse()
    {
        foreach (var c in SectionCase.Read("tilt").Where(c => c.Inputs.ContainsKey("bore_mm")))
        {
            var tilt = c.In("tilt_deg") * Math.PI / 180;
            var slant = new OvalSection(c.Metres("bore_mm"), c.Metres("bore_mm") / Math.Cos(tilt)) { Tilt = tilt };
            c.CheckLength("long_axis_mm", slant.Height);
            c.CheckArea(slant.MeasuredArea, "measured_area_mm2");
            c.CheckLength("measured_perimeter_mm", (slant with { Tilt = 0 }).Perimeter);
            c.CheckArea(slant.Area);
            // The wall of a tilted round section is summed over chords.
            c.CheckLength("perimeter_mm", slant.Perimeter, 1e-5);
        }
    }

    [Fact]
    public void Widths_at_heights_straight_and_curved()
    {
        foreach (var c in SectionCase.Read("widths"))
        {
            var widths = c.List("widths_mm");
            var section = new WidthsSection([.. c.List("heights_mm").Select((h, i) => new WidthAtHeight(h / 1000, widths[i] / 1000))], 0);
            c.CheckArea(section.Area, "trapezoid_mm2");
            c.CheckArea(section.CurvedArea, "simpson_mm2");
            Assert.True(section.Area < c.Expected["exact_mm2"]!.GetValue<double>() * 1e-6);
        }
    }

    [Fact]
    public void Doubt_of_an_area_from_caliper_and_radius_gauge()
    {
        foreach (var c in SectionCase.Read("uncertainty"))
        {
            var section = new RectangleSection(c.Metres("width_mm"), c.Metres("height_mm"), c.Metres("radius_mm"));
            c.CheckArea(section.Area);
            c.CheckLength("sensitivity_width_mm", section.Sensitivities[0]);
            c.CheckLength("sensitivity_height_mm", section.Sensitivities[1]);
            c.CheckLength("sensitivity_radius_mm", section.Sensitivities[2]);
            c.CheckArea(AreaUncertainty.Of(section, [c.Metres("u_width_mm"), c.Metres("u_height_mm"), c.Metres("u_radius_mm")]).Standard, "u_area_mm2");
        }
    }

    private static void Check(PublishedCase c, SectionMeasure section, double originX)
    {
        c.CheckLength("centroid_x_mm", section.Moments.Centroid.X + originX);
        c.CheckLength("centroid_y_mm", section.Moments.Centroid.Y);
        CheckFigure(c, section);
    }

    private static void CheckFigure(PublishedCase c, SectionMeasure section)
    {
        Assert.Null(section.Problem());
        c.CheckArea(section.Area);
        c.CheckArea(section.Outline().Area - section.Islands.Sum(i => i.Outline().Area), tolerance: 1e-6);
        c.CheckLength("perimeter_mm", section.Perimeter);
        c.CheckLength("hydraulic_diameter_mm", section.HydraulicDiameter);
        c.CheckMoments(section.Moments);
    }
}
