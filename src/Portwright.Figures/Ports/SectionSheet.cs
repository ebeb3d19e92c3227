using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>A section being drawn: what its parts share.</summary>
internal sealed record SectionSheet(Pen Pen, SectionFrame Frame, SectionLabels Labels, PortSurvey Survey, SurveyedStation Station, UnitSystem Units, double Text)
{
    /// <summary>What was recorded at each bearing, in words, for the names of the places to touch; null in the middle.</summary>
    public List<(double? Bearing, string Words)> Said { get; } = [];

    /// <summary>What goes here, where nothing is recorded yet.</summary>
    public string Empty { get; set; } = "";

    /// <summary>Draws what stands under the section from a height on, and says how far it reaches.</summary>
    public Func<Pen, double, double>? Foot { get; set; }

    public double Thick(double width) => Math.Round(width * Text / 15, 2);

    /// <summary>Foot of quiet lines.</summary>
    public void Under(string words, double width) => Foot = (pen, y) =>
    {
        foreach (var line in Lettering.Wrap(words, Text, width - 8))
        {
            pen.Text(width / 2, y + Text, line, Text, Role.Quiet, Anchor.Middle);
            y += 1.25 * Text;
        }

        return y;
    };
}
