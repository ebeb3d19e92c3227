using Portwright.Shop.Budgets;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>
/// What a port sheet says, once: the first sections answer what it is, what it flows, whether the cut was real and what to leave alone;
/// then what else was seen; then what the engineer wants.
/// </summary>
public static class PortDocument
{
    /// <summary>All of it: for the porter, and behind a fold for the engineer.</summary>
    /// <param name="printed">The day it is laid out, stated beside the day of the test; null where no day is told.</param>
    /// <param name="doubt">How far the budgets are told; programs want every cause.</param>
    public static Document Of(PortAtCut port, DateOnly? printed = null, BudgetDetail doubt = BudgetDetail.Main)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Made(port, printed, [.. Porter(port, printed), .. Engineer(port, doubt)]);
    }

    /// <summary>Without what is for the engineer, which is not made: a shorter document, asked for as such; no layout shortens one.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    public static Document ForThePorter(PortAtCut port, DateOnly? printed = null)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Made(port, printed, Porter(port, printed));
    }

    private static Part?[] Porter(PortAtCut port, DateOnly? printed) =>
    [
        SheetOf.What(port, printed),
        FlowSaid.Of(port),
        FirstEvening.Surer(port),
        FindingsSaid.Of(port),
        FindingsSaid.ReadNext(port),
        FlowSaid.OverLift(port),
        RemarksSaid.Cautions(port),
        FirstEvening.WhereToCut(port),
        AgainstSaid.Of(port),
        ShapeSaid.Of(port),
        BallsSaid.Of(port),
        EngineSaid.Of(port),
        BenchSaid.Of(port),
        RemarksSaid.Of(port),
    ];

    private static Part?[] Engineer(PortAtCut port, BudgetDetail doubt) =>
    [
        ShapeSaid.RoundEach(port),
        ReadingsSaid.Of(port),
        WindowSaid.Of(port),
        DoubtSaid.Of(port, doubt),
        FindingsSaid.Why(port),
        FindingsSaid.Weighed(port),
        EngineSaid.ForTheEngineer(port),
    ];

    private static Document Made(PortAtCut port, DateOnly? printed, IEnumerable<Part?> parts) => new(
        SheetOf.Title(port.Sheet),
        SheetOf.Place(port.Sheet),
        [.. parts.OfType<Part>().Where(p => p.Blocks.Count > 0).Select(p => p with { Blocks = [.. p.Blocks.Select(b => b is Table table ? table.Filled() : b)] })],
        SheetOf.TitleBlock(port, printed));
}
