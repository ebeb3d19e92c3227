using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Findings;

/// <summary>A ring that does not close says which of section, probe and meter it is by what the other rings do.</summary>
public sealed class ClosureInWords
{
    [Theory]
    [InlineData(1.15, "more than the bench measured", "Every ring misses alike: the probe reads high, or the meter low.")]
    [InlineData(0.85, "less than the bench measured", "Every ring misses alike: the probe reads low, or the meter high.")]
    public void Rings_that_miss_alike_blame_the_probe_or_the_meter(double probe, string how, string whose)
    {
        Assert.All(Said(probe, ["B", "C", "D"]), s => Assert.Contains(how, s, StringComparison.Ordinal));
        Assert.All(Said(probe, ["B", "C", "D"]), s => Assert.Contains(whose, s, StringComparison.Ordinal));
        // Two do as three do.
        Assert.All(Said(probe, ["B", "C"]), s => Assert.Contains(whose, s, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1.15, "The section is smaller than written down, the probe reads high, or the meter low: a second ring tells which.")]
    [InlineData(0.85, "The section is larger than written down, the probe reads low, or the meter high: a second ring tells which.")]
    public void One_ring_alone_cannot_tell(double probe, string said) => Assert.Contains(said, Assert.Single(Said(probe, ["C"])), StringComparison.Ordinal);

    [Theory]
    [InlineData(1.2, "section B is smaller than written down, or its speeds are high")]
    [InlineData(0.8, "section B is larger than written down, or its speeds are low")]
    public void One_ring_that_misses_by_itself_blames_its_section(double wider, string said) =>
        Assert.Contains($"The other rings do not miss alike: {said}", Said(1, ["B", "C", "D"], wider)[0], StringComparison.Ordinal);

    /// <summary>Rings within four in a hundred of each other miss alike.</summary>
    [Theory]
    [InlineData(1.025, true)]
    [InlineData(1.055, false)]
    public void Four_in_a_hundred_apart_is_no_longer_alike(double wider, bool alike) =>
        Assert.All(Said(1.15, ["B", "C"], wider), s => Assert.Equal(alike, s.Contains("Every ring misses alike", StringComparison.Ordinal)));

    private static string[] Said(double probe, string[] rings, double wider = 1)
    {
        var made = new MadePort(41) { ProbeError = probe, RingsAt = rings, Places = [], ExhaustShare = null };
        made.Also = (bench, cut) =>
        {
            var (at, s) = (bench.Ledger.All<Station>().First(s => s.Fact.Letter == "B").Id, made.Stations.First(x => x.Letter == "B"));
            bench.Add(new Section(cut, at, SectionForm.Rectangle, [Typed.Of(s.Width * wider * 1e3, "mm"), Typed.Of(s.Height * 1e3, "mm"), Typed.Of(s.Corner * 1e3, "mm")]));
        };
        return [.. new ClosureFails().Look(made.Survey()).Select(f => f.Sentence.Us())];
    }
}
