using Portwright.Judging.Chance;
using Portwright.Judging.Ports;

namespace Portwright.Judging.Shops;

/// <summary>What a port truly holds with its valve seated: between stations it bulges and narrows as nobody measured, past the throat it opens to the seat, and the stem stands in it.</summary>
public static class PortVolume
{
    private const int Steps = 40;

    /// <summary>m3.</summary>
    public static double Of(MadePort port, Draw draw)
    {
        var stations = port.Stations.Select(s => (Place: s.Along * port.Length, s.Section.Area)).ToList();
        // Under the valve's head the port opens towards the seat.
        stations.Add((port.Length, stations[^1].Area * draw.Between(1.04, 1.12)));
        double volume = 0;
        for (var i = 0; i + 1 < stations.Count; i++)
        {
            var (from, to) = (stations[i], stations[i + 1]);
            var bulge = draw.Normal(0.012);
            for (var k = 0; k < Steps; k++)
            {
                var t = (k + 0.5) / Steps;
                var eased = t * t * (3 - 2 * t);
                volume += (from.Area + (to.Area - from.Area) * eased) * (1 + bulge * Math.Sin(Math.PI * t)) * (to.Place - from.Place) / Steps;
            }
        }

        var stem = Math.PI / 4 * port.Valve.Stem * port.Valve.Stem * port.Valve.Head * draw.Between(0.5, 0.8);
        return volume - stem;
    }
}
