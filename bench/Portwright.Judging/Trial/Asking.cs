using Portwright.Judging.Ports;
using Portwright.Judging.Shops;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;

namespace Portwright.Judging.Trial;

/// <summary>The one place where the program is asked.</summary>
public static class Asking
{
    /// <summary>Rules that speak of the bench: said of eight ports they are said once.</summary>
    private static readonly HashSet<string> OfTheBench = ["bench-not-fit", "bench-changed"];

    /// <summary>Everything the program says of a shop's ports, with no threshold, each held against the truth.</summary>
    public static IReadOnlyList<Said> Of(MadeShop shop)
    {
        ArgumentNullException.ThrowIfNull(shop);
        var reductions = new Reductions(shop.Ledger);
        var said = new List<Said>();
        foreach (var port in shop.Job.Ports)
        {
            foreach (var finding in PortFindings.Spoken(PortSurvey.Of(reductions, port.Id)))
            {
                // A remark has no chance to be held against anything.
                double? chance = finding.Confidence;
                said.Add(new Said(port, finding.Rule.Key, chance, Judge(shop, port, finding.Rule.Key)));
            }
        }

        return [.. said.Where(s => !OfTheBench.Contains(s.Key)), .. said.Where(s => OfTheBench.Contains(s.Key)).GroupBy(s => s.Key).Select(g => g.MaxBy(s => s.Chance)!)];
    }

    private static Became Judge(MadeShop shop, MadePort port, string key)
    {
        var planted = shop.Planted is { } p && p.Ports.Contains(port) ? p.Fault : null;
        if (planted?.Found.Contains(key) == true || Truth.Holds(shop, port, key)) return Became.True;
        return planted?.Fair.Contains(key) == true ? Became.Fair : Became.False;
    }
}
