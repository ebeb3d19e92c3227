using Portwright.Engine.Runs;
using Portwright.Store.Runs;

namespace Portwright.Store.Tests.Runs;

/// <summary>Engine runs kept beside the record: lost without harm, shared between processes, never in the way.</summary>
public sealed class KeptRunsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string File => _folder.File("engine-runs.jsonl");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_point_comes_back_bit_for_bit()
    {
        var point = Point(1.0 / 3);
        new KeptRuns(_folder.Path).Keep("a", point);
        Assert.Equal(point, new KeptRuns(_folder.Path).Find("a"));
        Assert.Null(new KeptRuns(_folder.Path).Find("b"));
    }

    [Fact]
    public void A_torn_line_is_passed_over_and_does_not_spoil_the_next()
    {
        new KeptRuns(_folder.Path).Keep("a", Point(1));
        System.IO.File.AppendAllText(File, """{"Key":"b","Point":{"TurnsASec""");
        var after = new KeptRuns(_folder.Path);
        Assert.NotNull(after.Find("a"));
        Assert.Null(after.Find("b"));
        after.Keep("c", Point(3));
        var then = new KeptRuns(_folder.Path);
        Assert.Equal(Point(1), then.Find("a"));
        Assert.Equal(Point(3), then.Find("c"));
    }

    [Fact]
    public void A_line_still_being_written_is_taken_in_once_it_is_whole()
    {
        var one = new KeptRuns(_folder.Path);
        one.Keep("a", Point(1));
        var line = System.IO.File.ReadAllText(File).Replace("\"a\"", "\"b\"", StringComparison.Ordinal);
        System.IO.File.AppendAllText(File, line[..40]);
        one.TakeIn();
        Assert.Null(one.Find("b"));
        System.IO.File.AppendAllText(File, line[40..]);
        one.TakeIn();
        Assert.Equal(Point(1), one.Find("b"));
    }

    [Fact]
    public void Two_processes_take_in_what_the_other_added()
    {
        KeptRuns one = new(_folder.Path), other = new(_folder.Path);
        Parallel.For(0, 40, i => (i % 2 == 0 ? one : other).Keep($"{i}", Point(i + 1)));
        one.TakeIn();
        other.TakeIn();
        Assert.All(Enumerable.Range(0, 40), i =>
        {
            Assert.Equal(Point(i + 1), one.Find($"{i}"));
            Assert.Equal(Point(i + 1), other.Find($"{i}"));
        });
    }

    [Fact]
    public void A_file_grown_too_large_is_begun_anew()
    {
        new KeptRuns(_folder.Path).Keep("a", Point(1));
        using (var file = System.IO.File.OpenWrite(File)) file.SetLength(65L * 1024 * 1024);
        var anew = new KeptRuns(_folder.Path);
        Assert.Null(anew.Find("a"));
        anew.Keep("b", Point(2));
        Assert.InRange(new FileInfo(File).Length, 1, 10_000);
        Assert.NotNull(new KeptRuns(_folder.Path).Find("b"));
    }

    [Fact]
    public void Deleted_while_in_use_it_goes_on()
    {
        var kept = new KeptRuns(_folder.Path);
        kept.Keep("a", Point(1));
        System.IO.File.Delete(File);
        kept.TakeIn();
        Assert.NotNull(kept.Find("a"));
        kept.Keep("b", Point(2));
        kept.TakeIn();
        Assert.NotNull(kept.Find("b"));
        Assert.NotNull(new KeptRuns(_folder.Path).Find("b"));
    }

    private static OperatingPoint Point(double turns) => new()
    {
        TurnsASecond = turns,
        VolumetricEfficiency = 0.9,
        TrappedMass = 1e-3 / 3,
        Residual = 0.05,
        Reversion = 0.01,
        FreshLost = 0,
        PeakPressure = 7e6,
        IndicatedPressure = 1.1e6,
        PumpingPressure = -2e4,
        FrictionPressure = 1.5e5,
        Torque = 500.0 / 7,
        Power = 2e5,
        Cycles = 5,
        LastChange = 1e-4,
        Steps = 4000,
        IsSettled = true,
    };
}
