using Portwright.Physics.Uncertainty;

namespace Portwright.Figures;

/// <summary>
/// The shape and the words of a verdict: filled triangle up a real gain, down a real loss, hollow circle inside the noise, dotted circle
/// with a cross not enough readings.
/// </summary>
public static class VerdictMark
{
    /// <summary>In a few words.</summary>
    public static string Words(Verdict verdict, double difference) => verdict switch
    {
        Verdict.Real => difference < 0 ? "real loss" : "real gain",
        Verdict.InsideTheNoise => "inside the noise",
        _ => "not enough readings",
    };

    /// <summary>The shape as a letter, for a terminal.</summary>
    public static string Letter(Verdict verdict, double difference) => verdict switch
    {
        Verdict.Real => difference < 0 ? "▼" : "▲",
        Verdict.InsideTheNoise => "○",
        _ => "×",
    };

    /// <summary>The shape as a small drawing of its own, 14 by 14, to stand before words.</summary>
    public static Drawing Draw(Verdict verdict, double difference)
    {
        var pen = new Pen();
        Draw(pen, new(7, 7), 5.4, verdict, difference, 1.6);
        return pen.Done(14, 14, Words(verdict, difference), "");
    }

    /// <summary>Draws the shape about a centre.</summary>
    public static void Draw(Pen pen, Place centre, double radius, Verdict verdict, double difference, double thick, Role role = Role.Blue)
    {
        switch (verdict)
        {
            case Verdict.Real:
                var up = difference < 0 ? 1 : -1;
                pen.Area(
                    [
                        new(centre.X, centre.Y + up * radius * 1.15),
                        new(centre.X - radius * 1.1, centre.Y - up * radius * 0.8),
                        new(centre.X + radius * 1.1, centre.Y - up * radius * 0.8),
                    ],
                    role);
                break;
            case Verdict.InsideTheNoise:
                pen.Circle(centre, radius * 0.9, Role.Ground, new Stroke(role, thick));
                break;
            default:
                pen.Circle(centre, radius * 0.9, Role.Ground, new Stroke(Role.Quiet, thick, LineType.Dotted));
                var arm = radius * 0.45;
                pen.Segments(
                    [
                        (new(centre.X - arm, centre.Y - arm), new(centre.X + arm, centre.Y + arm)),
                        (new(centre.X - arm, centre.Y + arm), new(centre.X + arm, centre.Y - arm)),
                    ],
                    new Stroke(Role.Quiet, thick));
                break;
        }
    }
}
