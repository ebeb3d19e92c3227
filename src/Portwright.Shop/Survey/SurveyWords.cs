using Portwright.Physics.Drag;
using Portwright.Shop.Balls;
using Portwright.Shop.Record;
using Portwright.Shop.Words;

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
        _ => "the ball alone cannot tell",
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

    /// <summary>Key of what was expected, from that of the loss.</summary>
    internal static string ExpectedIn(string budget) => budget + "-expected";

    /// <summary><c>lost 2.1 of 7.4 cfm expected: lazy</c>.</summary>
    /// <param name="budget">Key of the loss's budget; empty where there is none.</param>
    public static Sentence Of(BallPlace place, string budget = "")
    {
        ArgumentNullException.ThrowIfNull(place);
        var size = Quantity.Flow(Math.Abs(place.Loss.Value)).By(budget);
        string BudgetOfExpected() => budget.Length > 0 ? ExpectedIn(budget) : "";
        var rose = place.Loss.Value < 0;
        if (place is not { Response: { } response, Expected: { } expected })
        {
            return $"{(rose ? "rose by" : "lost")} {size}. {place.Problem}";
        }

        return rose
            ? (Sentence)$"rose by {size} where moving air would lose {Quantity.Flow(expected.Value).By(BudgetOfExpected())}: {Of(response.Answer)}"
            : $"lost {size with { WithoutUnit = true }} of {Quantity.Flow(expected.Value).By(BudgetOfExpected())} expected: {Of(response.Answer)}";
    }
}
