using Portwright.Shop.Budgets;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>Where the doubt comes from, number by number: where a better bench would show first, and what another shop would have to believe.</summary>
public static class DoubtSaid
{
    /// <summary>Stands before the key of the number whose table it is.</summary>
    public const string BlockOf = "doubt-of-";

    internal static Part Of(PortAtCut port, BudgetDetail detail)
    {
        var words = new SourceWords(port.Ledger, port.Sheet.Port.Id);
        return new Part("doubt", $"Where the doubt comes from",
            [.. PortNumber.Of(port).Where(n => n.IsMain || detail == BudgetDetail.Whole).Select(n => Of(n, words, detail))], Reader.Engineer);
    }

    /// <summary>One number by itself: its causes, then what was typed.</summary>
    public static Document Alone(PortAtCut port, PortNumber number, BudgetDetail detail)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(number);
        var words = new SourceWords(port.Ledger, port.Sheet.Port.Id);
        List<Part> parts = [new("doubt", $"Where the doubt comes from", [Of(number, words, detail).Filled()])];
        if (Typed(number, words) is { Rows.Count: > 0 } typed) parts.Add(new("typed", $"What was typed", [typed.Filled()]));
        return new Document($"{SheetOf.Title(port.Sheet)}: {number.Name}", SheetOf.Place(port.Sheet), parts, []);
    }

    private static Table Typed(PortNumber number, SourceWords words) => new(
        "as-typed",
        $"As the record has it, letter for letter",
        [
            new("of", $"of"), new("typed", $"as typed", Strong: true), new("lift", $"lift"), new("pressure", $"test pressure"), new("moves", $"moves it by", number.Dimension),
        ],
        [.. words.Raw(number.Estimate).Select(r => (IReadOnlyList<Cell>)
        [
            new(r.Reading.What), new(Sentence.Plain(r.Reading.Typed)), new(Sentence.Plain(r.Reading.Lift)), new(Sentence.Plain(r.Reading.Pressure)),
            r.Amount is { } amount ? new($"{new Quantity(amount, number.Dimension, Figures: 2, Signed: true)}") : Cell.Empty,
        ])],
        $"Moves it by: its own last digit, or the probe's scatter, one standard step. What it shares with others stands above.");

    /// <summary>The table of one number.</summary>
    public static Table Of(PortNumber number, SourceWords words, BudgetDetail detail)
    {
        ArgumentNullException.ThrowIfNull(number);
        return BudgetTable.Of(BlockOf + number.Key, $"{number.Name.Capital()}: {number.Printed}", Budget.For(number.Estimate, number.Dimension, words), detail);
    }
}
