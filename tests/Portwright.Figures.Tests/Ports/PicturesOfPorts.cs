using Portwright.Geometry.Views;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests.Ports;

/// <summary>Writes every drawing of a port as a picture, to be looked at, into the folder named by <c>PORTWRIGHT_PICTURES</c>.</summary>
public sealed class PicturesOfPorts
{
    [Fact]
    public void Every_drawing_of_a_port_can_be_painted_in_both_themes()
    {
        var folder = Environment.GetEnvironmentVariable("PORTWRIGHT_PICTURES");
        foreach (var (name, drawing) in All())
        {
            foreach (var theme in new[] { Theme.Paper, Theme.Lamp })
            {
                var picture = Png.Render(drawing, theme, 1.5);
                Assert.True(picture.Length > 400, name);
                if (folder is null) continue;
                Directory.CreateDirectory(folder);
                File.WriteAllBytes(Path.Combine(folder, $"{name}-{theme.Name}.png"), picture);
            }
        }
    }

    private static IEnumerable<(string Name, Drawing Drawing)> All()
    {
        var (faulty, healthy) = (InventedPorts.Faulty, InventedPorts.Healthy);
        var chosen = faulty.At("D").Station.Id;
        var us = UnitSystem.UsCustomary;
        yield return ("long-faulty-wide", LongViewDrawing.Of(faulty, chosen, new View(), us, 760));
        yield return ("long-faulty-narrow", LongViewDrawing.Of(faulty, chosen, new View(), us, 358));
        yield return ("long-faulty-chamber-inverted", LongViewDrawing.Of(faulty, chosen, InventedPorts.FourViews[3], UnitSystem.Si, 760));
        yield return ("long-healthy-inverted", LongViewDrawing.Of(healthy, null, InventedPorts.FourViews[2], us, 760));
        yield return ("long-bare-stations", LongViewDrawing.Of(InventedPorts.Bare(true), null, new View(), us, 760));
        yield return ("long-bare", LongViewDrawing.Of(InventedPorts.Bare(false), null, new View(), us, 358));
    }
}
