using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Sections;
using Portwright.Shop.Units;
using Portwright.Web.Forms;

namespace Portwright.Web.Air;

/// <summary>The rows of the section's form that take what stands in the air.</summary>
public static class InAirForm
{
    /// <summary>Stem, guide and boss, and one more for a port with two bosses.</summary>
    public const int Rows = 4;

    /// <summary>A row's box: <c>air-sizes-1</c>.</summary>
    public static string Name(string box, int row) => FormattableString.Invariant($"air-{box}-{row}");

    /// <summary>The rows filled in; what cannot be is refused at its box, what is unlikely asked about.</summary>
    /// <param name="section">The section's own numbers.</param>
    public static IReadOnlyList<MetalInAir> Read(Typing typed, IReadOnlyList<Typed> section, ValveData? valve)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(section);
        var widest = section.Count == 0 ? (double?)null : section.Max(t => t.Si(Dimension.Length));
        var around = Surroundings.None.With(EnteredPort.Width, widest).With(EnteredValve.Stem, valve?.StemDiameter);
        List<MetalInAir> all = [];
        for (var row = 1; row <= Rows; row++)
        {
            if (One(typed, row, around) is { } metal) all.Add(metal);
        }

        return all;
    }

    private static MetalInAir? One(Typing typed, int row, Surroundings around)
    {
        var sizes = Name("sizes", row);
        var written = new[] { "sizes", "up", "in", "wall" }.Any(b => !string.IsNullOrWhiteSpace(typed.Raw(Name(b, row))));
        if (!Enum.TryParse<MetalInAirKind>(typed.Raw(Name("kind", row)), out var kind) || !Enum.IsDefined(kind))
        {
            if (written) typed.Refuse(sizes, "What is it: stem, guide or guide boss? Choose it, or empty the boxes.");
            return null;
        }

        var field = (kind == MetalInAirKind.Stem ? EnteredPort.StemInAir : EnteredPort.MetalInAir) with { Label = Words(kind) };
        var numbers = typed.Several(sizes, field, around);
        if (numbers.Count == 0)
        {
            typed.Refuse(sizes, $"{Words(kind)}: its sizes are empty. Type its diameter, or width and height; or choose nothing.");
            return null;
        }

        var place = EnteredPort.PlaceInAir with { Label = $"{Words(kind)}, its middle" };
        var wall = around.With(EnteredPort.MetalInAir, numbers.Max(n => n.Si(Dimension.Length)));
        return new MetalInAir(
            kind,
            typed.Choice(Name("form", row), SectionForm.Oval),
            numbers,
            typed.Number(Name("up", row), place, around),
            typed.Number(Name("in", row), place, around),
            typed.Number(Name("wall", row), EnteredPort.OnWall, wall));
    }

    /// <summary>With a capital.</summary>
    public static string Words(MetalInAirKind kind) => IslandShape.Words(kind) is var words ? char.ToUpperInvariant(words[0]) + words[1..] : "";
}
