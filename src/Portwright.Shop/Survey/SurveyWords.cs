using Portwright.Physics.Drag;
using Portwright.Shop.Balls;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Survey;

/// <summary>Observations in a porter's words, the same on page, paper and command line.</summary>
public static class SurveyWords
{
    public static string Of(BallAnswer answer) => answer switch
    {
        BallAnswer.Busier => "busier than its area",
        BallAnswer.Working => "working",
        BallAnswer.Lazy => "lazy",
        BallAnswer.TornOff => "torn off",
        _ => "cannot be told yet",
    };

    public static string Of(Steadiness steadiness) => steadiness switch
    {
        Steadiness.Still => "still",
        Steadiness.Trembles => "trembles",
        Steadiness.Swings => "swings",
        Steadiness.Hangs => "hangs",
        Steadiness.TurnsBack => "turns back",
        _ => throw new ArgumentOutOfRangeException(nameof(steadiness), steadiness, "unknown steadiness"),
    };

    /// <summary><c>lost 2.1 of 7.4 cfm expected: lazy</c>.</summary>
    public static string Of(BallPlace place, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(place);
        var size = Print.Bare(Math.Abs(place.Loss.Value), Dimension.VolumeFlow, units, 1);
        var unit = Print.UnitName(Dimension.VolumeFlow, units);
        var rose = place.Loss.Value < 0;
        if (place is not { Response: { } response, Expected: { } expected })
        {
            return $"{(rose ? "rose by" : "lost")} {size} {unit}. {place.Problem}";
        }

        var moving = Print.Bare(expected.Value, Dimension.VolumeFlow, units, 1);
        return rose
            ? $"rose by {size} {unit} where moving air would lose {moving}: {Of(response.Answer)}"
            : $"lost {size} of {moving} {unit} expected: {Of(response.Answer)}";
    }
}
