using System.Text.Json;
using Microsoft.Playwright;
using Portwright.Shop.Record;
using Portwright.Store;

namespace Portwright.Web.Tests;

/// <summary>What a porter does at the bench page, and what it shows.</summary>
public sealed class BenchPage(IPage page, string url, Guid sweep)
{
    private readonly List<Guid> _saved = [];

    public IPage Page => page;

    public ILocator Box => Page.Locator("#reading");

    public async Task<BenchPage> Open()
    {
        Page.Response += (_, answer) =>
        {
            if (answer.Status == 200 && answer.Url.EndsWith("/reading", StringComparison.Ordinal) && answer.Request.PostData is { } sent)
            {
                lock (_saved)
                {
                    _saved.Add(JsonDocument.Parse(sent).RootElement.GetProperty("number").GetGuid());
                }
            }
        };
        await Page.GotoAsync($"{url}/sweep/{sweep}");
        await Box.WaitForAsync();
        // The script has taken the box when it has put the cursor there.
        await Page.WaitForFunctionAsync("() => document.activeElement?.id === 'reading'");
        return this;
    }

    public async Task Type(string text)
    {
        await Page.Keyboard.TypeAsync(text);
        await Page.Keyboard.PressAsync("Enter");
    }

    public Task<string?> Asked() => Page.Locator("[data-asked-lift]").TextContentAsync();

    /// <summary>Numbers of the readings the browser was told are saved.</summary>
    public IReadOnlyList<Guid> Saved
    {
        get
        {
            lock (_saved)
            {
                return [.. _saved];
            }
        }
    }

    public Task<int> Pending() => Page.EvaluateAsync<int>("() => Object.keys(localStorage).filter(k => k.startsWith('portwright.pending.')).length");

    /// <summary>However many wait in the browser: after fifty kills there may be hundreds.</summary>
    public async Task WaitUntilSaved() =>
        await Page.WaitForFunctionAsync("() => !Object.keys(localStorage).some(k => k.startsWith('portwright.pending.'))", null, new() { Timeout = 240_000 });

    public static IReadOnlyList<(string Lift, string Text)> Readings(Journal journal, Guid job) =>
        [.. journal.ReadJob(job).Select(e => e.Fact).OfType<FlowReading>().Select(r => (r.Lift.Text, r.Reading.Text))];
}
