using Portwright.Physics.Drag;
using Portwright.Shop.Balls;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures;

/// <summary>
/// The shape and the words of what a ball says: filled, working; filled in a ring, busier; hollow, lazy; hollow with a cross, torn off;
/// dotted, undecided. Each can be told without colour.
/// </summary>
public static class BallMark
{
    /// <summary>In a word or two; null: nothing could be expected of the place.</summary>
    public static string Words(BallAnswer? answer) => answer switch
    {
        null => "not judged",
        BallAnswer.Undecided => "undecided",
        { } told => SurveyWords.Of(told),
    };

    /// <summary>Beside the shape, in the fewest words: <c>2.1 of 7.4</c>, a rise of the flow as <c>rose 0.9</c>; and the answer.</summary>
    internal static (string Loss, string Answer) Short(BallPlace ball, UnitSystem units)
    {
        var size = Quantity.Flow(Math.Abs(ball.Loss.Value));
        Sentence loss = ball.Loss.Value < 0 ? (Sentence)$"rose {size}" : ball.Expected is { } expected ? (Sentence)$"{size} of {Quantity.Flow(expected.Value)}" : $"{size}";
        return (loss.BareIn(units), ball.Response?.Answer == BallAnswer.Busier ? "busier" : Words(ball.Response?.Answer));
    }

    /// <summary>The more it matters, the higher: which of several answers at one place is shown.</summary>
    internal static int Weight(BallAnswer? answer) => answer switch
    {
        BallAnswer.TornOff => 5,
        BallAnswer.Lazy => 4,
        BallAnswer.Busier => 3,
        BallAnswer.Undecided => 2,
        BallAnswer.Working => 1,
        _ => 0,
    };

    /// <summary>Draws the shape about a centre.</summary>
    public static void Draw(Pen pen, Place centre, double radius, BallAnswer? answer, double thick)
    {
        ArgumentNullException.ThrowIfNull(pen);
        var line = new Stroke(Role.Ink, thick);
        switch (answer)
        {
            case BallAnswer.Working:
                pen.Circle(centre, radius, Role.Ink, line);
                break;
            case BallAnswer.Busier:
                pen.Circle(centre, radius, Role.Ground, line);
                pen.Circle(centre, radius * 0.5, Role.Ink);
                break;
            case BallAnswer.Lazy:
                pen.Circle(centre, radius, Role.Ground, line);
                break;
            case BallAnswer.TornOff:
                pen.Circle(centre, radius, Role.Ground, line);
                var arm = radius * 0.62;
                pen.Segments(
                    [
                        (new(centre.X - arm, centre.Y - arm), new(centre.X + arm, centre.Y + arm)),
                        (new(centre.X - arm, centre.Y + arm), new(centre.X + arm, centre.Y - arm)),
                    ],
                    line);
                break;
            default:
                pen.Circle(centre, radius, Role.Ground, new Stroke(Role.Quiet, thick, LineType.Dotted));
                break;
        }
    }

    /// <summary>A row of the shapes drawn, each with its word; true widths, so that it never leaves the room.</summary>
    internal static void Row(Pen pen, double left, double right, double y, double text, IEnumerable<BallAnswer?> drawn, string heading = "balls")
    {
        var kinds = drawn.Distinct().OrderByDescending(Weight).ToList();
        if (kinds.Count == 0) return;
        var x = left;
        pen.Text(x, y, heading, text, Role.Quiet);
        x += Lettering.Width(heading, text) + 0.9 * text;
        foreach (var kind in kinds)
        {
            var words = Words(kind);
            if (x + 1.2 * text + Lettering.Width(words, text) > right) break;
            Draw(pen, new(x + 0.4 * text, y - 0.33 * text), 0.4 * text, kind, text / 9);
            pen.Text(x + 1.2 * text, y, words, text, Role.Quiet);
            x += 1.2 * text + Lettering.Width(words, text) + text;
        }
    }
}
