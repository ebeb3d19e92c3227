using Portwright.Shop.Units;
using Portwright.Web.Sums;

namespace Portwright.Cli.Tests;

/// <summary>A sum asked in a sentence, a name or a line of the terminal: the terminal's own answer.</summary>
public sealed class SumDeskTests
{
    private static readonly ISumDesk Desk = CommandLine.Sums();

    [Theory]
    [InlineData("0.202 in2 at 28 inH2O", "nozzle", "--area", "0.202 in2", "--test-pressure", "28 inH2O")]
    [InlineData("194.9 cfm at 10 to 28", "restate", "--flow", "194.9 cfm", "--from", "10", "--to", "28")]
    [InlineData("restate 194.9 from 10 to 28", "restate", "--flow", "194.9", "--from", "10", "--to", "28")]
    [InlineData("what is 194.9 cfm from 10inH2O to 25inH2O?", "restate", "--flow", "194.9 cfm", "--from", "10inH2O", "--to", "25inH2O")]
    [InlineData("194.9 cfm at 28", "area", "--flow", "194.9 cfm", "--test-pressure", "28")]
    [InlineData("area 221.9 +- 1.1 cfm at 28", "area", "--flow", "221.9 +- 1.1 cfm", "--test-pressure", "28")]
    [InlineData("71.4 % of 300 cfm at 28", "percent", "--reading", "71.4 %", "--full-scale", "300 cfm", "--test-pressure", "28")]
    [InlineData("pitot 28 inH2O ± 0.2 inH2O", "pitot", "--dp", "28 inH2O ± 0.2 inH2O")]
    [InlineData("window head 1.985 throat 1.75 lift .500", "window", "--head", "1.985", "--throat", "1.75", "--lift", ".500")]
    [InlineData("air 29.4 inHg 75 F 45 %", "air", "--barometer", "29.4 inHg", "--temperature", "75 F", "--humidity", "45 %")]
    [InlineData("direct 88.0 cfm at 10", "direct", "--flow", "88.0 cfm", "--test-pressure", "10")]
    [InlineData("194.9 cfm at 10 to 28 blown", "restate", "--flow", "194.9 cfm", "--from", "10", "--to", "28", "--direction", "blow")]
    [InlineData("portwright calc restate --flow 180cfm --from 10inH2O", "restate", "--flow", "180cfm", "--from", "10inH2O")]
    [InlineData("compare \"221.9 +- 1.1 cfm\" \"226.3 +- 1.2 cfm\"", "compare", "221.9 +- 1.1 cfm", "226.3 +- 1.2 cfm")]
    public void A_question_is_answered_as_the_terminal_answers_the_line_it_means(string question, params string[] line)
    {
        var answer = Desk.Ask(question, UnitSystem.UsCustomary, false);
        Assert.True(answer.Sheet is not null, answer.Refusal + answer.Question);
        var terminal = Shell.Run(["calc", .. line]);
        Assert.Equal(0, terminal.ExitCode);
        // Every value of the page stands in the terminal's lines, and the terminal prints no other answer.
        var flat = Flat(terminal.Output);
        Assert.All(answer.Sheet.Answers.Concat(answer.Sheet.Working).Concat(answer.Sheet.Given).Concat(answer.Sheet.Doubt), l => Assert.Contains(Flat(l.Words + l.Value), flat, StringComparison.Ordinal));
        Assert.All(answer.Sheet.Remarks, r => Assert.Contains(Flat(r), flat, StringComparison.Ordinal));
        Assert.Equal(flat.Length, Flat(Whole(answer.Sheet)).Length);
    }

    public static TheoryData<string> Examples => [.. Desk.Offered.SelectMany(o => o.Examples)];

    [Theory, MemberData(nameof(Examples))]
    public void Every_example_of_the_page_is_answered(string example)
    {
        var answer = Desk.Ask(example, UnitSystem.UsCustomary, false);
        Assert.True(answer.Sheet is { Answers.Count: > 0 }, answer.Refusal + answer.Question);
    }

    [Fact]
    public void Every_sum_of_the_terminal_is_on_the_page_and_the_ten_most_used_stand_first()
    {
        var names = CommandLine.CalcExamples().Where(e => e.StartsWith("portwright calc ", StringComparison.Ordinal)).Select(e => e.Split(' ')[2]).Distinct().Order();
        Assert.Equal(names, Desk.Offered.Select(o => o.Name).Order());
        Assert.Equal(10, Desk.Offered.TakeWhile(o => o.Often).Count());
        Assert.DoesNotContain(Desk.Offered.Skip(10), o => o.Often);
    }

    [Theory]
    [InlineData("194.9 cfm at 280 to 28", "28")]
    [InlineData("air 294 inHg 75 F", "29.4 inHg")]
    public void A_number_that_can_hardly_be_meant_is_asked_about_with_the_likely_one_first(string question, string likely)
    {
        var answer = Desk.Ask(question, UnitSystem.UsCustomary, false);
        Assert.Null(answer.Sheet);
        Assert.NotEqual("", answer.Question);
        Assert.Equal(likely, answer.Likely![0].Words);
        Assert.NotNull(Desk.Ask(answer.Likely[0].Text, UnitSystem.UsCustomary, false).Sheet);
    }

    [Theory]
    [InlineData("", "Type a sum")]
    [InlineData("how are you", "No number stands in")]
    [InlineData("4 5 6 7", "No sum takes")]
    [InlineData("restate 194.9 cfm", "from is missing")]
    [InlineData("pitot 28 inH2O sideways", "\"sideways\" says nothing to pitot")]
    [InlineData("restate --flow 180cfm", "from is missing: measured at test pressure")]
    [InlineData("nozzle 0 in2 at 0 inH2O", "")]
    [InlineData("restate 180 furlongs from 10", "")]
    [InlineData("window head 1.985 throat 2.2 lift .500 \" & | $(x)", "")]
    public void What_is_not_understood_is_said_in_a_porters_words(string question, string begins)
    {
        var answer = Desk.Ask(question, UnitSystem.UsCustomary, true);
        if (begins.Length > 0) Assert.StartsWith(begins, answer.Refusal, StringComparison.Ordinal);
        Assert.DoesNotContain("--", answer.Refusal, StringComparison.Ordinal);
        Assert.DoesNotContain("portwright", answer.Refusal, StringComparison.Ordinal);
        Assert.DoesNotContain("fault", answer.Refusal, StringComparison.Ordinal);
    }

    private static string Whole(SumSheet sheet) =>
        sheet.Title + new string('=', Math.Min(80, sheet.Title.Length)) + (sheet.Given.Count > 0 ? "given" : "") + (sheet.Working.Count > 0 ? "working" : "") + (sheet.Answers.Count == 1 ? "answer" : "answers")
        + (sheet.Doubt.Count > 0 ? $"doubt of {sheet.DoubtOf}, by cause" : "") + sheet.DoubtSaid
        + string.Concat(sheet.Given.Concat(sheet.Working).Concat(sheet.Answers).Concat(sheet.Doubt).Select(l => l.Words + l.Value + l.How)) + string.Concat(sheet.Remarks);

    private static string Flat(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
