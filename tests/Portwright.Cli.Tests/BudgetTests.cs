using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Portwright.Cli.Tests.Layout;
using Portwright.Figures;
using Portwright.Shop.Budgets;
using Portwright.Shop.Ports;
using Portwright.Shop.Units;
using Portwright.Shop.Words;
using Portwright.Store.Demo;

namespace Portwright.Cli.Tests;

/// <summary>Every doubt the demo shop prints can be asked for, on every surface, down to what was typed.</summary>
public sealed partial class BudgetTests(LayoutTests.DemoPorts demo, BudgetTests.DemoRecord record) : IClassFixture<LayoutTests.DemoPorts>, IClassFixture<BudgetTests.DemoRecord>
{
    public sealed class DemoRecord : IDisposable
    {
        private readonly TemporaryFolder _folder = new();

        public DemoRecord()
        {
            Data = _folder.File("record");
            Assert.Equal(0, Shell.Run("demo", "--no-serve", "--no-engine", "--data", Data).ExitCode);
        }

        public string Data { get; }

        public void Dispose() => _folder.Dispose();
    }

    private PortAtCut Featured => demo.All.Single(p => p.Sheet.Port.Id == DemoShop.Featured);

    [Fact]
    public void No_cause_of_any_number_of_the_demo_shop_stays_without_words()
    {
        var causes = 0;
        foreach (var port in demo.All)
        {
            var words = new SourceWords(port.Ledger, port.Sheet.Port.Id);
            var estimates = PortNumber.Of(port).Select(n => n.Estimate)
                .Concat(port.Sheet.Windows.SelectMany(w => new[] { w.OfCurtain, w.OfWindow, w.OfThroat }))
                .Concat(port.Findings.Select(f => f.Suggestion?.Gain).OfType<Physics.Uncertainty.Estimate>())
                .Concat(port.Sheet.Morning?.Mornings.SelectMany(m => m.PlateRatio.Select(p => p.Ratio)) ?? []);
            foreach (var cause in estimates.SelectMany(e => e.Contributions).Select(c => c.Source).Distinct())
            {
                causes++;
                var named = words.Of(cause);
                Assert.True(named is not null, $"No words for \"{cause}\".");
                var said = $"{named.Words.In(UnitSystem.UsCustomary)}|{named.Shared.In(UnitSystem.UsCustomary)}";
                Assert.DoesNotMatch(Subject(), said);
                Assert.DoesNotContain("?", said, StringComparison.Ordinal);
                Assert.All(named.Behind, id => Assert.NotEmpty(port.Ledger.History(id)));
            }
        }

        Assert.True(causes > 1000, $"Only {causes} causes were looked at.");
    }

    [Fact]
    public void Every_number_that_names_its_budget_has_one_with_the_same_value_and_doubt()
    {
        var led = 0;
        foreach (var port in demo.All)
        {
            var numbers = PortNumber.Of(port).ToDictionary(n => n.Key);
            foreach (var quantity in PortDocument.Of(port).Sentences.SelectMany(s => s.Quantities).Where(q => q.Budget.Length > 0))
            {
                Assert.True(numbers.TryGetValue(quantity.Budget, out var number), $"{quantity.Budget} leads nowhere.");
                Assert.Equal(quantity.Dimension, number.Dimension);
                // What a ball took is told without a sign.
                Assert.Equal(Math.Abs(number.Estimate.Value), Math.Abs(quantity.Si), 1e-12);
                if (quantity.Expanded > 0) Assert.Equal(number.Judged is { } judged ? number.Estimate.Expanded(judged.Level) : number.Estimate.Expanded(), quantity.Expanded, 1e-12);
                led++;
            }
        }

        Assert.True(led > 300, $"Only {led} numbers lead to a budget.");
    }

