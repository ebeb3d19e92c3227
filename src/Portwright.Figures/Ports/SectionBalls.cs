using Portwright.Shop.Balls;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>Balls where they were held, to scale, the shape of their answer in the middle, measured and expected loss beside.</summary>
internal static class SectionBalls
{
    public static void Draw(SectionSheet sheet, double width)
    {
        var balls = Latest(sheet);
        if (balls.Count == 0)
        {
            sheet.Empty = "No ball yet. Hold a ball at an hour and read the flow: what it takes shows how the air works there.";
            return;
        }

        foreach (var ball in balls)
        {
            if (ball.Point is { } point) Ring(sheet.Pen, sheet.Frame, ball, sheet.Frame.At(point), sheet.Thick(1.2));
        }

        foreach (var ball in balls)
        {
            sheet.Said.Add((ball.Bearing, $"ball {SurveyWords.Of(ball).In(sheet.Units)}"));
            var (loss, answer) = BallMark.Short(ball, sheet.Units);
            var at = ball.Point is { } point ? sheet.Frame.At(point) : sheet.Frame.At(sheet.Frame.Outline.BearingCentre);
            if (ball.Bearing is { } hours)
            {
                sheet.Labels.Put(
                    sheet.Pen, at, hours,
                    [(loss, Role.Ink, Weight.SemiBold), (answer, Role.Quiet, Weight.Regular)], 1.75 * sheet.Text);
            }

            BallMark.Draw(sheet.Pen, at, sheet.Thick(7), ball.Response?.Answer, sheet.Thick(1.6));
        }

        var check = balls[0].Check.Fact;
        var caption = $"{Print.UnitName(Dimension.VolumeFlow, sheet.Units)} lost of expected, ball {Inch(check.Ball.Si(Dimension.Length), sheet.Units)} at {Print.Number(check.Setting.Lift.Si(Dimension.Lift), Dimension.Lift, sheet.Units)} lift";
        sheet.Under(caption, width);
    }

    /// <summary>The ball's own size, to scale.</summary>
    public static void Ring(Pen pen, SectionFrame frame, BallPlace ball, Place at, double thick) =>
        pen.Circle(at, frame.Px(ball.Check.Fact.Ball.Si(Dimension.Length) / 2), null, new Stroke(Role.Quiet, thick));

    private static string Inch(double metres, UnitSystem units) => $"{Print.Bare(metres, Dimension.Lift, units)} {Print.UnitName(Dimension.Length, units)}";

    private static List<BallPlace> Latest(SectionSheet sheet)
    {
        var checks = sheet.Survey.BallChecks.Select(c => c.Check.Id).ToList();
        return [.. sheet.Station.Balls.GroupBy(b => b.Bearing).Select(g => g.MaxBy(b => checks.IndexOf(b.Check.Id))!)];
    }
}
