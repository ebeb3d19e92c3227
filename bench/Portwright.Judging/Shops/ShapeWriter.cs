using Portwright.Judging.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>Types sections by caliper and radius gauge, and the burette.</summary>
public sealed class ShapeWriter(MadeJob job, Book book)
{
    /// <summary>How well a caliper is held in a port: m.</summary>
    private const double Hold = 0.00005;

    private readonly bool _byWidths = job.Draw.Chance(0.25);
    private readonly bool _roundAsRacetrack = job.Draw.Chance(0.2);

    public void Write()
    {
        foreach (var port in job.Ports)
        {
            if (job.Looks.Sections.Contains(port) || job.Looks.Filled.Contains(port))
            {
                foreach (var station in port.Stations) Section(port, station);
            }
            else if (job.Looks.Pinches.Contains(port))
            {
                Section(port, port.At(StationRole.Pinch));
            }

            if (job.Looks.Filled.Contains(port)) Fill(port);
        }
    }

    private void Section(MadePort port, MadeStation station)
    {
        var section = station.Section;
        var (width, height) = (Caliper(section.Width), Caliper(section.Height));
        var step = Pencil.Rounded(job.Pencil.Metric ? 0.02 : 0.001, job.Pencil.Metric ? 0.01 : 0.001, job.Pencil.Metric ? "mm" : "in");
        if (section.IsRound)
        {
            book.Add(new Section(port.Cut, station.Id, _roundAsRacetrack ? SectionForm.Racetrack : SectionForm.Oval, [width, height], Step: step));
            return;
        }

        var radius = job.Pencil.Radius(section.Corner);
        // A leaf too large for the section is put back: it would not go in.
        while (2 * radius.Si(Dimension.Length) > Math.Min(width.Si(Dimension.Length), height.Si(Dimension.Length)))
            radius = job.Pencil.Radius(radius.Si(Dimension.Length) - (job.Pencil.Metric ? 0.0005 : 0.03125 * 0.0254));
        if (_byWidths)
        {
            var floor = Pencil.Rounded(0, job.Pencil.Metric ? 0.01 : 0.001, width.Unit);
            book.Add(new Section(
                port.Cut, station.Id, SectionForm.Widths, [floor, Caliper(section.Width), Caliper(section.Height / 2), Caliper(section.Width), height, width], [radius], Step: step));
            return;
        }

        book.Add(new Section(port.Cut, station.Id, SectionForm.Rectangle, [width, height, radius], Step: step));
    }

    private Typed Caliper(double length) => job.Pencil.Caliper(length + job.Draw.Normal(Hold));

    private void Fill(MadePort port)
    {
        var volume = PortVolume.Of(port, job.Draw) * (1 + job.Draw.Normal(0.003)) * job.BuretteOff.GetValueOrDefault(port, 1);
        book.Add(new VolumeReading(port.Cut, Pencil.Rounded(volume * 1e6, job.Draw.Of(0.1, 0.5), "cc")));
    }
}
