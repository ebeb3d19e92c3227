using Portwright.Shop.Balls;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>A ball's loss in a porter's words.</summary>
internal static class BallWords
{
    /// <summary><c>ball lost 2.1 cfm of 7.4 expected</c>, <c>with the ball .9 cfm more</c>.</summary>
    public static string Loss(BallPlace ball, UnitSystem units)
    {
        var unit = Print.UnitName(Dimension.VolumeFlow, units);
        var loss = Print.Bare(Math.Abs(ball.Loss.Value), Dimension.VolumeFlow, units);
        if (ball.Loss.Value < 0) return $"flow rose {loss} {unit} with the ball";
        return ball.Expected is { } expected
            ? $"ball lost {loss} {unit} of {Print.Bare(expected.Value, Dimension.VolumeFlow, units)} expected"
            : $"ball lost {loss} {unit}";
    }

    /// <summary><c>2.1 of 7.4</c>; a rise of the flow as <c>rose 0.9</c>.</summary>
    public static string Short(BallPlace ball, UnitSystem units)
    {
        var loss = Print.Bare(Math.Abs(ball.Loss.Value), Dimension.VolumeFlow, units);
        if (ball.Loss.Value < 0) return $"rose {loss}";
        return ball.Expected is { } expected ? $"{loss} of {Print.Bare(expected.Value, Dimension.VolumeFlow, units)}" : loss;
    }

    /// <summary>The answer in the fewest words.</summary>
    public static string Answer(BallPlace ball) => ball.Response?.Answer == Physics.Drag.BallAnswer.Busier ? "busier" : BallMark.Words(ball.Response?.Answer);
}
