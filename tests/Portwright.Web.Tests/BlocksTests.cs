using Bunit;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Web.Documents;

namespace Portwright.Web.Tests;

/// <summary>A document's blocks on a page.</summary>
public sealed class BlocksTests : BunitContext
{
    private sealed record Smell(string Key) : Block(Key);

    private static readonly Block[] Each =
    [
        new Paragraph("p", $"The bowl is {Quantity.Length(0.0254)} deep."),
        new Caution("c", $"Wear a mask."),
        new Values("v", [new("flow", $"flow", $"{new Quantity(0.1, Dimension.VolumeFlow, 0.001, Signed: true)}, real gain", VerdictShape.Gain)]),
        new Table("t", $"Flow by lift", [new("lift", $"lift", Dimension.Length), new("word", $"")], [[new($"{Quantity.Length(0.0127)}"), new($"thin", VerdictShape.Unsure)]], $"Read twice."),
        new FindingSaid("f", FindingKind.Stop, $"Leave the roof", 0.905, $"{Quantity.Length(0.00254)} left.", [$"Measure again."]),
    ];

    [Theory]
    [InlineData(UnitSystem.UsCustomary, "1.000 in", "lift, in", ".500", "aluminum")]
    [InlineData(UnitSystem.Si, "25.40 mm", "lift, mm", "12.70", "aluminium")]
    public void Each_block_is_laid_out_in_the_readers_units(UnitSystem units, string depth, string head, string lift, string metal)
    {
        var page = Blocks(units, [.. Each, new Paragraph("m", $"It is {Term.Aluminum}.")]);
        var text = System.Text.RegularExpressions.Regex.Replace(page, "<[^>]*>", "");
        foreach (var said in new[] { depth, head, lift, metal, "Wear a mask.", "real gain", "Flow by lift", "Read twice.", "Leave the roof", "90 in 100", "Measure again." })
        {
            Assert.Contains(said, text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain($"{lift} in", text, StringComparison.Ordinal);
        Assert.Contains("shape gain", page, StringComparison.Ordinal);
        Assert.Contains("shape unsure", page, StringComparison.Ordinal);
    }

    [Fact]
    public void No_kind_of_block_is_left_out()
    {
        var kinds = typeof(Block).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Block))).Except([typeof(Figure)]);
        Assert.Equal(kinds.Select(k => k.Name).Order(), Each.Select(b => b.GetType().Name).Order());
        Assert.Throws<InvalidOperationException>(() => Blocks(UnitSystem.Si, [new Smell("s")]));
    }

    private string Blocks(UnitSystem units, Block[] blocks) => Render<Blocks>(p => p.Add(b => b.Of, blocks).Add(b => b.At, null!).Add(b => b.Units, units)).Markup;
}
