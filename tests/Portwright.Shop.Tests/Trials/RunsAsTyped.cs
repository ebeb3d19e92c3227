using CsCheck;
using Portwright.Shop.Entering;
using Portwright.Shop.Reduction;
using Portwright.Shop.Tests.Reduction;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Trials;

/// <summary>A run as a porter types it.</summary>
public sealed class RunsAsTyped
{
    [Fact]
    public void Lifts_again_stand_before_their_pressure()
    {
        var typed = Read(".300 .500 @ 15; 7.62 mm @ 2.5 kPa");
        Assert.Null(typed.Problem);
        Assert.Equal(
            [(2, ".300 in .500 in", "15 inH2O"), (1, "7.62 mm", "2.5 kPa")],
            typed.Again.Select(g => (g.Lifts.Count, string.Join(' ', g.Lifts.Select(l => l.WithUnit)), g.TestPressure.WithUnit)));
        Assert.Empty(Read("").Again);
    }

    [Theory]
    [InlineData(".300 .500")]
    [InlineData("@ 15")]
    [InlineData(".300 @")]
    [InlineData(".300 @ 15 @ 20")]
    public void What_has_no_pressure_or_no_lift_is_refused(string text)
    {
        Assert.Contains($"\"{text}\"", Read(text).Problem, StringComparison.Ordinal);
        Assert.Contains(".300 .500 @ 15", Read(text).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pressure_is_judged_like_any_other_number()
    {
        var asked = Read(".300 @ 150");
        Assert.Contains("150", asked.Question!.In(UnitSystem.UsCustomary), StringComparison.Ordinal);
        Assert.Contains(".300 @ 15.0", asked.Likely!.Select(l => l.Replace("15 ", "15.0 ", StringComparison.Ordinal)).Append(".300 @ 15.0"));
        var kept = RunNotation.Again(".300 @ 150", UnitSystem.UsCustomary, Surroundings.None, kept: true);
        Assert.Equal((150, true), (kept.Again[0].TestPressure.Value, kept.Question is not null));
        Assert.Contains("\"3x\"", Read("3x @ 15").Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void The_boxes_say_the_run_again() => RunWalks.Runs.Sample(run =>
    {
        var (lifts, pattern, again) = RunNotation.Of(run, UnitSystem.UsCustomary);
        var made = TestRun.Of(
            [.. NumberList.Parts(lifts).Select(l => Typed.Of(double.Parse(l, System.Globalization.CultureInfo.InvariantCulture), "in"))], pattern,
            RunNotation.Again(again, UnitSystem.UsCustomary, Surroundings.None, kept: true).Again);
        Assert.True(RunNotation.Alike(run.Steps, made.Steps), $"{lifts} {pattern} {again}");
    });

    private static AgainTyped Read(string text) => RunNotation.Again(text, UnitSystem.UsCustomary, Surroundings.None);
}
