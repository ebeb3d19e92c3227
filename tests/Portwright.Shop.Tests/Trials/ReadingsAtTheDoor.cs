using Portwright.Judging.Shops;
using Portwright.Shop.Bench;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Trials;

/// <summary>Readings as they are typed at the bench, on made shops whose ports and meters are not the program's own idea: right ones pass, mistyped ones are met.</summary>
public sealed class ReadingsAtTheDoor(ITestOutputHelper output)
{
    /// <summary>Three at most in three hundred right readings are asked about.</summary>
    [Fact]
    public void Right_readings_pass()
    {
        var (asked, of) = (0, 0);
        foreach (var (before, entry) in Enumerable.Range(0, 12).SelectMany(n => Typed(300 + n, every: 3)))
        {
            of++;
            if (ReadingEntry.Of(before, entry, UnitSystem.UsCustomary) is Take) continue;
            asked++;
            output.WriteLine(Said(before, entry));
        }

        output.WriteLine($"{asked} of {of}");
        Assert.True(of > 300, $"{of}");
        Assert.True(asked <= 0.01 * of, $"{asked} of {of} right readings were asked about");
    }

    public static TheoryData<string> Kinds => [.. Ways.Keys];

    private static readonly Dictionary<string, Func<string, string?>> Ways = new()
    {
        ["the point left out"] = t => t.Contains('.', StringComparison.Ordinal) ? t.Replace(".", "", StringComparison.Ordinal) : null,
        ["the point one place off"] = t => (decimal.Parse(t, System.Globalization.CultureInfo.InvariantCulture) / 10).ToString(System.Globalization.CultureInfo.InvariantCulture),
        ["the first digit twice"] = t => t[0] + t,
        ["the first two digits changed about"] = t => t.Length > 1 && char.IsAsciiDigit(t[0]) && char.IsAsciiDigit(t[1]) && t[0] != t[1] ? $"{t[1]}{t[0]}{t[2..]}" : null,
        ["the first digit lost"] = t => t.Length > 2 && char.IsAsciiDigit(t[1]) ? t[1..] : null,
    };

    /// <summary>What moves the flow by more than what any cut does is never kept unasked, and what was read is offered where one slip undoes it.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_mistyped_reading_is_not_kept_unasked(string kind)
    {
        var (kept, first, of) = (0, 0, 0);
        foreach (var (before, entry) in Enumerable.Range(0, 6).SelectMany(n => Typed(500 + n, every: 5)))
        {
            var fact = (FlowReading)entry.Fact;
            var right = fact.Reading.Text.Split(' ')[0];
            if (Ways[kind](right) is not { } wrong || Math.Abs(double.Parse(wrong, System.Globalization.CultureInfo.InvariantCulture) / fact.Reading.Value - 1) < 0.25) continue;
            var mistyped = entry with { Fact = fact with { Reading = new(double.Parse(wrong, System.Globalization.CultureInfo.InvariantCulture), fact.Reading.Unit, wrong) } };
            of++;
            switch (ReadingEntry.Of(before, mistyped, UnitSystem.UsCustomary))
            {
                case Take:
                    kept++;
                    output.WriteLine($"kept {wrong} for {right}: {Said(before, entry)}");
                    break;
                case Ask ask when ask.Likely.Any(m => double.Parse(m.Text.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture) == fact.Reading.Value):
                    first++;
                    break;
            }
        }

        output.WriteLine($"{kept} kept, what was read offered at {first}, of {of}");
        Assert.True(of > 20, $"{of}");
        Assert.True(kept <= 0.02 * of, $"{kept} of {of} were kept unasked");
        if (kind != "the first digit lost") Assert.True(first >= 0.8 * of, $"offered at {first} of {of}");
    }

    private static IEnumerable<(Reductions Before, Entry Entry)> Typed(int shop, int every)
    {
        var made = MadeShop.Of(5, shop);
        var entries = made.Ledger.Entries;
        for (var k = shop % every; k < entries.Count; k++)
        {
            if (entries[k].Fact is FlowReading && k % every == 0) yield return (new Reductions(Ledger.Of(entries.Take(k))), entries[k]);
        }
    }

    private static string Said(Reductions before, Entry entry)
    {
        var fact = (FlowReading)entry.Fact;
        var sweep = before.Ledger.Get<Sweep>(fact.Sweep);
        var range = before.Ledger.Get<BenchCard>(sweep.Fact.Bench).Fact.RangeNamed(fact.Range.Length > 0 ? fact.Range : sweep.Fact.Range)!;
        return $"{fact.Lift.Text}: {fact.Reading.Text} ({range.Meter.GetType().Name} {MeterOf.ReadingDimension(range)}) "
            + ReadingEntry.Of(before, entry, UnitSystem.UsCustomary) switch { Ask a => a.Question.In(UnitSystem.UsCustomary), Refuse r => r.Problem, _ => "taken" };
    }
}
