using Portwright.Geometry.Views;

namespace Portwright.Figures;

public static partial class OrientationMark
{
    /// <summary>
    /// The mark of a view, 28 high: the head with the port off its middle on the cylinder-wall side, a port's mouth from the flange or a valve
    /// in its seat from the chamber, an arrow towards the roof. Every one of the eight views has its own.
    /// </summary>
    public static Drawing Of(View view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var pen = new Pen();
        var head = new Box(1, 4, 42, 20);
        pen.Box(head, 3, null, new Stroke(Role.Quiet, 1.4));
        // The middle of the head, where the centre side looks to.
        var centreRight = view.ToScreen(new Geometry.PlanePoint(1, 0)).X > 0;
        var middle = head.Centre.X + (centreRight ? 9 : -9);
        pen.Line(middle, head.Y - 3, middle, head.Bottom + 3, new Stroke(Role.Quiet, 1.2, LineType.LongDashDot));
        var at = new Place(head.Centre.X + (centreRight ? -7 : 7), head.Centre.Y);
        if (view.SeenFrom == SeenFrom.Flange)
        {
            pen.Area(PortShape.Outline(new Box(at.X - 5.5, at.Y - 7, 11, 14)), Role.Blue);
        }
        else
        {
            pen.Circle(at, 7.4, null, new Stroke(Role.Blue, 1.6));
            pen.Circle(at, 4.2, Role.Blue);
        }

        var roofUp = view.Lying == Lying.Upright;
        var x = head.Right + 7;
        var (tail, tip, back) = roofUp ? (24.0, 4.0, 9.5) : (4.0, 24.0, 18.5);
        pen.Segments([(new(x, tail), new(x, tip)), (new(x, tip), new(x - 4, back)), (new(x, tip), new(x + 4, back))], new Stroke(Role.Quiet, 1.6));
        var words = $"Seen {view.Describe()}: roof {(roofUp ? "up" : "down")}, centre side {(centreRight ? "right" : "left")}.";
        return pen.Done(x + 6, 28, "How the port is seen", words);
    }
}
