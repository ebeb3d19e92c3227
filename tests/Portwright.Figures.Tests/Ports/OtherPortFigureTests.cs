using CsCheck;
using Portwright.Geometry.Views;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Figures.Tests.Ports;

public sealed class OtherPortFigureTests
{
    [Fact]
    public void Every_view_has_a_mark_of_its_own_and_says_which_it_is()
    {
        var marks = View.All.Select(OrientationMark.Of).ToList();
        Assert.Equal(8, marks.Select(m => Convert.ToHexString(Png.Render(m, Theme.Paper, 1))).Distinct().Count());
        Assert.Equal(8, marks.Select(m => m.Description).Distinct().Count());
        Assert.All(View.All, v =>
        {
            var mark = OrientationMark.Of(v);
            Assert.Contains(v.Lying == Lying.Upright ? "roof up" : "roof down", mark.Description, StringComparison.Ordinal);
            Assert.All(mark.Seen().OfType<Segments>().SelectMany(s => s.Pieces), p => Assert.True(new Box(0, 0, mark.Width, mark.Height).Holds(new Box(p.From.X, p.From.Y, 0, 0))));
        });
    }

    [Fact]
    public void An_area_schedule_is_readable_and_marks_the_smallest_section()
    {
        AreaTarget[] target = [new(0, 0.00150, 0.00165), new(0.06, 0.00140, 0.00152), new(0.105, 0.00150, 0.00160)];
        foreach (var survey in new[] { InventedPorts.Faulty, InventedPorts.Healthy, InventedPorts.Bare(true) })
        {
            foreach (var size in new[] { new FigureSize(760, 360, 15), new FigureSize(344, 300, 12.5), new FigureSize(523, 240, 8.5) })
            {
                foreach (var units in Enum.GetValues<UnitSystem>())
                {
                    DrawingChecks.IsReadable(AreaScheduleFigure.Of(survey, units, size), 8);
                    DrawingChecks.IsReadable(AreaScheduleFigure.Of(survey, units, size, target), 8);
                }
            }
        }

        var drawing = AreaScheduleFigure.Of(InventedPorts.Faulty, UnitSystem.UsCustomary);
        Assert.Contains("smallest C, 2.194 in²", drawing.Description, StringComparison.Ordinal);
        Assert.Contains(drawing.Texts(), t => t.Words == "smallest 2.19");
        Assert.Contains(drawing.Texts(), t => t.Words.EndsWith('%'));
        Assert.DoesNotContain(drawing.Seen().OfType<Area>(), a => a.Fill == Role.Noise);
        Assert.Contains("two sections", AreaScheduleFigure.Of(InventedPorts.Bare(true), UnitSystem.UsCustomary).Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Areas_lie_in_the_order_of_their_size()
    {
        var survey = InventedPorts.Healthy;
        var dots = AreaScheduleFigure.Of(survey, UnitSystem.Si).Seen().OfType<Circle>().Where(c => c.Fill == Role.Blue).OrderBy(c => c.Centre.X).ToList();
        Assert.Equal(6, dots.Count);
        Assert.Equal(survey.Sections.Select((s, i) => (s, i)).OrderBy(s => s.s.Area.Value).Select(s => s.i), dots.Select((d, i) => (d, i)).OrderByDescending(d => d.d.Centre.Y).Select(d => d.i));
    }

    [Fact]
    public void A_finding_has_a_small_picture_of_its_evidence()
    {
        var findings = PortFindings.Of(InventedPorts.Faulty);
        Assert.True(findings.Count >= 2);
        foreach (var finding in findings)
        {
            foreach (var view in View.All)
            {
                var picture = FindingPicture.Of(InventedPorts.Faulty, finding, UnitSystem.UsCustomary, view);
                DrawingChecks.IsReadable(picture, 11);
                Assert.Equal(finding.Title, picture.Title);
                Assert.DoesNotContain('⟦', picture.Description);
            }
        }

        var torn = FindingPicture.Of(InventedPorts.Faulty, findings.Single(f => f.Rule.Key == "short-side-torn-off"));
        Assert.Contains(torn.Texts(), t => t.Words == "torn off");
        Assert.Contains(torn.Texts(), t => t.Words == "D, 6 o'clock, floor");
        var thin = FindingPicture.Of(InventedPorts.Faulty, findings.First(f => f.Kind == FindingKind.Stop && f.Station!.Fact.Letter == "C"));
        Assert.Contains(thin.Texts(), t => t is { Words: ".094 in", Role: Role.Thin });
        Assert.Contains(thin.Texts(), t => t.Words == "thin");
    }

    [Fact]
    public void A_finding_of_the_curve_rings_the_lifts_it_speaks_of()
    {
        var made = new MadePort(3);
        var flat = made.EffectiveArea(0.010);
        made.FlowFactor = lift => lift > 0.0101 ? 0.95 * flat / new MadePort(3).EffectiveArea(lift) : 1;
        var survey = made.Survey();
        var picture = FindingPicture.Of(survey, PortFindings.Of(survey).Single(f => f.Rule.Key == "backs-up"));
        DrawingChecks.IsReadable(picture, 11);
        var ringed = picture.Seen().OfType<Circle>().Where(c => c.Outline is { Role: Role.Brass }).ToList();
        Assert.InRange(ringed.Count, 1, 4);
        Assert.Contains(picture.Texts(), t => t.Words.StartsWith("flow over lift", StringComparison.Ordinal));
    }

    [Fact]
    public void Lines_of_equal_value_hold_what_is_above_and_leave_out_what_is_below() =>
        Gen.Double[-1, 1].Array2D[5, 9].Sample(values =>
        {
            // At the grid's edge the lines run through its own points: inside it they are held to.
            const double level = 0.1;
            var rings = Contours.Above(values, level, (i, j) => new Place(i, j));
            for (var i = 1; i + 1 < values.GetLength(0); i++)
            {
                for (var j = 1; j + 1 < values.GetLength(1); j++)
                {
                    if (Math.Abs(values[i, j] - level) < 1e-3) continue;
                    var inside = rings.Count(r => Hatching.Holds(r, new Place(i, j))) % 2 == 1;
                    Assert.Equal(values[i, j] >= level, inside);
                }
            }
        }, iter: 300);
}
