using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>Types heads, ports, their cut as received, and the stations of those ports that are looked into.</summary>
public static class PortWriter
{
    public static void Write(MadeJob job, Book book)
    {
        var material = job.Draw.Of("aluminium", "aluminium", "iron");
        foreach (var head in Enumerable.Range(0, job.Heads))
        {
            var id = book.Add(new Head($"head {(char)('A' + head)}", material, Place: head));
            foreach (var port in job.Ports.Where(p => p.Head == head))
            {
                port.Id = book.Add(new Port(id, port.Kind, port.Cylinder, port.Mirrored, port.Valve.Read(job.Pencil.CaliperStep)));
                port.Cut = book.Add(new Cut(port.Id, 0, "as received", book.Day));
                if (!job.Looks.LooksInto(port)) continue;
                book.Add(new Centreline(port.Id, job.Pencil.Tape(port.Length), Math.Round(port.Turn * 180 / Math.PI) * Math.PI / 180, job.Pencil.Tape(0.5 * port.Length)));
                foreach (var station in port.Stations)
                    station.Id = book.Add(new Station(port.Id, station.Letter, job.Pencil.Tape(station.Along * port.Length), "", station.Role));
            }
        }
    }
}
