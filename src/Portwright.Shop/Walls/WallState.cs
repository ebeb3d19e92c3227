using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Walls;

/// <summary>The metal at one place, as last measured, and what may still be cut there.</summary>
/// <param name="Thickness">m.</param>
/// <param name="Limit">m.</param>
/// <param name="OwnLimit">True where the porter stated it; else it is the usual one (common practice, no source).</param>
/// <param name="MeasuredAt">Number of the cut it was measured at: metal cut since is not taken off.</param>
public sealed record WallState(Kept<WallPoint> Point, Kept<Station> Station, double Thickness, double Limit, bool OwnLimit, int MeasuredAt)
{
    /// <summary>Standard uncertainty of a thickness, m: a thickness gauge on a curved, rough wall; common practice, no source.</summary>
    public const double ThicknessDoubt = 0.0254 * 0.003;

    /// <summary>Metal above the limit, m; below zero where it is already too thin.</summary>
    public double Left => Thickness - Limit;

    /// <summary>True where not even the doubt of the gauge leaves metal to cut: here a suggestion stops.</summary>
    public bool Stops => Left < 2 * ThicknessDoubt;

    /// <summary>True where a cut as deep as the gauge's doubt would stop all further ones.</summary>
    public bool IsNearlyAtLimit => !Stops && Left < 4 * ThicknessDoubt;

    /// <summary>The latest thickness at each place of a port up to a cut.</summary>
    public static IReadOnlyList<WallState> Of(Ledger ledger, Kept<Cut> cut, string material)
    {
        var cuts = ledger.CutsOf(cut.Fact.Port).Where(c => c.Fact.Number <= cut.Fact.Number).ToDictionary(c => c.Id);
        return [.. ledger.All<WallPoint>()
            .Where(w => cuts.ContainsKey(w.Fact.Cut) && ledger.Find<Station>(w.Fact.Station) is not null)
            .GroupBy(w => (w.Fact.Station, Quarter: Math.Round(w.Fact.Bearing * 4)))
            .Select(g => g.OrderBy(w => cuts[w.Fact.Cut].Fact.Number).ThenBy(w => w.Sequence).Last())
            .Select(w => new WallState(
                w,
                ledger.Get<Station>(w.Fact.Station),
                w.Fact.Thickness.Si(Dimension.Length),
                w.Fact.Limit?.Si(Dimension.Length) ?? WallLimit.Usual(material, w.Fact.Behind),
                w.Fact.Limit is not null,
                cuts[w.Fact.Cut].Fact.Number))
            .OrderBy(w => w.Station.Fact.Distance).ThenBy(w => w.Point.Fact.Bearing)];
    }

    /// <summary>Hours between two bearings the short way round, 0 to 6.</summary>
    public static double Apart(double bearing, double other)
    {
        var hours = Math.Abs(bearing - other) % 12;
        return Math.Min(hours, 12 - hours);
    }
}
