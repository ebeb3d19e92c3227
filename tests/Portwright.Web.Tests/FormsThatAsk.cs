using Microsoft.Playwright;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>What is mistyped in a form is asked about beside its box, the cursor in it; nothing is stored while a question stands.</summary>
[Collection("browser")]
public sealed class FormsThatAsk(Chromium chromium, StandingWorkbench standing)
{
    /// <summary>Bench 640 m above the sea.</summary>
    private const double Height = 640;

    [Theory]
    [InlineData("head", "202", "2.02", 2.02)]
    [InlineData("angle", "54", "45", 45)]
    [InlineData("throat", "178", "1.78", 1.78)]
    [InlineData("width", "60", "0.06", 0.06)]
    [InlineData("stem", "342", "0.342", 0.342)]
    public async Task Enter_takes_the_valves_likely_measure(string box, string typed, string likely, double value)
    {
        var (page, seed) = await Open(s => $"/port/{s.Intake}/valve");
        var before = Valve(seed);
        await page.Locator($"#f-{box}").FillAsync(typed);
        await page.Keyboard.PressAsync("Enter");
        await Asked(page, box, $"{likely}?");
        Assert.Equal(before, Valve(seed));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync($"**/port/{seed.Intake}");
        var valve = Valve(seed);
        var stored = box switch
        {
            "head" => valve.HeadDiameter / 0.0254,
            "throat" => valve.ThroatDiameter / 0.0254,
            "width" => valve.SeatWidth / 0.0254,
            "stem" => valve.StemDiameter / 0.0254,
            _ => valve.SeatAngle * 180 / Math.PI,
        };
        Assert.Equal(value, stored, 1e-9);
        Assert.DoesNotContain(Entries(seed), e => e.Fact is Confirmed);
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_number_typed_anew_goes_before_the_one_that_was_offered()
    {
        var (page, seed) = await Open(s => $"/port/{s.Intake}/valve");
        await page.Locator("#f-head").FillAsync("202");
        await page.Keyboard.PressAsync("Enter");
        await Asked(page, "head", "2.02?");
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("2.05");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync($"**/port/{seed.Intake}");
        Assert.Equal(2.05, Valve(seed).HeadDiameter / 0.0254, 1e-9);
    }

    [Fact]
    public async Task A_throat_wider_than_its_valve_is_asked_and_can_be_kept()
    {
        var (page, seed) = await Open(s => $"/port/{s.Intake}/valve");
        await page.Locator("#f-head").FillAsync("2.02");
        await page.Locator("#f-throat").FillAsync("2.10");
        await page.Keyboard.PressAsync("Enter");
        await Asked(page, "throat", "\"2.10\"? It is unusual: under a valve of 2.02");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep 2.10", Exact = true }).ClickAsync();
        await page.WaitForURLAsync($"**/port/{seed.Intake}");
        Assert.Equal(2.10, Valve(seed).ThroatDiameter / 0.0254, 1e-9);
        var confirmed = Assert.IsType<Confirmed>(Assert.Single(Entries(seed), e => e.Fact is Confirmed).Fact);
        Assert.Equal((seed.Intake, "Throat under the seat", "2.10"), (confirmed.Of, confirmed.Field, confirmed.Text));
        await page.GetByText("Throat under the seat \"2.10\" was asked about when it was typed, and kept.").First.WaitForAsync();
        await page.GetByText("is wider than its valve").First.WaitForAsync();
    }

    [Theory]
    [InlineData("82")]
    [InlineData("2.8")]
    public async Task The_test_pressure_is_asked(string typed)
    {
        var (page, seed) = await Open(s => $"/port/{s.Intake}/start");
        await page.Locator("#f-pressure").FillAsync(typed);
        await page.Keyboard.PressAsync("Enter");
        await Asked(page, "pressure", "28?");
        Assert.Single(Entries(seed), e => e.Fact is Sweep);
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/sweep/*");
        Assert.Equal(["28 inH2O", "28"], Entries(seed).Select(e => e.Fact).OfType<Sweep>().Select(s => s.TestPressure.Text));
    }

    /// <summary>The room's air before the first reading, the bench 640 m above the sea.</summary>
    [Theory]
    [InlineData("temperature", "17.3", "17.3 °C", "17.3 °C")]
    [InlineData("humidity", "0.61", "61", "61")]
    [InlineData("barometer", "1009.5", "1009.5 hPa at sea level", "1009.5 hPa")]
    [InlineData("barometer", "1021 hPa", "1021 hPa at sea level", "1021 hPa")]
    [InlineData("barometer", "2790", "27.9", "27.9")]
    public async Task The_rooms_air_is_asked(string box, string typed, string likely, string stored)
    {
        var (page, seed) = await Air();
        await page.Locator($"#f-{box}").FillAsync(typed);
        await page.Keyboard.PressAsync("Enter");
        await Asked(page, box, $"{likely}?");
        Assert.DoesNotContain(Entries(seed), e => e.Fact is WeatherReading);
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#f-leak").WaitForAsync();
        var weather = Assert.Single(Entries(seed).Select(e => e.Fact).OfType<WeatherReading>());
        Assert.Equal(stored, (box switch { "temperature" => weather.Temperature, "humidity" => weather.Humidity!, _ => weather.Barometer }).Text.Trim());
        var report = likely.EndsWith("at sea level", StringComparison.Ordinal);
        Assert.Equal(report ? (PressureKind.SeaLevel, (double?)Height) : (PressureKind.Station, null), (weather.Pressure, weather.Elevation?.Value));
    }

    /// <summary>No wall 640 m up shows so little; nothing one slip away is likely.</summary>
    [Fact]
    public async Task A_barometer_of_a_high_mountain_is_asked_and_can_be_kept()
    {
        var (page, seed) = await Air();
        await page.Locator("#f-barometer").FillAsync("23.0");
        await page.Keyboard.PressAsync("Enter");
        await Asked(page, "barometer", "\"23.0\"?");
        Assert.DoesNotContain(Entries(seed), e => e.Fact is WeatherReading);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep 23.0", Exact = true }).ClickAsync();
        await page.Locator("#f-leak").WaitForAsync();
        Assert.Equal("23.0", Assert.Single(Entries(seed).Select(e => e.Fact).OfType<WeatherReading>()).Barometer.Text);
        Assert.Equal(("Barometer", "23.0"), Assert.Single(Entries(seed).Select(e => e.Fact).OfType<Confirmed>().Select(c => (c.Field, c.Text))));
    }

    [Fact]
    public async Task A_refusal_puts_the_cursor_into_its_box()
    {
        var (page, _) = await Air();
        await page.Locator("#f-temperature").FillAsync("7o");
        await page.Locator("#f-barometer").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#f-temperature-problem").WaitForAsync();
        await page.WaitForFunctionAsync("() => document.activeElement?.id === 'f-temperature'");
    }

    private async Task<(IPage Page, Seed Seed)> Open(Func<Seed, string> path)
    {
        var seed = Seed.Put(standing.Bench.Data);
        var page = await chromium.Page();
        await page.GotoAsync(standing.Bench.Url + path(seed));
        return (page, seed);
    }

    private async Task<(IPage Page, Seed Seed)> Air()
    {
        var seed = Seed.Put(standing.Bench.Data, asked: false, elevation: Height);
        var page = await chromium.Page();
        await page.GotoAsync($"{standing.Bench.Url}/sweep/{seed.Sweep}");
        await page.Locator("#f-barometer").FillAsync("27.8");
        await page.Locator("#f-temperature").FillAsync("70");
        await page.Locator("#f-humidity").FillAsync("");
        return (page, seed);
    }

    private static async Task Asked(IPage page, string box, string words)
    {
        await page.Locator($"#f-{box}-question").GetByText(words).First.WaitForAsync();
        await page.WaitForFunctionAsync("id => document.activeElement?.id === id", $"f-{box}");
    }

    private List<Entry> Entries(Seed seed) => standing.Bench.Read(j => j.ReadJob(seed.Job).ToList());

    private ValveData Valve(Seed seed) => Ledger.Of(Entries(seed)).Get<Port>(seed.Intake).Fact.Valve!;
}
