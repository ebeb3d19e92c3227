using System.Diagnostics;
using Portwright.Judging.Faults;
using Portwright.Judging.Shops;

namespace Portwright.Judging.Trial;

/// <summary>One made shop and what was said of it.</summary>
/// <param name="Number">Makes the shop again.</param>
/// <param name="Fault">Null in a healthy one.</param>
/// <param name="ReadEnough">What was read suffices to tell the fault.</param>
/// <param name="Broke">What the program threw instead of an answer.</param>
public sealed record Tried(long Number, Fault? Fault, Size Size, IReadOnlyList<Said> Said, bool ReadEnough, string? Broke)
{
    /// <summary>Shop so-many of a fault and size; of the healthy ones where there is no fault.</summary>
    public static long NumberOf(Fault? fault, Size size, int i)
    {
        if (fault is null) return i;
        // FNV-1a: a fault added later leaves the others' shops as they are.
        var hash = fault.Name.Aggregate(2166136261u, (h, c) => unchecked((h ^ c) * 16777619u));
        return 100_000_000L * (1 + hash % 1_000_000) + 10_000_000L * (int)size + i;
    }

    public static Tried Once(long seed, Fault? fault, Size size, int i)
    {
        var number = NumberOf(fault, size, i);
        var shop = MadeShop.Of(seed, number, fault, size);
        var enough = fault?.IsReadEnough(shop, size) ?? true;
        try
        {
            return new Tried(number, fault, size, Asking.Of(shop), enough, null);
        }
        catch (Exception trouble) when (trouble is ArgumentException or InvalidOperationException or ArithmeticException or KeyNotFoundException)
        {
            return new Tried(number, fault, size, [], enough, $"{Where(trouble)}: {trouble.GetType().Name}: {trouble.Message.Split('\n')[0]}");
        }
    }

    /// <summary>The program's own type that gave up.</summary>
    private static string? Where(Exception trouble) =>
        new StackTrace(trouble).GetFrames().Select(f => f.GetMethod()?.DeclaringType?.FullName).FirstOrDefault(n => n?.StartsWith("Portwright.Shop.", StringComparison.Ordinal) == true);

    /// <summary>The planted fault was said of its port.</summary>
    public bool Found(double chance) => Fault is not null && Said.Any(s => s.Became == Became.True && Fault.Found.Contains(s.Key) && s.Chance >= chance);

    public bool AnyFalse(double above) => Said.Any(s => s.Became == Became.False && s.Chance > above);
}
