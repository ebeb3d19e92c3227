using Portwright.Geometry;
using Portwright.Geometry.Sections;
using Portwright.Shop.Record;

namespace Portwright.Shop.Sections;

/// <summary>A section as it was typed, as the geometry wants it.</summary>
public static class SectionShape
{
    /// <summary>The shape; null where the numbers make none, with the sentence that says why and what to do.</summary>
    public static SectionMeasure? Of(Section section, out string problem)
    {
        ArgumentNullException.ThrowIfNull(section);
        double[] r;
        double[] corners;
        double tilt;
        try
        {
            r = [.. section.Readings.Select(t => t.Si(Units.Dimension.Length))];
            corners = [.. (section.CornerRadii ?? []).Select(t => t.Si(Units.Dimension.Length))];
            tilt = section.Tilt?.Si(Units.Dimension.Angle) ?? 0;
        }
        catch (ArgumentException trouble)
        {
            problem = trouble.Message;
            return null;
        }

        if (Shape(section.Form, r, corners, out problem) is not { } shape)
        {
            return null;
        }

        shape = shape with { Tilt = tilt };
        if (section.InAir is { Count: > 0 } inAir && shape.Problem() is null)
        {
            if (IslandShape.Of(inAir, shape.Outline(), out problem) is not { } islands)
            {
                return null;
            }

            shape = shape with { Islands = islands };
        }

        if (shape.Problem() is not { } wrong)
        {
            return shape;
        }

        problem = FormattableString.Invariant($"The section's {wrong.Field} is {wrong.Value:0.######}. {wrong.Cure}");
        return null;
    }

    private static SectionMeasure? Shape(SectionForm form, double[] r, double[] corners, out string problem)
    {
        problem = "";
        switch (form)
        {
            case SectionForm.Rectangle when r.Length is 2 or 3 or 6:
                return new RectangleSection(r[0], r[1], Corners(r[2..]));
            case SectionForm.Oval when r.Length == 2:
                return new OvalSection(r[0], r[1]);
            case SectionForm.Racetrack when r.Length == 2:
                return new RacetrackSection(r[0], r[1]);
            case SectionForm.Egg when r.Length == 3:
                return new EggSection(r[0], r[1], r[2]);
            case SectionForm.Trapezoid when r.Length == 3:
                return new TrapezoidSection(r[0], r[1], r[2], Corners(corners));
            case SectionForm.Widths when r.Length >= 4 && r.Length % 2 == 0:
                return new WidthsSection([.. r.Chunk(2).Select(p => new WidthAtHeight(p[0], p[1])).OrderBy(w => w.Height)], Corners(corners));
            case SectionForm.Traced when r.Length >= 6 && r.Length % 2 == 0:
                return new TracedSection(Points(r));
            case SectionForm.Template when r.Length >= 8 && r.Length % 2 == 0:
                if (Outline.TryCreate(Points(r[2..]), out var template, out var wrong))
                {
                    return new TemplateSection(template, r[0], r[1]);
                }

                problem = wrong ?? "";
                return null;
            default:
                problem = $"A section by {Words(form)} wants {Wants(form)}; there {(r.Length == 1 ? "is 1 number" : $"are {r.Length} numbers")}.";
                return null;
        }
    }

    /// <summary>What a porter calls the way of measuring.</summary>
    public static string Words(SectionForm form) => form switch
    {
        SectionForm.Rectangle => "width, height and corners",
        SectionForm.Oval => "the two axes of an oval",
        SectionForm.Racetrack => "width and height of a racetrack",
        SectionForm.Egg => "two circles",
        SectionForm.Trapezoid => "floor, roof and height",
        SectionForm.Widths => "widths at heights",
        SectionForm.Traced => "traced points",
        SectionForm.Template => "a template",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "unknown way of measuring a section"),
    };

    /// <summary>The numbers it wants, in order.</summary>
    public static string Wants(SectionForm form) => form switch
    {
        SectionForm.Rectangle => "width, height, and one corner radius or four (roof at the cylinder wall, roof at the centre, floor at the cylinder wall, floor at the centre)",
        SectionForm.Oval or SectionForm.Racetrack => "width and height",
        SectionForm.Egg => "roof radius, floor radius and height",
        SectionForm.Trapezoid => "floor width, roof width and height",
        SectionForm.Widths => "height and width in pairs, floor and roof at least",
        SectionForm.Traced => "points in pairs, across and up, three points at least",
        SectionForm.Template => "width and height, then the template's points in pairs",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "unknown way of measuring a section"),
    };

    private static CornerRadii Corners(double[] radii) => radii.Length switch
    {
        0 => CornerRadii.All(0),
        4 => new CornerRadii(radii[0], radii[1], radii[2], radii[3]),
        _ => CornerRadii.All(radii[0]),
    };

    private static PlanePoint[] Points(double[] pairs) => [.. pairs.Chunk(2).Select(p => new PlanePoint(p[0], p[1]))];
}
