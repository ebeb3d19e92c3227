using Portwright.Physics.Targets;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Tests.Words;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>A limit of the trade is no sharp line: it is itself anywhere within a percent point.</summary>
public sealed class ThroatLimitTests
{
    /// <summary>A throat measured to a hair: only the limit's own vagueness is left of the doubt.</summary>
    [Theory]
    [InlineData("throat-too-large", 0.912, 0.10)]
    [InlineData("throat-too-large", 0.920, 0.50)]
    [InlineData("throat-too-large", 0.928, 0.90)]
    [InlineData("throat-too-small", 0.858, 0.10)]
    [InlineData("throat-too-small", 0.850, 0.50)]
    [InlineData("throat-too-small", 0.842, 0.90)]
    public void The_chance_takes_in_how_vague_the_limit_is(string key, double share, double chance) =>
        Assert.Equal(chance, Chance(key, share), 0.03);

    [Theory]
    [InlineData("throat-too-large", 0.925, 0.935)]
    [InlineData("throat-too-small", 0.845, 0.835)]
    public void As_good_as_certain_needs_a_clear_margin(string key, double near, double clear)
    {
        Assert.NotEqual("as good as certain", Confidence.Words(Chance(key, near)));
        Assert.Equal("as good as certain", Confidence.Words(Chance(key, clear)));
    }

    [Fact]
    public void The_sentence_carries_the_registers_figures() =>
        Assert.Contains($"usual is {NamedLimits.ThroatOverValve.Said}.", Finding("throat-too-large", 0.93).Sentence.Us(), StringComparison.Ordinal);

    private static double Chance(string key, double share) => Finding(key, share).Confidence;

    private static Finding Finding(string key, double share)
    {
        var made = new MadePort(31) { RingsAt = [], Places = [] };
        made.Doubt = made.Doubt with { Calliper = 2e-6 };
        made.Stations.RemoveAll(s => s.Mark == "throat");
        made.Valve = made.Valve with { ThroatDiameter = share * made.Valve.HeadDiameter, SeatWidth = 0.001 };
        return Assert.Single(Catalogue.All.SelectMany(r => r.Look(made.Survey())), f => f.Rule.Key == key);
    }
}
