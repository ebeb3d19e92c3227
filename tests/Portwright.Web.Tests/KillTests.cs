using System.Globalization;
using Portwright.Shop.Record;

namespace Portwright.Web.Tests;

/// <summary>Page to disk: the process is killed at random moments while readings are typed without pause.</summary>
[Collection("browser")]
public sealed class KillTests(Chromium chromium, ITestOutputHelper output)
{
    /// <summary>Kills in a usual run, which is to end before the coffee is cold; the variable PORTWRIGHT_KILLS asks for another number, such as 50.</summary>
    private const int Usual = 8;

    [Fact]
    public async Task Killed_at_random_moments_no_saved_reading_is_lost_and_none_doubled()
    {
        var kills = int.TryParse(Environment.GetEnvironmentVariable("PORTWRIGHT_KILLS"), CultureInfo.InvariantCulture, out var asked) ? asked : Usual;
        var random = new Random(20_261_125);
        using var workbench = new RunningWorkbench();
        // More lifts than a hand can read between all kills.
        var lifts = 8 * kills;
        // Small lifts, so that the numbers are what a valve just off its seat would give: one that is not is asked about.
        var seed = Seed.Put(workbench.Data, lifts, step: 0.002);
        await workbench.Start();
        var bench = await new BenchPage(await chromium.Page(), workbench.Url, seed.Sweep).Open();
        var typed = 0;
        using var typing = new CancellationTokenSource();
        // A hand that never stops; one number after another, each told apart from all others.
        var hand = Task.Run(async () =>
        {
            while (!typing.IsCancellationRequested && typed < lifts)
            {
                await bench.Type((1 + typed / 10.0).ToString("0.0", CultureInfo.InvariantCulture));
                typed++;
                await Task.Delay(random.Next(80, 420));
            }
        });
        for (var kill = 1; kill <= kills; kill++)
        {
            await Task.Delay(random.Next(20, 700));
            var seen = bench.Saved;
            workbench.Kill();
            var kept = workbench.Read(j => j.ReadJob(seed.Job).Where(e => e.Fact is FlowReading).Select(e => e.Number).ToHashSet());
            Assert.All(seen, number => Assert.Contains(number, kept));
            await workbench.Start();
            if (typed >= lifts)
            {
                output.WriteLine($"All lifts were typed before kill {kill}.");
            }
        }

        await typing.CancelAsync();
        await hand;
        await bench.WaitUntilSaved();
        var entries = workbench.Read(j => j.ReadJob(seed.Job).Where(e => e.Fact is FlowReading).ToList());
        var texts = entries.Select(e => ((FlowReading)e.Fact).Reading.Text).ToList();
        Assert.Equal(typed, texts.Count);
        Assert.Equal(texts.Count, texts.Distinct().Count());
        Assert.Equal(Enumerable.Range(0, typed).Select(i => (1 + i / 10.0).ToString("0.0", CultureInfo.InvariantCulture)), texts);
        Assert.True(workbench.Read(j => j.Check()).IsSound);
        output.WriteLine($"{kills} kills, {typed} readings typed, {texts.Count} kept, none lost, none doubled; integrity check clean.");
    }
}
