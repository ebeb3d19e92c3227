using System.CommandLine;
using Portwright.Cli.Terminal;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Cli.Calc;

/// <summary><c>calc compare</c>: is one result really more than the other, with what both share left out of the difference.</summary>
internal static class CompareCommand
{
    public static Command Make()
    {
        var before = new Argument<string>("BEFORE") { Description = "a result with its doubt, \"221.9 +- 1.1\", or repeats, \"221.9 222.3 221.7\"" };
        var after = new Argument<string>("AFTER") { Description = "the same, after the cut" };
        var setUp = new Option<string?>("--set-up") { Description = "set-up scatter, standard deviation in percent: the head was taken off between the two", HelpName = "PERCENT" };
        var bench = Same("--same-bench", "what both have of meter, plate and barometer, standard deviation in percent");
        var day = Same("--same-day", "the bench's shift of that day, standard deviation in percent");
        var inSetUp = Same("--same-set-up", "set-up scatter, standard deviation in percent: the head stayed on the bench between the two");
        (Option<string?> Option, string Source, ContributionKind Kind)[] same =
        [
            (bench, "bench of both", ContributionKind.Calibration), (day, "day of both", ContributionKind.Drift), (inSetUp, "set-up of both", ContributionKind.SetUp),
        ];
        var kind = ListCommands.Kind();
        return ListCommands.Make("compare", "two results: real, inside the noise, or not enough readings", [before, after], [setUp, bench, day, inSetUp, kind],
            (parsed, system, work) =>
            {
                if (parsed.GetValue(setUp) is not null && parsed.GetValue(inSetUp) is not null)
                    throw new Refusal("--set-up says that the head was taken off between the two, --same-set-up that it stayed on: give one of them.");
                var dimension = NumberList.Kind(parsed.GetValue(kind));
                var scatter = NumberList.Share(parsed.GetValue(setUp), setUp.Name);
                SharedCause[] shared = [.. same.Where(s => parsed.GetValue(s.Option) is not null).Select(s => new SharedCause(s.Source, NumberList.Share(parsed.GetValue(s.Option), s.Option.Name), s.Kind))];
                Estimate Read(Argument<string> argument, string field)
                {
                    var text = parsed.GetRequiredValue(argument);
                    work.Given.Add((field, text));
                    var estimate = SharedCause.Apart(NumberList.Result(text, field, dimension, system), shared);
                    // Repeats of one set-up never show what the next set-up does.
                    return scatter == 0 ? estimate : estimate.With(new Contribution("set-up " + field, estimate.Value * scatter, Kind: ContributionKind.SetUp));
                }
                var (a, b) = (Read(before, "before"), Read(after, "after"));
                if (scatter > 0) work.Given.Add(("set-up scatter", parsed.GetValue(setUp)!));
                foreach (var s in same)
                {
                    if (parsed.GetValue(s.Option) is { } share) work.Given.Add(($"{s.Source}, shared", share));
                }
                Write(work, a, b, dimension);
                if (scatter == 0 && parsed.GetValue(inSetUp) is null) work.Working.Remark("No set-up scatter was given: right only where the head stayed on the bench between the two. Otherwise give --set-up, 0.7 % where nothing better is known (common practice, no source).");
                if (shared.Length == 0) work.Working.Remark("Nothing is taken as shared: two results of one bench share its meter and plate, and their difference is surer than this. Say how much with --same-bench.");
            },
            "portwright calc compare \"221.9 +- 1.1 cfm\" \"226.3 +- 1.2 cfm\"",
            "portwright calc compare \"221.4 222.3 221.7\" \"226.1 226.6 225.9\" --set-up 0.5%",
            "portwright calc compare \"221.9 +- 1.5\" \"223.9 +- 1.5\" --same-bench 0.25% --same-day 0.15%");
    }

    private static void Write(ListWork work, Estimate a, Estimate b, Dimension dimension)
    {
        var difference = Comparison.Compare(a, b);
        var w = work.Working;
        work.Plus("before", "before", a, dimension, "as given");
        work.Plus("after", "after", b, dimension, "as given");
        work.Plus("difference", "after less before", difference.Of, dimension, "common causes cancel, set-up scatter of two set-ups does not (JCGM 100:2008, 5.1.2 and F.1.2.3)");
        w.Line("correlation", "correlation of the two", Estimate.Correlation(a, b), Dimension.Ratio, "what both share, over their doubts", "JCGM 100:2008, F.1.2.3");
        w.Line("probability_of_gain", "probability of a gain", difference.ProbabilityOfGain, Dimension.Ratio, "Student's t at the effective degrees of freedom", "JCGM 100:2008, annex G");
        w.Line("p_value", "chance of such a difference by noise", difference.PValue, Dimension.Ratio, "two-sided");
        w.Remark(VerdictWords.Explained(difference).In(UnitSystem.UsCustomary));
        work.Words.Add(("verdict", VerdictWords.Key(difference.Verdict)));
    }

    private static Option<string?> Same(string name, string words) => new(name) { Description = "both share it, it is in their ±, and it cancels: " + words, HelpName = "PERCENT" };
}
