using Portwright.Geometry;
using Portwright.Geometry.Schedules;
using Portwright.Geometry.Sections;
using Portwright.Geometry.Sums;

namespace Portwright.Reference.Sections;

/// <summary>Volumes from sections against cones, prismatoids and bends (source beside each case).</summary>
public sealed class VolumeChecks
{
    [Fact]
    public void A_straight_taper_is_a_frustum()
    {
        foreach (var c in SectionCase.Read("volume-cone"))
        {
            double one = OvalSection.Round(c.Metres("diameter_1_mm")).Area, two = OvalSection.Round(c.Metres("diameter_2_mm")).Area;
            c.Check("volume_cc", SectionVolume.Of(new([new(0, one), new(c.Metres("length_mm"), two)])).Volume * 1e6);
            // Cut anywhere in between, the same taper holds the same.
            var middle = (OvalSection.Round((c.Metres("diameter_1_mm") * 2 + c.Metres("diameter_2_mm")) / 3)).Area;
            c.Check("volume_cc", SectionVolume.Of(new([new(0, one), new(c.Metres("length_mm") / 3, middle), new(c.Metres("length_mm"), two)])).Volume * 1e6);
        }
    }

    [Fact]
    public void A_prismatoid_is_exact_by_Simpson_with_its_middle_section()
    {
        foreach (var c in SectionCase.Read("volume-prismatoid"))
        {
            double w1 = c.Metres("width_1_mm"), h1 = c.Metres("height_1_mm"), w2 = c.Metres("width_2_mm"), h2 = c.Metres("height_2_mm"), length = c.Metres("length_mm");
            c.Check("volume_cc", RuleOfSum.Simpson([0, length / 2, length], [w1 * h1, (w1 + w2) * (h1 + h2) / 4, w2 * h2]) * 1e6);
            var ends = SectionVolume.Of(new([new(0, w1 * h1), new(length, w2 * h2)]));
            c.Check("mean_of_ends_cc", ends.ByMeanOfEnds * 1e6);
            c.Check("pyramid_frustum_cc", ends.Volume * 1e6);
        }
    }

    [Fact]
    public void A_bend_of_constant_section_holds_area_times_the_way_of_its_centroid()
    {
        foreach (var c in SectionCase.Read("volume-bend"))
        {
            var area = new Outline(c.Wall("points_mm")).Area;
            c.CheckArea(area);
            var way = c.Metres("bend_radius_at_centroid_mm") * c.In("bend_angle_deg") * Math.PI / 180;
            c.Check("volume_cc", SectionVolume.Of(new([new(0, area), new(way / 4, area), new(way, area)])).Volume * 1e6);
        }
    }
}
