using Portwright.Geometry.Views;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Tests.Findings;
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
                File.WriteAllText(Path.Combine(folder, $"{name}-{theme.Name}.svg"), Svg.Standalone(drawing, theme, embedFont: false));
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
        foreach (var what in Enum.GetValues<SectionShows>())
        {
            yield return ($"section-{what}-wide", SectionDrawing.Of(faulty, faulty.At("D"), new View(), what, us, 560));
            yield return ($"section-{what}-narrow", SectionDrawing.Of(faulty, faulty.At("C"), InventedPorts.FourViews[3], what, us, 344));
        }

        for (var i = 0; i < 4; i++) yield return ($"section-view-{i}", SectionDrawing.Of(faulty, faulty.At("D"), InventedPorts.FourViews[i], SectionShows.Speeds, us, 560));
        var bare = InventedPorts.Bare(true);
        yield return ("section-empty", SectionDrawing.Of(bare, bare.At("B"), new View(), SectionShows.Balls, UnitSystem.Si, 344));
        yield return ("flow-wanted-wide", FlowOverLift.Draw(FlowPlot.Of(faulty.Sheet, InventedPorts.OfTheFaulty), FigureSize.Wide));
        yield return ("flow-wanted-narrow", FlowOverLift.Draw(FlowPlot.Of(faulty.Sheet, InventedPorts.OfTheFaulty, units: UnitSystem.Si), FigureSize.Narrow, UnitSystem.Si));
        AreaTarget[] target = [new(0, 0.00150, 0.00165), new(0.06, 0.00140, 0.00152), new(0.105, 0.00150, 0.00160)];
        yield return ("areas-wide", AreaScheduleFigure.Of(faulty, us));
        yield return ("areas-target", AreaScheduleFigure.Of(faulty, UnitSystem.Si, new FigureSize(344, 300, 12.5), target));
        yield return ("areas-empty", AreaScheduleFigure.Of(bare, us, new FigureSize(344, 260, 12.5)));
        for (var i = 0; i < 8; i++) yield return ($"mark-{i}", OrientationMark.Of(View.All[i]));
        var flat = new MadePort(3).EffectiveArea(0.010);
        var stalls = new MadePort(3) { FlowFactor = lift => lift > 0.0101 ? flat / new MadePort(3).EffectiveArea(lift) : 1 }.Survey();
        foreach (var survey in new[] { faulty, stalls })
        {
            foreach (var (finding, i) in PortFindings.Of(survey).Select((f, i) => (f, i)))
                yield return ($"finding-{finding.Rule.Key}-{i}", FindingPicture.Of(survey, finding, us));
        }

        yield return ("long-bare", LongViewDrawing.Of(InventedPorts.Bare(false), null, new View(), us, 358));
    }
}
