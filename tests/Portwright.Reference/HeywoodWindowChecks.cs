using Portwright.Physics.Valves;

namespace Portwright.Reference;

/// <summary>Minimum valve flow area: Heywood, Internal Combustion Engine Fundamentals (1988), equations 6.7, 6.8 and 6.9.</summary>
public sealed class HeywoodWindowChecks
{
    private const double Mm = 1e-3, Mm2 = 1e-6;

    public static TheoryData<PublishedCase> Cases =>
        [.. PublishedCases.Read("valve-port-engine", "window-"), .. PublishedCases.Read("geometry-and-flow", "window-b-")];

    [Theory, MemberData(nameof(Cases))]
    public void The_window_is_as_published(PublishedCase c)
    {
        var seat = new ValveSeat(c.In("valve_head_mm") * Mm, c.In("seat_angle_deg") * Math.PI / 180, c.In("seat_width_mm") * Mm,
            c.In("port_inner_mm") * Mm, c.In("stem_mm") * Mm);
        var window = ValveWindow.At(seat, c.In("lift_mm") * Mm);
        c.Check("regime", window.Regime);
        c.Check("area_mm2", window.Area / Mm2);
        c.Check("lift_1_2_mm", ValveWindow.FirstRegimeEnds(seat) / Mm);
        c.Check("lift_2_3_mm", ValveWindow.ThroatTakesOver(seat) / Mm);
        c.Check("curtain_area_mm2", window.CurtainArea / Mm2);
        c.Check("lift_over_diameter", window.LiftOverDiameter);
        if (c.Expected.ContainsKey("throat_area_mm2")) c.Check("throat_area_mm2", window.ThroatArea / Mm2);
    }
}
