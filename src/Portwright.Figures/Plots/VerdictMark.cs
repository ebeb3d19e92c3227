using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>
/// The shape of a verdict, that stands beside its words: filled triangle up a real gain, down a real loss, hollow circle inside the noise, dotted circle
/// with a cross not enough readings.
/// </summary>
public static class VerdictMark
{
    /// <summary>The shape as a small drawing of its own, 14 by 14, to stand before words.</summary>
    /// <param name="words">Those that stand beside it: the shape's name.</param>
    public static Drawing Draw(VerdictShape shape, string words)
    {
        var pen = new Pen();
        Draw(pen, new(7, 7), 5.4, shape, 1.6);
        return pen.Done(14, 14, words, "");
    }

    /// <summary>Draws the shape about a centre.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No shape, or one that is not known here.</exception>
    public static void Draw(Pen pen, Place centre, double radius, VerdictShape shape, double thick, Role role = Role.Blue)
    {
        ArgumentNullException.ThrowIfNull(pen);
        switch (shape)
        {
            case VerdictShape.Gain or VerdictShape.Loss:
                var up = shape == VerdictShape.Loss ? 1 : -1;
                pen.Area(
                    [
                        new(centre.X, centre.Y + up * radius * 1.15),
                        new(centre.X - radius * 1.1, centre.Y - up * radius * 0.8),
                        new(centre.X + radius * 1.1, centre.Y - up * radius * 0.8),
                    ],
                    role);
                break;
            case VerdictShape.Noise:
                pen.Circle(centre, radius * 0.9, Role.Ground, new Stroke(role, thick));
                break;
            case VerdictShape.Unsure:
                pen.Circle(centre, radius * 0.9, Role.Ground, new Stroke(Role.Quiet, thick, LineType.Dotted));
                var arm = radius * 0.45;
                pen.Segments(
                    [
                        (new(centre.X - arm, centre.Y - arm), new(centre.X + arm, centre.Y + arm)),
                        (new(centre.X - arm, centre.Y + arm), new(centre.X + arm, centre.Y - arm)),
                    ],
                    new Stroke(Role.Quiet, thick));
                break;
            default: throw new ArgumentOutOfRangeException(nameof(shape), shape, "A verdict's shape.");
        }
    }
}
