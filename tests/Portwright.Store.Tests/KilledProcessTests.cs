using System.Globalization;
using Portwright.Crash;

namespace Portwright.Store.Tests;

/// <summary>The promise: what was acknowledged is there, once, however the program ends.</summary>
public sealed class KilledProcessTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void After_sixty_kills_every_acknowledged_entry_is_there_once_and_whole()
    {
        // PORTWRIGHT_KILLS asks for more of them, for a long night.
        var kills = int.TryParse(Environment.GetEnvironmentVariable("PORTWRIGHT_KILLS"), CultureInfo.InvariantCulture, out var k) ? k : 60;
        var random = new Random(20260302);
        var acknowledged = 0;
        var between = 0;
        for (var kill = 0; kill < kills; kill++)
        {
            using var child = Child.Start("append", _folder.Path, acknowledged.ToString(CultureInfo.InvariantCulture));
            var said = new List<string>();
            if (kill % 6 == 0)
            {
                // Somewhere in its start, before or while it opens the record.
                Thread.Sleep(random.Next(0, 500));
            }
            else
            {
                said.Add(child.ReadLine()!);
                var until = System.Diagnostics.Stopwatch.StartNew();
                var microseconds = random.Next(0, 40_000);
                while (until.Elapsed.TotalMicroseconds < microseconds)
                {
                    Thread.SpinWait(50);
                }
            }

            child.Kill();
            said.AddRange(child.ReadToEnd());
            acknowledged = said.Count == 0 ? acknowledged : int.Parse(said[^1], CultureInfo.InvariantCulture);

            using var journal = Journal.Open(_folder.Path);
            var there = journal.ReadAll().Select(Appending.IndexOf).ToList();
            Assert.Equal(Enumerable.Range(0, there.Count), there);
            Assert.True(there.Count >= acknowledged, $"kill {kill}: {acknowledged} acknowledged, {there.Count} there");
            Assert.True(Appending.IsWhole(there.Count), $"kill {kill}: {there.Count} entries: some that belong together were torn apart");
            Assert.InRange(there.Count - acknowledged, 0, 3);
            var health = journal.Check();
            Assert.True(health.IsSound, string.Join(" ", health.Words));
            between += there.Count > acknowledged ? 1 : 0;
        }

        // Five of six kills wait for at least one acknowledgement.
        Assert.True(acknowledged >= kills * 5 / 6, $"only {acknowledged} entries were acknowledged: the kills came too early to prove anything");
        TestContext.Current.SendDiagnosticMessage($"{kills} kills, {acknowledged} acknowledged, {between} saved but not yet acknowledged");
    }

    [Fact]
    public void A_retry_of_what_was_saved_but_not_acknowledged_does_not_double_it()
    {
        using (var journal = Journal.Open(_folder.Path))
        {
            journal.Append(Appending.UnitFrom(0));
        }

        // The child begins with the same unit again, as after a kill between the commit and its answer.
        using (var child = Child.Start("append", _folder.Path, "0"))
        {
            Assert.Equal("3", child.ReadLine());
            Assert.Equal("4", child.ReadLine());
            child.Kill();
            child.ReadToEnd();
        }

        using var after = Journal.Open(_folder.Path);
        var there = after.ReadAll().Select(Appending.IndexOf).ToList();
        Assert.Equal(Enumerable.Range(0, there.Count), there);
    }

    [Fact]
    public void Killed_while_a_backup_is_running_elsewhere_both_are_whole()
    {
        using var child = Child.Start("append", _folder.Path, "0");
        child.ReadLine();
        var backups = new List<BackupResult>();
        using (var journal = Journal.Open(_folder.Path))
        {
            for (var i = 0; i < 5; i++)
            {
                backups.Add(journal.Backup(_folder.File($"backup-{i}.db")));
            }

            child.Kill();
            child.ReadToEnd();
            Assert.True(journal.Check().IsSound);
        }

        Assert.All(backups, b => Assert.True(b.Health.IsSound));
        Assert.Equal(backups.Select(b => b.Health.Entries).Order(), backups.Select(b => b.Health.Entries));
    }
}
