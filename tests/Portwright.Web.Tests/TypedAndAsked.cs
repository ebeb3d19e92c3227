using Microsoft.Playwright;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>A number mistyped at the bench is asked about before it is in the record, the likely one first and one key away.</summary>
[Collection("browser")]
public sealed class TypedAndAsked(Chromium chromium, StandingWorkbench standing)
{
    /// <summary>No character of a number takes anything back; one with a sign is not what the meter shows.</summary>
    [Theory]
    [InlineData("-195.2")]
    [InlineData("+195.2")]
    public async Task A_sign_takes_nothing_back_and_nothing_wrong_is_stored(string typed)
    {
        var (bench, seed, sweep) = await At([0.35, 0.5]);
        await Read(bench, "150");
        await bench.Type(typed);
        await bench.WaitUntilSaved();
        if (typed[0] == '-')
        {
            await Question(bench, "195.2?");
            Assert.Equal(0, await bench.Page.GetByText("Keep -195.2").CountAsync());
            await Answer(bench, "Enter");
        }

        var readings = Readings(seed, sweep);
        Assert.Equal([150, 195.2], readings.Select(r => r.Reading.Value));
        Assert.DoesNotContain(Entries(seed), e => e.Fact is Hidden);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task What_is_asked_is_not_in_the_record_until_Enter_takes_the_likely_number()
    {
        var (bench, seed, sweep) = await At([0.5, 0.6]);
        await bench.Type("1952");
        await Question(bench, "195.2?");
        Assert.Empty(Readings(seed, sweep));
        // It stands at its lift over a page opened anew, and over a look elsewhere.
        await bench.Page.ReloadAsync();
        await Question(bench, "195.2?");
        Assert.Equal(".500", (await bench.Asked())!.Trim());
        await bench.Page.GotoAsync($"{standing.Bench.Url}/bench");
        Assert.StartsWith("1 reading is asked about on intake 1, cut 0, head A, Tamarack eight. Open it to answer.", await bench.Page.TextContentAsync("aside.held"), StringComparison.Ordinal);
        await bench.Page.ClickAsync("aside.held a");
        await Question(bench, "195.2?");
        await Answer(bench, "Enter");
        Assert.Equal(("0.5 in", "195.2"), Assert.Single(Readings(seed, sweep).Select(r => (r.Lift.Text, r.Reading.Text))));
        Assert.DoesNotContain(Entries(seed), e => e.Fact is Confirmed);
        Assert.Equal(".600", (await bench.Asked())!.Trim());
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task K_keeps_it_and_the_record_and_the_sheet_say_so()
    {
        var (bench, seed, sweep) = await At([0.5, 0.6]);
        await bench.Type("1952");
        await Question(bench, "195.2?");
        await Answer(bench, "k");
        var kept = Assert.Single(Readings(seed, sweep));
        Assert.Equal(1952, kept.Reading.Value);
        var reading = Assert.Single(Entries(seed), e => e.Fact is FlowReading { Reading.Value: 1952 });
        var confirmed = Assert.IsType<Confirmed>(Assert.Single(Entries(seed), e => e.Fact is Confirmed).Fact);
        Assert.Equal((reading.Subject, "Reading", "1952"), (confirmed.Of, confirmed.Field, confirmed.Text));
        Assert.StartsWith("195.2?", confirmed.Question, StringComparison.Ordinal);
        await bench.Page.GotoAsync($"{standing.Bench.Url}/port/{seed.Intake}");
        await bench.Page.GetByText("The reading \"1952\" at lift 0.5 in was asked about when it was typed, and kept.").First.WaitForAsync();
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_number_typed_while_the_question_stands_is_that_reading_typed_again()
    {
        var (bench, seed, sweep) = await At([0.5, 0.6]);
        await bench.Type("1952");
        await Question(bench, "195.2?");
        await bench.Page.Keyboard.TypeAsync("18");
        Assert.Equal(".500", (await bench.Asked())!.Trim());
        // Rubbed out, the question stands again.
        await bench.Page.Keyboard.PressAsync("Backspace");
        await bench.Page.Keyboard.PressAsync("Backspace");
        await Question(bench, "195.2?");
        await Read(bench, "188.4");
        Assert.Equal(0, await bench.Page.Locator("[data-question]:visible").CountAsync());
        Assert.Equal(("0.5 in", "188.4"), Assert.Single(Readings(seed, sweep).Select(r => (r.Lift.Text, r.Reading.Text))));
        Assert.Equal(".600", (await bench.Asked())!.Trim());
    }

    /// <summary>The cut before says what the first lift should show, far closer than the valve does.</summary>
    [Fact]
    public async Task The_first_lift_is_judged_by_the_cut_before()
    {
        var (first, seed, sweep) = await At([0.5, 0.6]);
        await Read(first, "150");
        await Read(first, "165");
        var next = seed.NextCut(standing.Bench.Data, sweep);
        var bench = await new BenchPage(await chromium.Page(), standing.Bench.Url, next).Open();
        await bench.Type("105");
        await Question(bench, "150");
        Assert.Contains("cut 0 flowed", await bench.Page.Locator("[data-question-words]").TextContentAsync());
        Assert.Empty(Readings(seed, next));
        await Read(bench, "152");
        Assert.Equal("152", Assert.Single(Readings(seed, next)).Reading.Text);
    }

    [Theory]
    [InlineData(".500")]
    [InlineData("500")]
    public async Task The_lift_typed_for_the_flow_is_asked(string typed)
    {
        var (bench, seed, sweep) = await At([0.5, 0.6]);
        await bench.Type(typed);
        await Question(bench, $"\"{typed}\" is the lift. What does the meter show there?");
        Assert.Empty(Readings(seed, sweep));
        // Nothing likely is known: Enter keeps nothing.
        await Settled(bench);
        await bench.Page.Keyboard.PressAsync("Enter");
        await bench.Page.GetByText($"Keep {typed} with K, or type the number again.").WaitForAsync();
        await Read(bench, "181.5");
        Assert.Equal("181.5", Assert.Single(Readings(seed, sweep)).Reading.Text);
    }

    [Fact]
    public async Task Past_the_end_of_the_scale_is_no_reading()
    {
        var seed = Seed.Put(standing.Bench.Data);
        var bench = await new BenchPage(await chromium.Page(), standing.Bench.Url, seed.Sweep).Open();
        await Read(bench, "9.8");
        await Read(bench, "19");
        await bench.Type("199");
        await Question(bench, "19.9? \"199\" is past the end of range large.");
        Assert.Equal(0, await bench.Page.GetByText("Keep 199").CountAsync());
        // More than any scale has.
        await bench.Type("272");
        await Question(bench, "27.2? \"272\" is no air flow here.");
        await Answer(bench, "Enter");
        // Nothing one slip away is likely: refused, marked in the box to be typed over.
        await bench.Type("104");
        await bench.Page.Locator("[data-problem]").GetByText("is past the end of range large").WaitForAsync();
        await bench.Page.Keyboard.TypeAsync("34");
        Assert.Equal("34", await bench.Box.InputValueAsync());
        await bench.Page.Keyboard.PressAsync("Enter");
        await bench.WaitUntilSaved();
        Assert.Equal(["9.8", "19", "27.2", "34"], Readings(seed, seed.Sweep).Select(r => r.Reading.Text));
    }

    [Fact]
    public async Task A_reading_is_stored_with_the_pressure_typed_after_it()
    {
        var (bench, seed, sweep) = await At([0.3, 0.5]);
        await Read(bench, "71.4 @27.9");
        await Read(bench, "181@27.8 inH2O");
        Assert.Equal([(71.4, 27.9), (181.0, 27.8)], Readings(seed, sweep).Select(r => (r.Reading.Value, r.TestPressure!.Value)));
    }

    [Fact]
    public async Task A_key_that_bounces_and_a_second_tap_answer_nothing()
    {
        var (bench, seed, sweep) = await At([0.5, 0.6]);
        // The question is there before the second press of Enter is, and the second comes at once.
        await bench.Page.EvaluateAsync("""
            () => {
              const entry = document.querySelector('sweep-entry');
              const ask = entry.ask.bind(entry);
              entry.ask = (...asked) => { ask(...asked); entry.savedAt = performance.now(); entry.save(false); window.bounced = true; };
            }
            """);
        await bench.Type("1952");
        await bench.Page.WaitForFunctionAsync("() => window.bounced === true");
        await Question(bench, "195.2?");
        Assert.Equal(0, await bench.Pending());
        Assert.Empty(Readings(seed, sweep));
        await Answer(bench, "Enter");
        Assert.Equal("195.2", Assert.Single(Readings(seed, sweep)).Reading.Text);
    }

    private async Task<(BenchPage Bench, Seed Seed, Guid Sweep)> At(double[] lifts)
    {
        var seed = Seed.Put(standing.Bench.Data);
        var sweep = seed.SweepAt(standing.Bench.Data, "readout", lifts);
        return (await new BenchPage(await chromium.Page(), standing.Bench.Url, sweep).Open(), seed, sweep);
    }

    /// <summary>Typed, taken unasked.</summary>
    private static async Task Read(BenchPage bench, string text)
    {
        await bench.Type(text);
        await bench.WaitUntilSaved();
        Assert.Equal(0, await bench.Page.Locator("[data-question]:visible, [data-problem]:visible").CountAsync());
    }

    private static async Task Question(BenchPage bench, string words) => await bench.Page.Locator("[data-question]:visible").GetByText(words).First.WaitForAsync();

    private static async Task Settled(BenchPage bench) => await bench.Page.WaitForFunctionAsync("() => document.querySelector('sweep-entry').settled()");

    private static async Task Answer(BenchPage bench, string key)
    {
        await Settled(bench);
        await bench.Page.Keyboard.PressAsync(key);
        await bench.Page.Locator("[data-question]").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await bench.WaitUntilSaved();
    }

    private List<Entry> Entries(Seed seed) => standing.Bench.Read(j => j.ReadJob(seed.Job).ToList());

    private IReadOnlyList<FlowReading> Readings(Seed seed, Guid sweep) => [.. Ledger.Of(Entries(seed)).ReadingsOf(sweep).Select(r => r.Fact)];
}
