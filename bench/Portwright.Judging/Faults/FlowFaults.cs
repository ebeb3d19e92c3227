using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Judging.Trial;
using Portwright.Shop.Record;

namespace Portwright.Judging.Faults;

/// <summary>One port of the set low by 1, 2, 4 percent at every lift: within one, sets are called matched; two shows at the wheel of a good shop; four is a bad casting or a wrong cut.</summary>
public sealed class LowPort() : Fault("one port low", ["low-against-sisters"], "seat-limits-low-lift")
{
    private static double Lower(Size size) => By(size, 0.01, 0.02, 0.04);

    /// <summary>Set-ups scatter: they tell it where the best judge would say, of all but one in twenty, that it lies under the limit.</summary>
    public override bool IsReadEnough(MadeShop shop, Size size)
    {
        var job = shop.Job;
        var scatter = job.Bench.Truth.SetUpScatter / Math.Sqrt(job.Looks.SweepsAPort) * Math.Sqrt(1 + 1.0 / job.SistersOf(shop.Planted!.Ports[0]).Count);
        return Lower(size) - Truth.Low >= (Suffices.Deviate + Suffices.DeviateSaid) * scatter;
    }

    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        port.Level *= 1 - Lower(size);
        return On(port);
    }
}

/// <summary>Flow falls past a lift to 1, 3, 6 percent under its peak at full lift: one is the first sign, three costs power, six is heard.</summary>
public sealed class BacksUp() : Fault(
    "flow falls off at high lift", ["backs-up"], "low-against-sisters", "short-side-too-fast", "short-side-torn-off")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        var from = job.Draw.Between(0.60, 0.75) * port.Top;
        var (level, top) = (port.Law.At(from), port.Law.At(port.Top));
        // What the law still gains past that lift is lost as well: the flow itself must fall.
        var fall = By(size, 0.01, 0.03, 0.06);
        var end = level * (1 - fall) / Math.Max(top, level);
        port.Faults.Add(lift =>
        {
            if (lift <= from) return 1;
            var over = (lift - from) / (port.Top - from);
            var wanted = level * (1 - fall * Math.Pow(over, 1.3));
            return over >= 1 ? end : wanted / port.Law.At(lift);
        });
        return On(port);
    }
}

/// <summary>One seat flows 5, 10, 20 percent less than its sisters' under a tenth of the valve's diameter: a wide or a rough seat, a sharp top cut, a seat sunk by a regrind.</summary>
public sealed class SeatLow() : Fault("seat flows little at low lift", ["seat-limits-low-lift"], "low-against-sisters")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        var short_ = By(size, 0.05, 0.10, 0.20);
        var head = port.Valve.Head;
        port.Faults.Add(lift => 1 - short_ * Math.Clamp((0.2 - lift / head) / 0.1, 0, 1));
        return On(port);
    }
}

/// <summary>In a band of two lifts the readings of one port scatter 2, 4, 8 times as much as the bench's, and it whistles there. It takes repeats to see.</summary>
public sealed class UnsteadyAir() : Fault("unsteady band", ["curve-unsteady"])
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var port = OneOfAny(job);
        job.Looks.Repeats = Math.Max(job.Looks.Repeats, 3);
        job.Looks.UpAndDown = false;
        var lifts = job.Looks.Lifts[port.Kind];
        var at = job.Draw.Whole(lifts.Count / 2, lifts.Count - 2);
        job.Unsteady.Add(new UnsteadyBand(port, lifts[at] - 1e-6, lifts[at + 1] + 1e-6, By(size, 2, 4, 8)));
        return On(port);
    }
}

/// <summary>An exhaust on the bench the wrong way round: one port, half of them, all.</summary>
public sealed class ExhaustDrawn() : Fault("exhaust drawn instead of blown", ["exhaust-drawn"], "low-against-sisters", "seat-limits-low-lift")
{
    public override Planted Plant(MadeJob job, Size size)
    {
        var exhausts = job.Of(PortKind.Exhaust);
        var drawn = By(size, job.Draw.Some(exhausts, 1), job.Draw.Some(exhausts, exhausts.Count / 2), exhausts);
        foreach (var port in drawn) job.Drawn.Add(port);
        return On([.. drawn]);
    }
}