    /// <summary>A doubt of one cause that is told where it stands needs no table: a wall gauge, two volumes, the closure of a ring; nor has the engine run one. What is said beside a target has its row in the table, which leads there; what a flow would be after another reading was not measured.</summary>
    [Fact]
    public void Every_printed_doubt_of_a_result_leads_to_its_budget()
    {
        var without = demo.All.SelectMany(p => PortDocument.ForThePorter(p).Parts.Where(part => part.Key is not ("findings" or "bench"))
            .SelectMany(part => part.Blocks.Where(b => !b.Key.StartsWith("target-", StringComparison.Ordinal)).SelectMany(b => Document.Of(b).SelectMany(s => s.Quantities).Where(q => q.Expanded > 0 && q.Budget.Length == 0).Select(q => (Block: b.Key, q.Dimension)))));
        Assert.Equal([("burette-less-sections", Dimension.Volume), ("sections", Dimension.Fraction), ("steps", Dimension.VolumeFlow), ("walls", Dimension.Length)],
            without.Select(w => w.Block == "volumes" ? ("burette-less-sections", w.Dimension) : (w.Block, w.Dimension)).Distinct().Order());
    }

    [Fact]
    public void A_porters_table_stands_for_the_whole_and_programs_get_every_cause()
    {
        var words = new SourceWords(Featured.Ledger, Featured.Sheet.Port.Id);
        foreach (var number in PortNumber.Of(Featured))
        {
            var budget = Budget.For(number.Estimate, number.Dimension, words);
            var main = DoubtSaid.Of(number, words, BudgetDetail.Main);
            var (moves, share) = (Column(main, "moves"), Column(main, "share"));
            Assert.Equal(number.Estimate.Variance, moves.Sum(q => q.Si * q.Si), 1e-9 * number.Estimate.Variance);
            Assert.Equal(1, share.Sum(q => q.Si), 1e-9);
            Assert.Equal(budget.Causes.Count(c => c.Share >= 0.01), main.Rows.Count(r => !Others().IsMatch(r[0].Text.In(UnitSystem.Si))));
            Assert.Equal(number.Estimate.Contributions.Length, DoubtSaid.Of(number, words, BudgetDetail.Whole).Rows.Count);
            Assert.Equal(number.Estimate.Contributions.Length, DoubtSaid.Of(number, words, BudgetDetail.Each).Rows.Count);
        }
    }

    [Fact]
    public void In_a_file_a_number_leads_to_its_table_only_where_that_stands_in_the_file()
    {
        var document = PortDocument.Of(Featured);
        var html = DocumentHtml.Render(document, Featured);
        var links = Anchor().Matches(html).Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.True(links.Count > 10, $"{links.Count} links.");
        Assert.All(links, l => Assert.Contains($"id=\"{l}\"", html, StringComparison.Ordinal));
        Assert.DoesNotMatch(Anchor(), DocumentHtml.Render(PortDocument.ForThePorter(Featured), Featured));
    }

    [Fact]
    public void The_terminal_shows_a_budget_at_80_columns_down_to_what_was_typed()
    {
        string[][] asked =
        [
            [], ["--lift", ".400"], ["--mean"], ["--against-last"], ["--against-first", "--lift", ".400"], ["--against-port", "head A intake 2", "--lift", ".400"], ["--section", "C"],
            ["--ring", "C"], ["--ball", "C/6"], ["--volume"], ["--of", "target-3"], ["--lift", ".450", "--every"], ["--mean", "--si"],
        ];
        foreach (var options in asked)
        {
            var shell = Shell.Run(["budget", "head B intake 2", "--data", record.Data, .. options]);
            Assert.True(shell.ExitCode == 0, $"{string.Join(' ', options)}: {shell.Error}");
            Assert.Contains("WHERE THE DOUBT COMES FROM", shell.Output, StringComparison.Ordinal);
            Assert.All(shell.Lines, l => Assert.True(l.Length <= 80, l));
        }

        var lift = Shell.Run("budget", "head B intake 2", "--lift", ".400", "--data", record.Data).Output;
        var sweep = Featured.Sheet.Flow!.Sweeps[0];
        var reading = sweep.Curve.PointAt(0.4 * 0.0254)!.Readings[0].Reading.Fact;
        Assert.Matches($"{Regex.Escape(reading.Reading.Text)}( %)? of range large +{Regex.Escape(reading.Lift.Text)} +{Regex.Escape(sweep.Sweep.Fact.TestPressure.Text)}", lift);
    }

