using Portwright.Geometry.Views;
using Portwright.Shop.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Targets;
using Portwright.Shop.Tests;
using Portwright.Shop.Tests.Findings;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests.Ports;

/// <summary>Ports to draw: a healthy one, one with its faults, one half measured, one not measured at all.</summary>
internal static class InventedPorts
{
    private const double Degree = Math.PI / 180;

    /// <summary>Made anew each time: its noise is the same whoever asks first.</summary>
    private static MadePort MadeFaulty => new(2)
    {
        Plan = new MadePort(2).Plan with { IntakeTiming = new CamTiming(270 * Degree, null, 220 * Degree, null, 108 * Degree) },
        BallFactor = (s, b) => s == "D" && b == 6 ? -0.4 : s == "C" && b == 9 ? 0.2 : s == "C" && b == 12 ? 2.4 : 1,
        Flag = (s, b) => s == "D" && b == 6 ? Steadiness.TurnsBack : b == 12 ? Steadiness.Still : b == 9 ? Steadiness.Swings : Steadiness.Trembles,
        SpeedFactor = (s, x, y) => s == "D" ? 1 + 0.28 * y + 0.06 * x : 1 + 0.08 * y,
        Wall = (s, b) => 0.0254 * (s == "C" && b == 12 ? 0.094 : s == "D" && b == 9 ? 0.101 : 0.180 + 0.01 * b),
        Also = (bench, cut) =>
        {
            foreach (var station in bench.Ledger.All<Station>().Where(s => s.Fact.Letter == "D"))
            {
                bench.Add(new FlagReading(cut, station.Id, 4.5, Typed.Of(0.5, "in"), Typed.Of(28, "inH2O"), Steadiness.Swings, 6));
                bench.Add(new FlagReading(cut, station.Id, 10.5, Typed.Of(0.5, "in"), Typed.Of(28, "inH2O"), Steadiness.Hangs, 1.5));
                bench.Add(new FlagReading(cut, station.Id, null, Typed.Of(0.5, "in"), Typed.Of(28, "inH2O"), Steadiness.Still, 12));
            }
        },
    };

    private static readonly Lazy<(PortSurvey Survey, WantedFlow Wanted)> Faults = new(() =>
    {
        var bench = MadeFaulty.Bench(out var port, out _);
        var reductions = new Reductions(bench.Ledger);
        var survey = PortSurvey.Of(reductions, port);
        return (survey, WantedFlow.Of(reductions, survey.Sheet) ?? throw new InvalidOperationException("The made port's plan says what flow it wants."));
    });

    private static readonly Lazy<PortSurvey> Sound = new(() => new MadePort(1).Survey());

    /// <summary>The faulty port with all that is known of it.</summary>
    public static PortAtCut FaultyAtCut()
    {
        var bench = MadeFaulty.Bench(out var port, out _);
        return PortAtCut.Of(new Reductions(bench.Ledger), port, null, new NoRuns());
    }

    public static PortSurvey Faulty => Faults.Value.Survey;

    /// <summary>What its engine asks of it.</summary>
    public static WantedFlow OfTheFaulty => Faults.Value.Wanted;

    public static PortSurvey Healthy => Sound.Value;

    /// <summary>A port with stations whose sections were not measured.</summary>
    public static PortSurvey Bare(bool stations, PortKind kind = PortKind.Exhaust)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        var port = bench.Add(new Port(bench.HeadId, kind, 2, false, null));
        var cut = bench.Add(new Cut(port, 0, "as received", new DateOnly(2025, 3, 3)));
        if (stations)
        {
            var a = bench.Add(new Station(port, "A", 0.015));
            bench.Add(new Station(port, "B", 0.040, "pinch"));
            bench.Add(new Station(port, "C", 0.062, "short side"));
            bench.Add(new Section(cut, a, SectionForm.Rectangle, [Typed.Of(35, "mm"), Typed.Of(38, "mm"), Typed.Of(9, "mm")]));
        }

        return PortSurvey.Of(bench.Ledger, port, cut);
    }

    public static IReadOnlyList<View> FourViews { get; } =
        [new(), new(SeenFrom.Chamber), new(Lying: Lying.Inverted), new(SeenFrom.Chamber, Lying.Inverted, Mirrored: true)];

    public static SurveyedStation At(this PortSurvey survey, string letter) => survey.Stations.First(s => s.Letter == letter);
}
