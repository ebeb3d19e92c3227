namespace Portwright.Geometry.Views;

/// <summary>Which end of the port faces the eye.</summary>
public enum SeenFrom { Flange, Chamber }

/// <summary>Which way up the head lies: valve cover up, or chambers up as on the bench.</summary>
public enum Lying { Upright, Inverted }

/// <summary>
/// How the porter sees a port. The record keeps bearings by metal (12 roof, 3 centre side, 6 floor, 9 cylinder-wall side); a view turns them into the screen's clock and back.
/// </summary>
/// <remarks>
/// Seen from the flange of an upright port that is not mirrored, screen and record agree. A mirrored port and the look from the chamber (against the air of an intake instead of
/// along it) each exchange left and right; an inverted head turns everything by six hours. Each of the three undoes itself and their order does not matter, so a view is its own way back.
/// </remarks>
/// <param name="Mirrored">True for a port whose centre side lies left seen from the flange.</param>
/// <param name="Head">Which head, for words only.</param>
/// <param name="Cylinder">Which cylinder, for words only.</param>
/// <param name="AtEnd">True for a port at the end of the head, for words only.</param>
public sealed record View(SeenFrom SeenFrom = SeenFrom.Flange, Lying Lying = Lying.Upright, bool Mirrored = false, string Head = "", int? Cylinder = null, bool AtEnd = false)
{
    /// <summary>The eight ways to see a port, words left out.</summary>
    public static IReadOnlyList<View> All { get; } =
    [
        .. from mirrored in new[] { false, true }
           from seen in new[] { SeenFrom.Flange, SeenFrom.Chamber }
           from lying in new[] { Lying.Upright, Lying.Inverted }
           select new View(seen, lying, mirrored),
    ];

    /// <summary>True when the screen shows the port as in a mirror of the record.</summary>
    public bool SwapsSides => Mirrored != (SeenFrom == SeenFrom.Chamber);

    /// <summary>The screen's clock hour, above 0 up to 12, of a recorded bearing, in hours.</summary>
    /// <param name="bearingHours">Clock as the record keeps it, in hours, any finite number.</param>
    public double ToScreen(double bearingHours)
    {
        var hours = SwapsSides ? -bearingHours : bearingHours;
        return Bearing.Clock(Lying == Lying.Inverted ? hours + 6 : hours);
    }

    /// <summary>The recorded bearing of the screen's clock hour, in hours.</summary>
    /// <param name="screenHours">Clock on the screen, in hours, any finite number.</param>
    public double ToRecord(double screenHours) => ToScreen(screenHours);

    /// <summary>A point of the section as it lies on the screen: X right, Y up, m.</summary>
    public PlanePoint ToScreen(PlanePoint recorded)
    {
        var turned = Lying == Lying.Inverted;
        return new(turned != SwapsSides ? -recorded.X : recorded.X, turned ? -recorded.Y : recorded.Y);
    }

    /// <summary>The point of the section under a point of the screen, m.</summary>
    public PlanePoint ToRecord(PlanePoint screen) => ToScreen(screen);

    /// <summary>The same port seen from its other end.</summary>
    public View FromOtherEnd() => this with { SeenFrom = SeenFrom == SeenFrom.Flange ? SeenFrom.Chamber : SeenFrom.Flange };

    /// <summary>The same port with the head turned over.</summary>
    public View TurnedOver() => this with { Lying = Lying == Lying.Upright ? Lying.Inverted : Lying.Upright };
}