    [Fact]
    public void Two_ports_are_compared_with_what_their_sweeps_share_left_out()
    {
        var (a, b) = (Causes("--lift", ".400"), Causes("--against-port", "head A intake 2", "--lift", ".400"));
        double Plates(JsonArray of) => of.Where(c => Text(c!["cause"]).StartsWith("certificate", StringComparison.Ordinal)).Sum(c => Math.Pow(c!["moves"]!["value"]!.GetValue<double>(), 2));
        Assert.True(Plates(b) < 0.02 * Plates(a), $"The plates are still {Plates(b) / Plates(a):P0} of what they were.");
        Assert.Contains(b, c => Text(c!["cause"]).StartsWith("set-up of head A intake 2, cut 0", StringComparison.Ordinal));
        Assert.Contains(b, c => Text(c!["cause"]).StartsWith("set-up of cut 3", StringComparison.Ordinal));
    }

    [Fact]
    public void For_programs_every_number_with_a_budget_finds_it_in_the_same_sheet()
    {
        var sheet = Shell.Json("sheet", "head B intake 2", "--data", record.Data);
        var doubt = sheet["doubt"]!.AsObject();
        var keys = Keys(sheet).Distinct().ToList();
        Assert.True(keys.Count > 40, $"{keys.Count} numbers lead to a budget.");
        Assert.All(keys, k => Assert.True(doubt.ContainsKey(DoubtSaid.BlockOf + k), k));
        var rows = doubt[DoubtSaid.BlockOf + PortNumber.MeanKey]!["rows"]!.AsArray();
        Assert.Equal(Featured.Sheet.Mean!.Flow.Contributions.Length, rows.Count);
        Assert.Equal(Featured.Sheet.Mean.Flow.Variance, rows.Sum(r => Math.Pow(r!["moves"]!["value"]!.GetValue<double>(), 2)), 1e-12);
        Assert.All(rows, r => Assert.False(string.IsNullOrEmpty(Text(r!["source"]))));
    }

    [Fact]
    public void A_number_that_is_not_there_is_refused_with_those_that_are()
    {
        string Refused(params string[] options)
        {
            var shell = Shell.Run(["budget", "head B intake 2", "--data", record.Data, .. options]);
            Assert.Equal(2, shell.ExitCode);
            return shell.Error.ReplaceLineEndings(" ");
        }

        Assert.Contains("There are: A, B, C, D, E, F.", Refused("--section", "Z"), StringComparison.Ordinal);
        Assert.Contains("from .100 to .600", Refused("--lift", ".900"), StringComparison.Ordinal);
        Assert.Contains("C/6", Refused("--ball", "C/1"), StringComparison.Ordinal);
        Assert.Contains("--lift and --mean", Refused("--lift", ".400", "--mean"), StringComparison.Ordinal);
        Assert.Contains("mean-flow", Refused("--of", "nothing"), StringComparison.Ordinal);
    }

    private JsonArray Causes(params string[] options) =>
        Shell.Json(["budget", "head B intake 2", "--data", record.Data, .. options])["doubt"]!.AsObject().First(p => p.Key.StartsWith(DoubtSaid.BlockOf, StringComparison.Ordinal)).Value!["rows"]!.AsArray();

    private static string Text(JsonNode? sentence) => string.Concat(sentence is JsonArray pieces ? pieces.Select(p => p is JsonValue v ? v.GetValue<string>() : "#") : []);

    private static IEnumerable<string> Keys(JsonNode? node) => node switch
    {
        JsonObject o => o.SelectMany(p => p.Key == "budget" ? [p.Value!.GetValue<string>()] : Keys(p.Value)),
        JsonArray a => a.SelectMany(Keys),
        _ => [],
    };

    private static List<Quantity> Column(Table table, string key)
    {
        var column = table.Columns.ToList().FindIndex(c => c.Key == key);
        return [.. table.Rows.Select(r => r[column].Text.Quantities.Single())];
    }

    [GeneratedRegex("[0-9a-f]{12}|[0-9a-f]{8}-")]
    private static partial Regex Subject();

    [GeneratedRegex("^[0-9]+ others?$")]
    private static partial Regex Others();

    [GeneratedRegex("href=\"#(doubt-of-[^\"]*)\"")]
    private static partial Regex Anchor();
}
