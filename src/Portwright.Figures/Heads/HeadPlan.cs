using Portwright.Shop.Record;

namespace Portwright.Figures;

/// <summary>Measures of a head drawn from above, by the distance of its cylinders.</summary>
/// <param name="Pitch">From cylinder to cylinder.</param>
/// <param name="Text">Size of the letters; 0 where none are written.</param>
/// <param name="Beside">Intakes and exhausts on one flange.</param>
internal sealed record HeadPlan(double Pitch, double Text, bool Beside)
{
    private const int Pieces = 14;

    /// <summary>Radius of a cylinder.</summary>
    public double Bore => Math.Min(0.36 * Pitch, 52);

    /// <summary>From flange to flange.</summary>
    public double Metal => Beside ? 3.1 * Bore : 3.9 * Bore;

    public double WordsAbove => Beside || Text == 0 ? 0 : 4.1 * Text;

    public double WordsBelow => Text == 0 ? 0 : 4.3 * Text;

    /// <summary>Where a port opens at its flange.</summary>
    public double MouthOf(Place middle, int half) => middle.X + half * (Beside ? Math.Max(0.25 * Pitch, 0.7 * Bore) : 0.78 * Bore);

    /// <summary>The port from its flange to its valve, the valve, and the filled corner at the centre side.</summary>
    /// <param name="stands">The half it is drawn in.</param>
    /// <param name="half">The half its centre side says it lies in: the other one where two ports of a flange would lie on top of each other.</param>
    public void Draw(Pen pen, Port port, int stands, int half, bool up, Place middle, Box metal, Role role)
    {
        var valve = (port.Kind == PortKind.Intake ? 0.4 : 0.34) * Bore;
        var across = Beside ? 0 : (up ? -0.2 : 0.2) * Bore;
        var seat = new Place(middle.X + stands * 0.47 * Bore, middle.Y + across);
        var mouth = new Place(MouthOf(middle, stands), up ? metal.Y : metal.Bottom);
        var (near, far) = Walls(mouth, seat, 0.36 * Bore * (port.Kind == PortKind.Intake ? 1 : 0.88), valve * 0.8);
        pen.Area([.. near, .. far.AsEnumerable().Reverse()], Role.Panel);
        pen.Polyline(near, new Stroke(role, 2));
        pen.Polyline(far, new Stroke(role, 2));
        pen.Circle(seat, valve, Role.Wash, new Stroke(role, 2));
        pen.Circle(seat, 0.1 * Bore, role);
        // The centre side of the mouth: towards the middle of the cylinder.
        var side = -half;
        var corner = mouth.X + side * 0.36 * Bore * (port.Kind == PortKind.Intake ? 1 : 0.88);
        var inward = up ? 1 : -1;
        pen.Area([new(corner, mouth.Y), new(corner - side * 0.42 * Bore, mouth.Y), new(corner, mouth.Y + inward * 0.42 * Bore)], role);
    }

    /// <summary>Two walls along a bend that leaves the flange square and turns to the valve.</summary>
    private static (List<Place> Near, List<Place> Far) Walls(Place mouth, Place seat, double wide, double narrow)
    {
        var lead = 0.62 * (seat.Y - mouth.Y);
        Place[] hull = [mouth, new(mouth.X, mouth.Y + lead), new(seat.X + 0.25 * (mouth.X - seat.X), seat.Y - 0.3 * (seat.Y - mouth.Y)), seat];
        List<Place> near = [], far = [];
        for (var i = 0; i <= Pieces; i++)
        {
            var t = (double)i / Pieces;
            var u = 1 - t;
            var (a, b, c, d) = (u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t);
            var x = a * hull[0].X + b * hull[1].X + c * hull[2].X + d * hull[3].X;
            var y = a * hull[0].Y + b * hull[1].Y + c * hull[2].Y + d * hull[3].Y;
            var w = wide + (narrow - wide) * t;
            near.Add(new(x - w, y));
            far.Add(new(x + w, y));
        }

        return (near, far);
    }
}
