using Portwright.Geometry.Sections;

namespace Portwright.Geometry.LongView;

/// <summary>Intake or exhaust.</summary>
public enum PortSide { Intake, Exhaust }

/// <summary>
/// A usual port as shares of the valve head's diameter, to stand in where nothing is measured yet. Common practice, no source: proportions of two-valve heads; nothing may be concluded from them.
/// </summary>
public static class GenericPort
{
    /// <summary>One place of the generic port: share of the centreline, width and height over the valve diameter, roundness of the corners (1: half the shorter side).</summary>
    private readonly record struct Place(double Along, double Width, double Height, double Roundness, string Name);

    private static readonly Place[] Intake =
    [
        new(0, 0.62, 1.04, 0.45, "flange"), new(0.3, 0.58, 1.02, 0.5, "pinch"), new(0.6, 0.70, 0.95, 0.6, "turn"),
        new(0.82, 0.92, 0.94, 0.9, "bowl"), new(0.94, 0.89, 0.89, 1, "throat"), new(1, 0.96, 0.96, 1, "seat"),
    ];

    private static readonly Place[] Exhaust =
    [
        new(0, 0.86, 0.92, 0.6, "flange"), new(0.35, 0.80, 0.88, 0.6, "middle"), new(0.65, 0.84, 0.88, 0.75, "turn"),
        new(0.82, 0.92, 0.92, 0.95, "bowl"), new(0.93, 0.87, 0.87, 1, "throat"), new(1, 0.95, 0.95, 1, "seat"),
    ];

    /// <summary>Flange to seat 2.5 valve diameters for an intake, 1.9 for an exhaust; turn 65 and 75 degrees; bend radius 0.95 diameters.</summary>
    /// <param name="valveDiameter">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The valve's diameter is not above zero, or the place is not 0 to 1.</exception>
    public static Centreline Centreline(PortSide side, double valveDiameter)
    {
        Require.Positive(valveDiameter, nameof(valveDiameter), "m");
        return side == PortSide.Intake
            ? LongView.Centreline.OfLength(2.5 * valveDiameter, 0.95 * valveDiameter, 65 * Math.PI / 180)
            : LongView.Centreline.OfLength(1.9 * valveDiameter, 0.95 * valveDiameter, 75 * Math.PI / 180);
    }

    /// <summary>The generic section at a share of the centreline, straight between the places of the table.</summary>
    /// <param name="valveDiameter">m, above zero.</param>
    /// <param name="along">0 at the flange, 1 at the seat, no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The valve's diameter is not above zero, or the place is not 0 to 1.</exception>
    public static RectangleSection SectionAt(PortSide side, double valveDiameter, double along)
    {
        Require.Positive(valveDiameter, nameof(valveDiameter), "m");
        Require.Between(along, 0, 1, nameof(along), "of the centreline");
        var table = Table(side);
        var i = Array.FindIndex(table, 1, p => p.Along >= along);
        var share = (along - table[i - 1].Along) / (table[i].Along - table[i - 1].Along);
        double Mix(Func<Place, double> of) => (1 - share) * of(table[i - 1]) + share * of(table[i]);
        double width = valveDiameter * Mix(p => p.Width), height = valveDiameter * Mix(p => p.Height);
        return new(width, height, Mix(p => p.Roundness) * Math.Min(width, height) / 2);
    }

    /// <summary>The generic stations along a centreline, all marked generic.</summary>
    /// <param name="valveDiameter">m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The valve's diameter is not above zero, or the place is not 0 to 1.</exception>
    public static IReadOnlyList<ProfileStation> Stations(PortSide side, double valveDiameter, Centreline centreline)
    {
        ArgumentNullException.ThrowIfNull(centreline);
        Require.Positive(valveDiameter, nameof(valveDiameter), "m");
        return [.. Table(side).Select(p => new ProfileStation(
            p.Along * centreline.Length, p.Height * valveDiameter / 2, p.Height * valveDiameter / 2, p.Name, IsGeneric: true))];
    }

    /// <summary>
    /// Measured stations with generic ones before the first and after the last of them; between measured stations nothing generic is put. Heights of the generic ones are scaled to the nearest measured station,
    /// and those nearer to it than a twentieth of the port are left out.
    /// </summary>
    /// <param name="valveDiameter">m, above zero.</param>
    public static IReadOnlyList<ProfileStation> Fill(PortSide side, double valveDiameter, Centreline centreline, IReadOnlyList<ProfileStation> measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        var generic = Stations(side, valveDiameter, centreline);
        if (measured.Count == 0) return generic;
        var sorted = measured.OrderBy(s => s.Distance).ToList();
        var apart = centreline.Length / 20;
        return
        [
            .. generic.Where(g => g.Distance < sorted[0].Distance - apart).Select(g => Scaled(g, sorted[0])),
            .. sorted,
            .. generic.Where(g => g.Distance > sorted[^1].Distance + apart).Select(g => Scaled(g, sorted[^1])),
        ];

        ProfileStation Scaled(ProfileStation g, ProfileStation to)
        {
            var there = SectionAt(side, valveDiameter, Math.Clamp(to.Distance / centreline.Length, 0, 1)).Height / 2;
            return g with { Roof = g.Roof * to.Roof / there, Floor = g.Floor * to.Floor / there };
        }
    }

    private static Place[] Table(PortSide side) => side == PortSide.Intake ? Intake : Exhaust;
}
