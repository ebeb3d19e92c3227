using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>What has to be said of a readout whose meaning was not stated, or was stated otherwise before.</summary>
public static class ReadoutSaid
{
    /// <summary>The question, asked once.</summary>
    public const string Question = "Is your readout already at 28 (test pressure and standard air taken in), or is it what passes the meter?";

    /// <summary>The meaning in words that follow "it shows".</summary>
    public static string Words(ReadoutMeaning meaning) => meaning == ReadoutMeaning.AtMeter ? "what passes the meter" : "the flow already at 28";

    /// <summary>In sentences; nothing where it was said once and stands.</summary>
    public static IEnumerable<string> Of(Ledger ledger, Kept<BenchCard> bench, RangeCard range)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(bench);
        if (StandInBench.MeaningOf(range) is not { } now) yield break;
        if (now == ReadoutMeaning.Unsaid)
        {
            yield return $"Nobody has said whether the readout of range {range.Name} is already at 28 or shows what passes the meter: the numbers stand as typed, and the other meaning stands in the doubt. Answer it on the page of the port or of the bench.";
            yield break;
        }

        // The last answer that was another: what was said before it is of no use to anybody now.
        var said = ledger.History(bench.Id).Select(e => (e.At, Meaning: (e.Fact as BenchCard)?.RangeNamed(range.Name) is { } r ? StandInBench.MeaningOf(r) : null)).ToList();
        var before = said.FindLastIndex(s => s.Meaning is { } m && m != ReadoutMeaning.Unsaid && m != now);
        if (before >= 0 && said.Skip(before).FirstOrDefault(s => s.Meaning == now) is { Meaning: not null } changed)
        {
            yield return FormattableString.Invariant($"Until {changed.At:yyyy-MM-dd HH:mm} the readout of range {range.Name} was taken to show {Words(said[before].Meaning!.Value)}; now it shows {Words(now)}, and every reading on it is worked out anew, the earlier ones too.");
        }
    }
}
