namespace Portwright.Shop.Plan;

/// <summary>Usual firing orders, even intervals; common practice, no source.</summary>
internal static class FiringOrders
{
    public static IReadOnlyList<int> Usual(int cylinders) => cylinders switch
    {
        3 => [1, 3, 2],
        4 => [1, 3, 4, 2],
        5 => [1, 2, 4, 5, 3],
        6 => [1, 5, 3, 6, 2, 4],
        8 => [1, 8, 4, 3, 6, 5, 7, 2],
        _ => [.. Enumerable.Range(1, cylinders)],
    };

    /// <summary>How many primaries usually meet: the most, up to four, that shares the cylinders out evenly.</summary>
    public static int PrimariesACollector(int cylinders) =>
        Enumerable.Range(1, Math.Min(4, cylinders)).Last(n => cylinders % n == 0);

    public static bool Holds(IReadOnlyList<int> order, int cylinders) =>
        order.Count == cylinders && order.Order().SequenceEqual(Enumerable.Range(1, cylinders));
}
