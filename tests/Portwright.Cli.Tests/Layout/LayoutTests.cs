using Portwright.Figures.Tests;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Store.Demo;
using Portwright.Store.Runs;

namespace Portwright.Cli.Tests.Layout;

/// <summary>What is said of a port is said alike in the terminal, for programs, in a file, on paper and on a page: no layout drops a word or a digit.</summary>
public sealed class LayoutTests(LayoutTests.DemoPorts demo) : IClassFixture<LayoutTests.DemoPorts>
{
    private sealed record Unheard() : Block("unheard");

    /// <summary>Every port of the demo's job that was tested, at its latest tested cut.</summary>
    public sealed class DemoPorts
    {
        public IReadOnlyList<PortAtCut> All { get; } =
            [.. JobSheets.Of(new Reductions(Ledger.Of(DemoShop.Entries())), DemoShop.Job, new KeptRuns(null), null, full: true).Sheets.Select(s => s.Port)];
    }

    public static TheoryData<UnitSystem> Readers => [.. Enum.GetValues<UnitSystem>()];

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_block_of_every_kind_stands_in_every_layout(UnitSystem units)
    {
        var document = DocumentOfEveryKind.Document;
        var kinds = typeof(Block).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Block)) && !t.IsAbstract);
        Assert.Equal(kinds.Select(k => k.Name).Order(), document.Blocks.Select(b => b.GetType().Name).Distinct().Order());
        Assert.Equal(Enum.GetValues<FigureKind>(), document.Blocks.OfType<Figure>().Select(f => f.Kind).Distinct().Order());
        Assert.Equal(Enum.GetValues<FindingKind>(), document.Blocks.OfType<FindingSaid>().Select(f => f.Kind).Order());
        Assert.Equal(Enum.GetValues<VerdictShape>(), document.Blocks.OfType<Table>().SelectMany(t => t.Rows.SelectMany(r => r.Select(c => c.Shape))).Distinct().Order());
        StandsEverywhere(document, DocumentOfEveryKind.Port, units);
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void What_a_layout_left_out_would_be_missed(UnitSystem units)
    {
        var (document, port) = (DocumentOfEveryKind.Document, DocumentOfEveryKind.Port);
        foreach (var layout in DocumentLayout.All)
        {
            foreach (var block in document.Blocks.DistinctBy(b => b.GetType()))
            {
                var without = document with { Parts = [.. document.Parts.Select(p => p with { Blocks = [.. p.Blocks.Where(b => b != block)] })] };
                Assert.True(layout.Missing(layout.Write(without, port, units), document, units).Any(), $"{block.Key} was left out in the {layout}.");
            }

            Assert.ThrowsAny<Exception>(() => layout.Write(document with { Parts = [new Part("x", $"x", [new Unheard()])] }, port, units));
        }
    }

    [Fact]
    public void The_porters_document_is_the_whole_one_without_the_engineers_parts()
    {
        foreach (var port in demo.All)
        {
            var whole = PortDocument.Of(port);
            Assert.Contains(whole.Parts, p => p.For == Reader.Engineer);
            Assert.Equal(Said(whole with { Parts = [.. whole.Parts.Where(p => p.For == Reader.Porter)] }), Said(PortDocument.ForThePorter(port)));
        }

        static string[] Said(Document document) => [.. document.Parts.Select(p => p.Key), .. document.Sentences.Select(s => s.In(UnitSystem.Si))];
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void Every_finding_of_the_catalogue_and_every_caution_stands_in_every_layout(UnitSystem units)
    {
        var port = demo.All.First(p => p.Sheet.Port.Id == DemoShop.Featured);
        var kinds = Enum.GetValues<FindingKind>();
        Finding[] findings =
        [
            .. Catalogue.All.Select((rule, i) => new Finding(
                rule, kinds[i % kinds.Length], $"Marked {rule.Key} at {Quantity.Speed(60.1234 + i)}.", 0.55 + 0.02 * i, null, null, [], $"Look again at {rule.Key}.",
                i % 2 == 0 ? null : new CutSuggestion($"Cut for {rule.Key}, {Quantity.Length(0.00123 + 0.0001 * i)}.", Estimate.Exact(0.001 + 0.0001 * i), 0.004, 0.012, null))),
        ];
        var document = PortDocument.Of(port with { Findings = findings });
        var said = document.Blocks.OfType<FindingSaid>().ToList();
        Assert.Equal(findings.Select(f => f.Title).Order(), said.Select(s => s.Title.In(units)).Order());
        Assert.All(findings, f => Assert.Contains(said, s => s.Says.Equals(f.Sentence) && s.Then.Any(t => t.In(units).Contains((f.Suggestion?.What ?? f.NextObservation).In(units), StringComparison.Ordinal))));
        var cautions = demo.All.SelectMany(p => PortDocument.Of(p).Blocks.OfType<Caution>()).Select(c => c.Text).Distinct().ToList();
        Assert.NotEmpty(cautions);
        Part all = new("every-caution", $"Every caution", [.. cautions.Select((c, i) => new Caution($"caution-of-all-{i}", c))]);
        StandsEverywhere(document with { Parts = [.. document.Parts, all] }, port with { Findings = findings }, units);
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void What_the_demo_shop_says_stands_word_for_word_in_every_layout(UnitSystem units)
    {
        Assert.Equal(16, demo.All.Count);
        foreach (var port in demo.All) StandsEverywhere(PortDocument.Of(port, new DateOnly(2026, 1, 2)), port, units);
    }

    private static void StandsEverywhere(Document document, PortAtCut port, UnitSystem units)
    {
        Assert.All(DocumentLayout.All, layout =>
        {
            var text = layout.Write(document, port, units);
            var missing = layout.Missing(text, document, units).ToList();
            Assert.True(missing.Count == 0, $"{missing.Count} missing in the {layout} of {document.Title}:\n{string.Join('\n', missing)}");
            Assert.DoesNotContain(text, c => c is '\uE000' or '⟦' or '⟧');
        });
    }
}
