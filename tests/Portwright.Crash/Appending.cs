using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Crash;

/// <summary>Saves one unit after the other and says so on standard output once it is saved, for ever.</summary>
internal static class Appending
{
    public static Guid Job { get; } = new("11111111-1111-4111-8111-111111111111");

    public static void Run(string folder, int from)
    {
        using var journal = Journal.Open(folder);
        var output = Console.OpenStandardOutput();
        for (var next = from; ;)
        {
            var unit = UnitFrom(next);
            journal.Append(unit);
            next += unit.Count;
            // Past here the promise is given.
            output.Write(System.Text.Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{next}\n")));
            output.Flush();
        }
    }

    /// <summary>Entries 0, 1, 2 are saved together, 3 and 4 each alone, 5, 6, 7 together and so on.</summary>
    public static IReadOnlyList<Entry> UnitFrom(int index) =>
        index % 5 == 0 ? [EntryAt(index), EntryAt(index + 1), EntryAt(index + 2)] : [EntryAt(index)];

    /// <summary>True where a unit may end with this many entries saved.</summary>
    public static bool IsWhole(int count) => count % 5 is 0 or 3 or 4;

    public static int IndexOf(Entry entry) => BitConverter.ToInt32(entry.Number.ToByteArray(), 0);

    public static Entry EntryAt(int index) => new(
        new Guid(index, 7, 7, 1, 2, 3, 4, 5, 6, 7, 8),
        Job,
        Job,
        DateTimeOffset.UnixEpoch.AddSeconds(index),
        "J.",
        "typed",
        new Cut(Job, index, $"short side laid back, pass {index}", new DateOnly(2026, 3, 1)));
}
