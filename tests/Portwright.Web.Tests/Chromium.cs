using Microsoft.Playwright;

namespace Portwright.Web.Tests;

/// <summary>The machine's Chromium. Where there is none the tests fail and say so: what a browser does is not known without one.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private readonly List<IBrowserContext> _open = [];
    private IPlaywright? _driver;
    private string? _test;

    public IBrowser Browser { get; private set; } = null!;

    /// <summary>What the browser complained of, in all pages.</summary>
    public List<string> Complaints { get; } = [];

    public async ValueTask InitializeAsync()
    {
        _driver = await Playwright.CreateAsync();
        Browser = await _driver.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Find(),
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
                "--disable-sync", "--host-resolver-rules=MAP elsewhere.example 127.0.0.1",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        _driver?.Dispose();
    }

    /// <summary>A fresh browser profile's page. Complaints about the content security policy are gathered. Pages of earlier tests are closed: left open, they call for ever for a workbench that is gone.</summary>
    public async Task<IPage> Page(int width = 1280, int height = 800, ColorScheme scheme = ColorScheme.Light, string locale = "en-US")
    {
        await CloseEarlier();
        var context = await Browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            ColorScheme = scheme,
            Locale = locale,
            HasTouch = width < 700,
            ReducedMotion = ReducedMotion.Reduce,
        });
        _open.Add(context);
        // Long enough for a machine many times slower than a porter's: a test that fails for want of time says nothing of the workbench.
        context.SetDefaultTimeout(90_000);
        var page = await context.NewPageAsync();
        page.Console += (_, message) =>
        {
            if (message.Text.Contains("Content Security Policy", StringComparison.OrdinalIgnoreCase))
            {
                lock (Complaints)
                {
                    Complaints.Add(message.Text);
                }
            }
        };
        page.PageError += (_, error) =>
        {
            if (FrameworkNoise.Is(error))
            {
                return;
            }

            lock (Complaints)
            {
                Complaints.Add(error);
            }
        };
        return page;
    }

    private async Task CloseEarlier()
    {
        var test = TestContext.Current.Test?.UniqueID;
        if (test == _test)
        {
            return;
        }

        foreach (var context in _open)
        {
            await context.CloseAsync();
        }

        _open.Clear();
        _test = test;
    }

    private static string Find()
    {
        var named = Environment.GetEnvironmentVariable("CHROMIUM");
        if (!string.IsNullOrEmpty(named))
        {
            return File.Exists(named) ? named : throw new FileNotFoundException($"CHROMIUM names {named}, and there is no such program.");
        }

        string[] names = OperatingSystem.IsWindows() ? ["chrome.exe", "msedge.exe"] : ["chromium", "chromium-browser", "google-chrome"];
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Append("/usr/bin");
        return folders.SelectMany(f => names.Select(n => Path.Combine(f, n))).FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException("No Chromium was found. Install it (Debian: apt install chromium), or name its program in the variable CHROMIUM.");
    }
}

[CollectionDefinition("browser")]
public sealed class BrowserTests : ICollectionFixture<Chromium>, ICollectionFixture<StandingWorkbench>;

// A browser of its own: what is looked at runs beside what is typed.
[CollectionDefinition("pages")]
public sealed class LookedAt : ICollectionFixture<Chromium>;
