using Portwright.Physics.Uncertainty;
using Portwright.Shop.Targets;
using Portwright.Shop.Units;

namespace Portwright.Figures.Tests;

/// <summary>Invented readings of invented ports.</summary>
internal static class Invented
{
    private static readonly double Inch = Typed.Of(1, "in").Si(Dimension.Lift);
    private static readonly double Cfm = Typed.Of(1, "cfm").Si(Dimension.VolumeFlow);

    /// <summary>A cut whose flow rises with lift and flattens.</summary>
    /// <param name="top">Flow it tends to, cfm.</param>
    /// <param name="lifts">Lifts read, in.</param>
    public static (FlowLine Line, Estimate[] Flows) Cut(string name, double top, double[] lifts, double doubtShare = 0.004, double degrees = 12)
    {
        var flows = lifts.Select((lift, i) =>
        {
            var value = top * Math.Tanh(lift / 0.3) * Cfm;
            return Estimate.Exact(value)
                .With(new Contribution($"repeat {name} {i}", value * doubtShare * 0.6, degrees, ContributionKind.Repeat))
                .With(new Contribution($"set-up {name}", value * doubtShare * 0.6, degrees, ContributionKind.SetUp))
                .With(new Contribution("meter", value * doubtShare, double.PositiveInfinity, ContributionKind.Calibration));
        }).ToArray();
        var dots = lifts.Zip(flows, (l, f) => new FlowDot(l * Inch, f.Value, f.Expanded())).ToArray();
        var line = lifts.Length < 2 ? [.. dots.Select(d => (d.Lift, d.Flow))] : Enumerable.Range(0, 61)
            .Select(i => lifts[0] + (lifts[^1] - lifts[0]) * i / 60).Select(l => (l * Inch, top * Math.Tanh(l / 0.3) * Cfm)).ToArray();
        return (new FlowLine(name, dots, line), flows);
    }

    public static FlowPlot Plot((FlowLine Line, Estimate[] Flows)? now, (FlowLine Line, Estimate[] Flows)[] earlier, double? camInch = 0.512, double[]? planned = null, string name = "cut 3")
    {
        CurveDifference? less = null;
        if (now is { } n && earlier.Length > 0)
        {
            var last = earlier[^1];
            var pairs = n.Line.Dots.Select((d, i) => (d.Lift, After: n.Flows[i], At: last.Line.Dots.ToList().FindIndex(b => Math.Abs(b.Lift - d.Lift) < 1e-7)))
                .Where(p => p.At >= 0).Select(p => new LiftPair(p.Lift, last.Flows[p.At], p.After)).ToArray();
            if (pairs.Length > 0) less = CurveComparison.Compare(pairs);
        }

        return new FlowPlot(
            name, now?.Line, [.. earlier.Select(e => e.Line)], less?.Lifts ?? [], camInch * Inch,
            [.. (planned ?? Lifts).Select(l => l * Inch)], "standard air, 28.0 inH2O");
    }

    /// <param name="top">Flow at the highest lift from which enough is wanted, cfm; a fifth more is the band's other edge.</param>
    public static WantedFlow Wanted(double top, double camInch) => new(
        Physics.Targets.ValveAtBest.Rule, "wanted at 6,400 rpm",
        [.. Enumerable.Range(0, 41).Select(i => i / 40.0).Select(x => (x * camInch * Inch, top * Math.Min(1, 1.3 * x) * Cfm, 1.2 * top * Math.Min(1, 1.3 * x) * Cfm))]);

    public static double[] Lifts { get; } = [.05, .1, .15, .2, .25, .3, .35, .4, .45, .5, .55, .6];

    public static FlowPlot WholeSweep() => Plot(Cut("cut 3", 259, Lifts), [Cut("cut 0", 231, Lifts), Cut("cut 1", 244, Lifts), Cut("cut 2", 251, Lifts)]);

    public static FlowPlot Growing() => Plot(Cut("cut 3", 256, [.05, .1, .15, .2, .25, .3]), [Cut("cut 2", 251, Lifts)]);
}
