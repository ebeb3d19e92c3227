using Portwright.Judging.Shops;

namespace Portwright.Judging.Faults;

/// <summary>The plate reads off by 1, 2, 4 percent in the morning, and so does all that day's work: one is three times what a sound day drifts, four is a hose off.</summary>
public sealed class PlateOff() : Fault("plate off in the morning", ["bench-not-fit"], "bench-changed", "low-against-sisters")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        job.Looks.Morning = true;
        job.Looks.Calibrated = true;
        job.Looks.EarlierMornings = Math.Max(job.Looks.EarlierMornings, 3);
        job.BenchOff = job.Draw.Of(-1, 1) * By(size, 0.01, 0.02, 0.04);
        return On([.. job.Ports]);
    }
}

/// <summary>The meter is knocked after four fifths of the work: the plate of the evening reads off by 1, 2, 4 percent.</summary>
public sealed class MeterMoved() : Fault("meter moved since noon", ["bench-changed"], "bench-not-fit", "low-against-sisters")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var factor = 1 + job.Draw.Of(-1, 1) * By(size, 0.01, 0.02, 0.04);
        Watch(job, bench => bench.Moved *= factor);
        return On([.. job.Ports]);
    }

    internal static void Watch(MadeJob job, Action<MadeBench> change)
    {
        job.Looks.Morning = true;
        job.Looks.Evening = true;
        job.Looks.Calibrated = true;
        job.Looks.LeakWithEachSweep = false;
        job.Noon = 0.8;
        job.AtNoon = change;
    }
}

/// <summary>A seal goes after four fifths of the work: the bench leaks 1, 2, 4 percent of its smallest plate more than in the morning.</summary>
public sealed class LeakChanged() : Fault("leak changed since noon", ["bench-changed"], "bench-not-fit", "low-against-sisters")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var more = By(size, 0.01, 0.02, 0.04) * job.Bench.Plates.Min(p => p.Area);
        MeterMoved.Watch(job, bench => bench.Leak += more);
        return On([.. job.Ports]);
    }
}
