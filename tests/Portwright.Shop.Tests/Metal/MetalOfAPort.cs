using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Findings.Rules;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Metal;

/// <summary>A port with nothing looked at but its metal, and a cut that some rule would suggest in it.</summary>
internal static class MetalOfAPort
{
    public const double Inch = 0.0254, Thou = Inch / 1000, Sound = 200 * Thou, Thin = 94 * Thou;

    /// <param name="points">Metal sounded: station, hour, thickness (m), cut it was sounded at.</param>
    /// <param name="role">What a station is; null: its name decides.</param>
    /// <param name="cuts">Cuts after the port as received; the survey is of the last, or of <paramref name="at"/>.</param>
    public static PortSurvey Of(IEnumerable<(string Letter, double Bearing, double Thickness, int Cut)> points, Func<string, StationRole?>? role = null, int cuts = 0, Action<MadePort>? change = null, Typed? limit = null, int? at = null)
    {
        var made = new MadePort(1) { RingsAt = [], Places = [], Role = role ?? (_ => null), Wall = (_, _) => Sound, Repeats = 1, ExhaustShare = null };
        change?.Invoke(made);
        var bench = made.Bench(out var port, out _);
        // The walls MadePort sounds by itself are taken away: what stands here is what the test sounded.
        foreach (var wall in bench.Ledger.All<WallPoint>())
        {
            bench.Put(Amend.Hide(wall, SimulatedBench.Morning, "", "not sounded"));
        }

        for (var number = 1; number <= cuts; number++)
        {
            made.NextCut(bench, port, number);
        }

        foreach (var (letter, bearing, thickness, number) in points)
        {
            var station = bench.Ledger.All<Station>().Single(s => s.Fact.Letter == letter).Id;
            var cut = bench.Ledger.CutsOf(port).Single(c => c.Fact.Number == number).Id;
            bench.Add(new WallPoint(cut, station, bearing, Typed.Of(thickness, "m"), Behind.Water, "sound", limit));
        }

        return PortSurvey.Of(bench.Ledger, port, at is { } surveyed ? bench.Ledger.CutsOf(port).Single(c => c.Fact.Number == surveyed).Id : null);
    }

    public static PortSurvey Of(params (string Letter, double Bearing, double Thickness)[] points) => Of(points.Select(p => (p.Letter, p.Bearing, p.Thickness, 0)));

    /// <summary>A cut at a station, all round where no bearing is given; without a station one of throat and bowl.</summary>
    public static Finding Cut(PortSurvey port, string? letter, double? bearing = null, double reach = 1.5) => Said(
        0.95, port.Stations.SingleOrDefault(s => s.Letter == letter)?.Station, bearing, new CutSuggestion($"Take it back.", Estimate.Exact(1e-3), 0.005, 0.0125, bearing, reach));

    public static Finding Said(double confidence, Kept<Station>? at = null, double? bearing = null, CutSuggestion? cut = null, FindingKind kind = FindingKind.Port) =>
        new(new BusyRoof(), kind, $"The air is fast here.", confidence, at, bearing, [], null, cut);
}
