using Portwright.Physics.Statistics;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>How far a budget is told.</summary>
public enum BudgetDetail
{
    /// <summary>Causes worth telling; the others as one row.</summary>
    Main,

    /// <summary>Every cause by itself.</summary>
    Each,

    /// <summary>Every cause, with its name in the record, what shares it, degrees of freedom and sensitivity in columns of their own: for programs.</summary>
    Whole,
}

/// <summary>A budget as a table.</summary>
public static class BudgetTable
{
    public static Table Of(string key, Sentence caption, Budget budget, BudgetDetail detail)
    {
        ArgumentNullException.ThrowIfNull(budget);
        var (every, whole) = (detail != BudgetDetail.Main, detail == BudgetDetail.Whole);
        List<Column> columns =
        [
            new("cause", $"cause"), new("moves", $"moves it by", budget.Dimension, Strong: true), new("share", $"share", Dimension.Fraction),
            new("step", $"its own step"), new("distribution", $"distribution"),
        ];
        if (whole)
        {
            columns.AddRange([
                new("shared", $"shared by"), new("degrees-of-freedom", $"degrees of freedom"), new("sensitivity", $"per SI unit of the cause"), new("kind", $"kind"), new("pool", $"size known with"),
                new("source", $"name"), new("facts", $"facts"),
            ]);
        }

        List<IReadOnlyList<Cell>> rows = [.. (every ? budget.Causes : budget.Causes.Where(c => c.Share >= Budget.WorthTelling)).Select(c => Row(c, budget, whole))];
        if (!every && Others(budget) is { } others) rows.Add(others);
        return new Table(key, caption, columns, rows, Together(budget));
    }

    private static List<Cell> Row(BudgetCause cause, Budget budget, bool whole)
    {
        List<Cell> row =
        [
            new(whole ? cause.Words : cause.InFull),
            new($"{Moves(cause.Of.Amount, budget)}"),
            new($"{Share(cause.Share)}"),
            cause.Source?.Step is { } step ? new($"{step}") : Cell.Empty,
            new(cause.Distribution),
        ];
        if (whole)
        {
            row.AddRange([
                new(cause.Source?.Shared ?? Sentence.Empty),
                double.IsFinite(cause.Of.DegreesOfFreedom) ? new($"{Quantity.Ratio(cause.Of.DegreesOfFreedom)}") : Cell.Empty,
                cause.Sensitivity is { } sensitivity ? new($"{Quantity.Ratio(sensitivity, 4)}") : Cell.Empty,
                new(Sentence.Plain(cause.Of.Kind.ToString().ToLowerInvariant())),
                new(Sentence.Plain(cause.Of.Pool)),
                new(Sentence.Plain(cause.Of.Source)),
                new(Sentence.Plain(string.Join(' ', cause.Source?.Behind ?? []))),
            ]);
        }

        return row;
    }

    private static List<Cell>? Others(Budget budget)
    {
        BudgetCause[] small = [.. budget.Causes.Where(c => c.Share < Budget.WorthTelling)];
        if (small.Length == 0) return null;
        var size = Math.Sqrt(small.Sum(c => c.Of.Amount * c.Of.Amount));
        return [new($"{(small.Length == 1 ? "1 other" : $"{small.Length} others")}"), new($"{new Quantity(size, budget.Dimension, Figures: 2)}"), new($"{Share(small.Sum(c => c.Share))}"), Cell.Empty, Cell.Empty];
    }

    /// <summary>From the causes to the ± that is printed.</summary>
    private static Sentence Together(Budget budget)
    {
        var of = budget.Of;
        if (of.StandardUncertainty == 0) return $"Nothing is in doubt about it.";
        var degrees = of.EffectiveDegreesOfFreedom;
        Sentence student = double.IsInfinity(degrees) ? (Sentence)$"sizes taken as known" : $"Student, {BudgetCause.Degrees(degrees)} degrees of freedom";
        return $"Together {new Quantity(of.StandardUncertainty, budget.Dimension, Figures: 2)} standard, the root of the sum of squares; ± is {Student.TwoSidedFactor(0.95, degrees):0.00} times that ({student}).";
    }

    private static Quantity Moves(double amount, Budget budget) => new(amount, budget.Dimension, Figures: 2, Signed: true);

    private static Quantity Share(double share) => Quantity.Share(share).About(2);
}
