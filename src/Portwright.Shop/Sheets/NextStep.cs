using Portwright.Physics.Uncertainty;

namespace Portwright.Shop.Sheets;

/// <summary>The one thing to do next on a job, with the reason.</summary>
internal static class NextStep
{
    public static (string Next, string Reason, PortOnBoard? Port) Of(IReadOnlyList<HeadOnBoard> heads)
    {
        var ports = heads.SelectMany(h => h.Ports.OrderBy(p => p.Port.Fact.Cylinder).ThenBy(p => p.Port.Fact.Kind).Select(p => (h.Head, Port: p))).ToList();
        if (ports.Count == 0)
        {
            return ("Draw the first head.", "A job is its heads and their ports; the port is where everything is recorded.", null);
        }

        if (ports.FirstOrDefault(p => p.Port.OpenSweep is not null) is { Port: { } open, Head: { } on })
        {
            var lifts = open.LiftsLeft == 1 ? "one lift" : $"{open.LiftsLeft} lifts";
            return ($"Finish the sweep of {open.Port.Fact.Name}, {on.Fact.Name}: {lifts} left.", "A set-up taken off the bench cannot be taken up again without its scatter.", open);
        }

        if (ports.FirstOrDefault(p => p.Port.Flow is not null && p.Port.AgainstLast is { } a && a.Curves.WholeCurve.Verdict == Verdict.NotEnoughReadings) is { Port: { } unsure })
        {
            return ($"Read {unsure.Port.Fact.Name} again.", "The last cut cannot be told from the one before with the readings at hand.", unsure);
        }

        // A real loss over the whole curve comes before new metal is cut.
        if (ports.FirstOrDefault(p => p.Port.AgainstLast is { } a && a.Curves.WholeCurve.Verdict == Verdict.Real && a.Curves.WholeCurve.Of.Value < 0) is { Port: { } worse, Head: { } where })
        {
            return ($"Look at {worse.Port.Fact.Name}, {where.Fact.Name}.", "Its last cut lost flow, and the loss is real.", worse);
        }

        if (ports.FirstOrDefault(p => p.Port.Flow is null) is { Port: { } bare, Head: { } head })
        {
            return ($"Sweep {bare.Port.Fact.Name}, {head.Fact.Name}, as received.", "Without a baseline no cut can be judged.", bare);
        }

        return ("Every port has a sweep.", "Print the port sheets, or take the next cut.", null);
    }
}
