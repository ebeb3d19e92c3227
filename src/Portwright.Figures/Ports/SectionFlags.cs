using Portwright.Geometry;
using Portwright.Shop.Record;

namespace Portwright.Figures;

/// <summary>Flags where they were held: an arrow towards their lean, a dot in a ring where they lie along the centreline, their steadiness in a word.</summary>
internal static class SectionFlags
{
    public static void Draw(SectionSheet sheet, double width)
    {
        var flags = sheet.Station.Flags.GroupBy(f => f.Fact.Bearing).Select(g => g.Last().Fact).ToList();
        if (flags.Count == 0)
        {
            sheet.Empty = "No flag yet. Hold a flag at an hour: how still it stands and where it leans goes here.";
            return;
        }

        var outline = sheet.Frame.Outline;
        foreach (var flag in flags)
        {
            var metal = flag.Bearing is { } hours ? outline.PointAt(hours, 0.35 * outline.DepthOfCentre(hours)) : outline.BearingCentre;
            var at = sheet.Frame.At(metal);
            sheet.Said.Add((flag.Bearing, $"flag {Words(flag.Steadiness)}{(flag.Lean is { } l ? $", leans to {Hour(l)} o'clock" : "")}"));
            if (flag.Bearing is { } bearing) sheet.Labels.Put(sheet.Pen, at, bearing, [(Words(flag.Steadiness), Role.Ink, Weight.Regular)], 1.75 * sheet.Text);
            else sheet.Pen.Text(at.X, at.Y + 1.9 * sheet.Text, Words(flag.Steadiness), sheet.Text, Role.Ink, Anchor.Middle);
            Arrow(sheet, at, flag);
        }

        sheet.Under(flags.Exists(f => f.Lean is not null) ? "arrow: the tip leans there; dot in a ring: along the centreline" : "dot in a ring: the flag lies along the centreline", width);
    }

    private static void Arrow(SectionSheet sheet, Place at, FlagReading flag)
    {
        var line = new Stroke(Role.Ink, sheet.Thick(2), flag.Steadiness >= Steadiness.Hangs ? LineType.Dotted : LineType.Continuous);
        if (flag.Lean is not { } lean)
        {
            sheet.Pen.Circle(at, sheet.Thick(7), Role.Ground, line with { Width = sheet.Thick(1.6) });
            sheet.Pen.Circle(at, sheet.Thick(2), Role.Ink);
            return;
        }

        var towards = sheet.Frame.Outward(lean);
        var length = sheet.Thick(30);
        var tip = new Place(at.X + length * towards.X, at.Y + length * towards.Y);
        var (back, half) = (sheet.Thick(11), sheet.Thick(4.5));
        var neck = new Place(tip.X - back * towards.X, tip.Y - back * towards.Y);
        sheet.Pen.Line(at.X, at.Y, neck.X, neck.Y, line);
        sheet.Pen.Area([tip, new(neck.X - half * towards.Y, neck.Y + half * towards.X), new(neck.X + half * towards.Y, neck.Y - half * towards.X)], Role.Ink);
        sheet.Pen.Circle(at, sheet.Thick(3.4), Role.Ink);
    }

    private static string Hour(double hours) => FormattableString.Invariant($"{Bearing.Clock(hours):0.#}");

    private static string Words(Steadiness steadiness) => steadiness switch
    {
        Steadiness.Still => "still",
        Steadiness.Trembles => "trembles",
        Steadiness.Swings => "swings",
        Steadiness.Hangs => "hangs",
        _ => "turns back",
    };
}
