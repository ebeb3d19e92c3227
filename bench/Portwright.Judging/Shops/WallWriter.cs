using Portwright.Judging.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>Types what the sound gauge showed of the metal.</summary>
public static class WallWriter
{
    /// <summary>Standard deviation of a sound gauge on a casting, m.</summary>
    private const double Gauge = 0.00004;

    public static void Write(MadeJob job, Book book, MadePort port)
    {
        if (!job.Looks.Sounded.Contains(port)) return;
        foreach (var wall in port.Walls)
        {
            Typed Length(double x) => job.Pencil.Metric ? Pencil.Rounded(x * 1000, 0.05, "mm") : Pencil.Rounded(x / 0.0254, 0.001, "in");
            book.Add(new WallPoint(
                port.Cut, wall.Station.Id, wall.Bearing, Length(wall.Thickness + job.Draw.Normal(Gauge)), wall.Behind, "sound", wall.Limit is { } limit ? Length(limit) : null));
        }
    }
}
