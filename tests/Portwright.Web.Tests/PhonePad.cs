using Microsoft.Playwright;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>The pad of the phone under a thumb that is wet, quick and slides.</summary>
[Collection("browser")]
public sealed class PhonePad(Chromium chromium, StandingWorkbench standing)
{
    /// <summary>CSS px of a millimetre.</summary>
    private const double Millimetre = 96 / 25.4;

    [Theory]
    [InlineData(320, 640)]
    [InlineData(360, 740)]
    [InlineData(390, 844)]
    public async Task Keys_are_high_enough_and_take_back_stands_far_from_save(int width, int height)
    {
        var (bench, _, _) = await At(width, height);
        foreach (var key in await bench.Page.Locator(".keypad button").AllAsync())
        {
            Assert.True((await key.BoundingBoxAsync())!.Height >= 56, await key.TextContentAsync());
        }

        var (save, back) = (await Key(bench, "save").BoundingBoxAsync(), await Key(bench, "back").BoundingBoxAsync());
        var across = Math.Max(0, Math.Max(save!.X - (back!.X + back.Width), back.X - (save.X + save.Width)));
        var along = Math.Max(0, Math.Max(save.Y - (back.Y + back.Height), back.Y - (save.Y + save.Height)));
        Assert.True(Math.Sqrt(across * across + along * along) >= 12 * Millimetre, $"{across}, {along}");
    }

    [Fact]
    public async Task A_double_tap_on_save_saves_once()
    {
        var (bench, seed, sweep) = await At();
        await Tap(bench, "1", "8", "1");
        await Key(bench, "save").DblClickAsync();
        await bench.WaitUntilSaved();
        Assert.Equal(["181"], Readings(seed, sweep));
        Assert.Equal(".600", (await bench.Asked())!.Trim());
    }

    [Fact]
    public async Task A_double_tap_on_save_does_not_answer_what_it_asked()
    {
        var (bench, seed, sweep) = await At();
        await Tap(bench, "1", "9", "5", "2");
        await Key(bench, "save").DblClickAsync();
        await bench.Page.Locator("[data-question]:visible").WaitForAsync();
        Assert.Empty(Readings(seed, sweep));
    }

    [Fact]
    public async Task A_text_that_stands_marked_is_typed_over_and_rubbed_out()
    {
        var (bench, _, _) = await At();
        await bench.Box.FillAsync("777");
        await bench.Box.SelectTextAsync();
        await Tap(bench, "1");
        Assert.Equal("1", await bench.Box.InputValueAsync());
        await Tap(bench, "2", "3");
        await Tap(bench, "rub");
        Assert.Equal("12", await bench.Box.InputValueAsync());
        await bench.Box.SelectTextAsync();
        await Tap(bench, "rub");
        Assert.Equal("", await bench.Box.InputValueAsync());
    }

    /// <summary>Over a key's edge as well: the key that was touched is meant.</summary>
    [Theory]
    [InlineData(5, "5")]
    [InlineData(14, "")]
    public async Task A_thumb_that_slides_a_little_over_a_keys_edge_still_taps_it(int slid, string typed)
    {
        var (bench, _, _) = await At();
        var key = (await Key(bench, "5").BoundingBoxAsync())!;
        var (x, y) = (key.X + key.Width - 2, key.Y + key.Height / 2);
        await bench.Page.Mouse.MoveAsync(x, y);
        await bench.Page.Mouse.DownAsync();
        await bench.Page.Mouse.MoveAsync(x + slid, y);
        await bench.Page.Mouse.UpAsync();
        Assert.Equal(typed, await bench.Box.InputValueAsync());
        // A finger's tap is one tap.
        await Key(bench, "5").TapAsync();
        Assert.Equal(typed + "5", await bench.Box.InputValueAsync());
    }

    [Theory]
    [InlineData(360, 740)]
    [InlineData(320, 640)]
    public async Task No_key_moves_while_a_question_appears_and_the_question_is_in_sight(int width, int height)
    {
        var (bench, seed, sweep) = await At(width, height);
        var before = await Places(bench);
        await Tap(bench, "1", "9", "5", "2");
        await Tap(bench, "save");
        await bench.Page.Locator("[data-question]:visible").WaitForAsync();
        if (Environment.GetEnvironmentVariable("PORTWRIGHT_PICTURES") is { Length: > 0 } folder)
        {
            await bench.Page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"question-{width}.png") });
        }

        Assert.Equal(before, await Places(bench));
        foreach (var button in await bench.Page.Locator("[data-question-keys] button:visible").AllAsync())
        {
            var place = (await button.BoundingBoxAsync())!;
            Assert.True(place.Height >= 44, $"{place.Height}");
            Assert.True(place.Y >= 0 && place.Y + place.Height <= before[0].Y, $"{await button.TextContentAsync()} at {place.Y}, the pad begins at {before[0].Y}");
        }

        await bench.Page.WaitForFunctionAsync("() => document.querySelector('sweep-entry').settled()");
        await Tap(bench, "save");
        await bench.Page.Locator("[data-question]").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await bench.WaitUntilSaved();
        Assert.Equal(before, await Places(bench));
        Assert.Equal(["195.2"], Readings(seed, sweep));
    }

    private static async Task<List<(double X, double Y)>> Places(BenchPage bench)
    {
        var places = new List<(double, double)>();
        foreach (var key in await bench.Page.Locator(".keypad button").AllAsync())
        {
            var place = (await key.BoundingBoxAsync())!;
            places.Add((place.X, place.Y));
        }

        return places;
    }

    private static ILocator Key(BenchPage bench, string press) => bench.Page.Locator($".keypad [data-press='{press}']");

    private static async Task Tap(BenchPage bench, params string[] keys)
    {
        foreach (var key in keys) await Key(bench, key).TapAsync();
    }

    private async Task<(BenchPage Bench, Seed Seed, Guid Sweep)> At(int width = 360, int height = 740)
    {
        var seed = Seed.Put(standing.Bench.Data);
        var sweep = seed.SweepAt(standing.Bench.Data, "readout", 0.5, 0.6);
        return (await new BenchPage(await chromium.Page(width, height), standing.Bench.Url, sweep).Open(), seed, sweep);
    }

    private IReadOnlyList<string> Readings(Seed seed, Guid sweep) => [.. standing.Bench.Read(j => Ledger.Of(j.ReadJob(seed.Job))).ReadingsOf(sweep).Select(r => r.Fact.Reading.Text)];
}
