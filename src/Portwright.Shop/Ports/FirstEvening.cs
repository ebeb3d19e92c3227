using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What is said of a port of which only flows are known yet: what makes them surer, and what would tell where to cut.</summary>
public static class FirstEvening
{
    /// <summary>A step that takes less than this share off the doubt is not worth a porter's minute; judgement, no source.</summary>
    public const double WorthAStep = 0.02;

    /// <summary>Readings of one lift that count as a repeat: two more than the one there is.</summary>
    private const int Readings = 3;

    /// <summary>What would make the headline flow surer, the cheapest first.</summary>
    public static Part? Surer(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (!OnlyFlow(port)) return null;
        var flow = port.Sheet.Flow!;
        var (now, sweep) = (flow.Curve.Points[^1].Flow, flow.Sweeps[^1]);
        List<(double Minutes, Sentence What)> steps = [];
        Step(BenchMinutes.OneReading, $"Say whether the readout is already at 28 or shows what passes the meter: it is asked on the page of the port.", c => IsMeaning(c) ? 0 : 1);
        if (sweep.LeakArea is null) steps.Add((BenchMinutes.OneFigure, $"Close the port off and read the leak at the same pressure. Without it every flow may read high by what leaks."));
        Step(BenchMinutes.OneLift, $"Read {Quantity.Lift(flow.Curve.HighestLift)} twice more.", c => c.Kind == ContributionKind.Repeat ? 1 / Math.Sqrt(Readings) : 1);
        Step(BenchMinutes.OneSetUp, $"Take the head off, put it back and sweep again.", c => c.Kind == ContributionKind.SetUp ? 1 / Math.Sqrt(2) : 1);
        if (sweep.Factors.Any(f => f.Factor.From is null))
            steps.Add((BenchMinutes.OneCheck, $"Read a check plate: nothing has proved the meter yet, and its own accuracy goes out of the doubt with it."));
        return steps.Count == 0 ? null : new Part("surer", $"What would make it surer", [new Values("steps",
            [.. steps.OrderBy(s => s.Minutes).Select((s, i) => new NamedValue(FormattableString.Invariant($"step-{i + 1}"), BenchMinutes.Words(s.Minutes), s.What))])]);

        void Step(double minutes, Sentence what, Func<Contribution, double> left)
        {
            var then = new Estimate(now.Value, [.. now.Contributions.Select(c => c with { Amount = c.Amount * left(c) })]);
            if (then.StandardUncertainty < (1 - WorthAStep) * now.StandardUncertainty) steps.Add((minutes, $"{what} Alone it makes of {Quantity.Flow(now)} {Quantity.Flow(then)}."));
        }
    }

    /// <summary>That nothing can be said yet of where to cut, and the three readings that would tell.</summary>
    public static Part? WhereToCut(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (!OnlyFlow(port)) return null;
        List<(double Minutes, Sentence What)> readings =
        [
            port.Sheet.Port.Fact.Valve is null
                ? (BenchMinutes.OneFigure, (Sentence)$"Measure valve, seat and throat with the caliper: it tells at which lifts the window holds the air back and at which the port does.")
                : (BenchMinutes.OneReading, (Sentence)$"Sound the wall where you mean to cut: it tells whether there is metal to take."),
            (BenchMinutes.OneSection, $"Measure the port across where it is smallest: it tells how fast the air is there."),
            (BenchMinutes.OneRing, $"Hold a ball at floor, roof and sides of the bend at the highest lift: it tells where the air is fast and where it has left the wall."),
        ];
        return new Part("where-to-cut", $"Where to cut",
        [
            new Paragraph("not-enough", $"Not enough to say: flows tell what the port passes, not where it holds the air back. These three readings would tell."),
            new Values("would-tell", [.. readings.OrderBy(r => r.Minutes).Select((r, i) => new NamedValue(FormattableString.Invariant($"reading-{i + 1}"), BenchMinutes.Words(r.Minutes), r.What))]),
        ]);
    }

    /// <summary>Swept, and nothing looked at inside.</summary>
    public static bool OnlyFlow(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Sheet.Flow is not null && port.Survey.Stations.Count == 0 && port.Survey.BallChecks.Count == 0 && port.Cuts.Count == 0 && port.Sheet.Cut.Fact.Number == 0;
    }

    private static bool IsMeaning(Contribution cause) => SourceName.Read(cause.Source).Head == Sources.AssumedHead(AssumedScale.Meaning);
}
