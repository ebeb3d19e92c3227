using System.Text.Json;
using Microsoft.Playwright;

namespace Portwright.Web.Tests;

/// <summary>Readings held in the browser: sent when they can be, seen on every page, and not sent for ever where they are refused.</summary>
[Collection("browser")]
public sealed class HeldReadingsTests(Chromium chromium, StandingWorkbench standing)
{
    [Fact]
    public async Task Every_page_says_which_sweep_still_waits_and_leads_to_it()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data, asked: false);
        var first = await chromium.Page();
        // For the whole browser: a page being closed lets go of its own routes first, and a last try would reach the record.
        await first.Context.RouteAsync("**/reading", r => r.AbortAsync());
        await first.GotoAsync($"{workbench.Url}/sweep/{seed.Sweep}?skip=leak");
        await first.WaitForFunctionAsync("() => document.activeElement?.id === 'reading'");
        foreach (var text in new[] { "10", "20", "30" })
        {
            await first.Keyboard.TypeAsync(text);
            await first.Keyboard.PressAsync("Enter");
        }

        // A hand closes the page after it saw its numbers stand as not saved.
        await first.WaitForFunctionAsync("() => document.querySelectorAll('[data-pending] li').length === 3");
        Assert.Equal(0, await first.Locator("aside.held").CountAsync());
        await first.CloseAsync();
        var page = await first.Context.NewPageAsync();
        foreach (var path in new[] { "/bench", $"/sweep/{seed.Sweep}", $"/port/{seed.Intake}" })
        {
            await page.GotoAsync(workbench.Url + path);
            Assert.StartsWith(
                "3 readings wait to be saved on intake 1, cut 0, head A, Tamarack eight. Open it to save them.",
                await page.TextContentAsync("aside.held"),
                StringComparison.Ordinal);
        }

        await page.Context.UnrouteAsync("**/reading");
        await page.ClickAsync("aside.held a");
        await page.WaitForFunctionAsync("() => !Object.keys(localStorage).some(k => k.startsWith('portwright.pending.') || k.startsWith('portwright.name.'))");
        Assert.Equal(["10", "20", "30"], workbench.Read(j => BenchPage.Readings(j, seed.Job)).Select(r => r.Text));
        await page.GotoAsync($"{workbench.Url}/bench");
        Assert.Equal(0, await page.Locator("aside.held").CountAsync());
        Assert.Empty(chromium.Complaints);
    }

    [Fact]
    public async Task A_page_whose_token_grew_old_fetches_a_fresh_one_and_is_not_loaded_anew()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        await bench.Page.EvaluateAsync("() => { window.stillHere = true; }");
        await bench.Page.Context.ClearCookiesAsync();
        await bench.Type("10");
        await bench.Page.Keyboard.TypeAsync("2");
        await bench.WaitUntilSaved();
        await bench.Page.Keyboard.TypeAsync("0");
        await bench.Page.Keyboard.PressAsync("Enter");
        await bench.WaitUntilSaved();
        Assert.True(await bench.Page.EvaluateAsync<bool>("() => window.stillHere === true"));
        Assert.Equal(["10", "20"], workbench.Read(j => BenchPage.Readings(j, seed.Job)).Select(r => r.Text));
    }

    [Fact]
    public async Task Where_a_fresh_token_does_not_help_the_page_says_what_to_do_and_keeps_the_reading()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        var sent = 0;
        await bench.Page.RouteAsync("**/reading", r =>
        {
            sent++;
            return Answer(r, 400, "The form is too old.", "form-token");
        });
        await bench.Type("10");
        await bench.Page.GetByText("Let this browser keep cookies for 127.0.0.1, then load the page again.").WaitForAsync();
        await Task.Delay(1500);
        Assert.Equal(2, sent);
        Assert.Equal(1, await bench.Pending());
        await bench.Page.UnrouteAsync("**/reading");
        await bench.Page.ReloadAsync();
        await bench.WaitUntilSaved();
        Assert.Equal("10", Assert.Single(workbench.Read(j => BenchPage.Readings(j, seed.Job))).Text);
    }

    [Theory]
    [InlineData(400)]
    [InlineData(404)]
    [InlineData(413)]
    [InlineData(422)]
    public async Task A_refused_reading_stays_to_be_seen_is_sent_once_and_holds_up_no_other(int status)
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        var typedOn = new TaskCompletionSource();
        var refused = 0;
        await bench.Page.RouteAsync("**/reading", async r =>
        {
            if (JsonDocument.Parse(r.Request.PostData!).RootElement.GetProperty("text").GetString() != "10")
            {
                await r.ContinueAsync();
                return;
            }

            refused++;
            await typedOn.Task;
            await Answer(r, status, "The bench card has no range named 4.");
        });
        await bench.Type("10");
        await bench.Page.Keyboard.TypeAsync("2");
        Assert.Equal("2", await bench.Box.InputValueAsync());
        typedOn.SetResult();
        var item = bench.Page.Locator("[data-refused] li");
        await item.WaitForAsync();
        Assert.StartsWith(".050: 10, not taken. The bench card has no range named 4.", await item.TextContentAsync(), StringComparison.Ordinal);
        // What was being typed keeps its lift.
        Assert.Equal(".100", (await bench.Asked())!.Trim());
        await bench.Page.Keyboard.TypeAsync("0");
        await bench.Page.Keyboard.PressAsync("Enter");
        await bench.WaitUntilSaved();
        Assert.Equal(("0.1 in", "20"), Assert.Single(workbench.Read(j => BenchPage.Readings(j, seed.Job))));
        Assert.Equal(1, refused);

        await bench.Page.ReloadAsync();
        await item.WaitForAsync();
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Type it again", Exact = true }).Last.ClickAsync();
        Assert.Equal("10", await bench.Box.InputValueAsync());
        Assert.Equal(".050", (await bench.Asked())!.Trim());
        Assert.Equal(0, await item.CountAsync());
    }

    [Fact]
    public async Task A_fault_of_the_workbench_is_waited_out()
    {
        var workbench = standing.Bench;
        var seed = Seed.Put(workbench.Data);
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        var times = new List<DateTime>();
        await bench.Page.RouteAsync("**/reading", r =>
        {
            times.Add(DateTime.UtcNow);
            return times.Count <= 4 ? Answer(r, 503, "The record is in use.") : r.ContinueAsync();
        });
        await bench.Type("10");
        await bench.Page.GetByText("The record is in use. What you type is held").WaitForAsync();
        await bench.WaitUntilSaved();
        Assert.Equal(5, times.Count);
        // Each wait is longer than the one before. A slow machine makes them longer still, never shorter.
        for (var (i, wait) = (1, 250.0); i < times.Count; i++, wait *= 1.5) Assert.InRange((times[i] - times[i - 1]).TotalMilliseconds, wait - 10, double.MaxValue);
        Assert.Equal("10", Assert.Single(workbench.Read(j => BenchPage.Readings(j, seed.Job))).Text);
    }

    private static Task Answer(IRoute route, int status, string problem, string? code = null) => route.FulfillAsync(new()
    {
        Status = status,
        ContentType = "application/json",
        Body = JsonSerializer.Serialize(new { problem, code }),
    });
}
