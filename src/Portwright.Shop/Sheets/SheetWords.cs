using Portwright.Physics.Statistics;
using Portwright.Physics.Targets;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Sheets;

/// <summary>The sentences of a port sheet.</summary>
internal static class SheetWords
{
    public static IReadOnlyList<Sentence> Cautions(Port port, EnginePlan plan, CutFlow? flow, CamPoint? cam)
    {
        var cautions = new List<Sentence>();
        if (flow is not null)
        {
            cautions.Add($"Grinding: eye, ear and dust protection. Measure the wall before each cut; thin metal over water or oil ruins a casting.");
        }

        if (cam is not null)
        {
            cautions.Add($"Lift: check valve to piston clearance, spring bind and retainer to seal before running this cam.");
        }

        if (plan.ClassRules.Length > 0 || plan.Fuel.Length > 0)
        {
            cautions.Add($"Engines used on public roads fall under local emissions rules; class rules may limit what may be cut.");
        }

        if (port.Valve is { } v && v.ThroatDiameter > NamedLimits.ThroatOverValve.Limits.High * v.HeadDiameter)
        {
            cautions.Add($"The throat is {Quantity.Share(v.ThroatDiameter / v.HeadDiameter)} of the valve by diameter; {NamedLimits.ThroatOverValve.Numbers} is usual (common practice). Little seat is left to cut.");
        }

        return cautions;
    }

    public static IReadOnlyList<Sentence> Remarks(
        Reductions reductions, Port port, CutFlow? flow, IReadOnlyList<WindowUse> windows, CamPoint? cam, BenchMorning? morning, IReadOnlyList<SweepBench> benches)
    {
        var remarks = new List<Sentence>();
        if (port.Valve is { } written && ValveCheck.Of(written) is { } problem)
        {
            remarks.Add($"{problem.Words} No window and no discharge coefficients until then.");
        }

        if (flow is null)
        {
            remarks.Add($"No reading at this cut yet.");
            return remarks;
        }

        if (benches.Any(b => b.Check is null))
        {
            remarks.Add($"The bench was not checked on the day of {(benches.Count == 1 ? "this sweep" : "every sweep")}. A leak test and one check plate take five minutes and say whether the day can be trusted.");
        }

        if (morning is { Answer: not ChartAnswer.Go } && benches is [.., { Check: not null }])
        {
            remarks.AddRange(morning.Words.Select(Sentence.Plain));
        }

        remarks.AddRange(benches.SelectMany(b => b.Remarks).Distinct());
        if (cam is { Flow: null })
        {
            remarks.Add($"The cam lifts to {Quantity.Lift(cam.Lift)}, which was not tested (highest {Quantity.Lift(flow.Curve.HighestLift)}). Nothing is guessed past the last reading.");
        }

        if (port.Valve is null)
        {
            remarks.Add($"Valve and seat are not written down for this port: no window and no discharge coefficients.");
        }

        if (OverTheWindow(port, windows) is { } over)
        {
            remarks.Add(over);
        }

        if (AgainstItsWay(port.Kind, flow.Fitting.Direction) is { } against)
        {
            remarks.Add(against);
        }

        remarks.AddRange(Apart(reductions, flow));
        remarks.AddRange(flow.Sweeps.SelectMany(s => s.Remarks).Distinct().Select(Sentence.Plain));
        var ledger = reductions.Ledger;
        foreach (var hidden in flow.Sweeps.SelectMany(s => ledger.Entries.Where(e => e.Fact is FlowReading r && r.Sweep == s.Sweep.Id && ledger.IsHidden(e.Subject))))
        {
            remarks.Add($"A reading at lift {((FlowReading)hidden.Fact).Lift.Text} was taken back and does not count.");
        }

        return remarks;
    }

    /// <summary>More through the valve window than a loss-free nozzle of its size passes, beyond the doubt: something typed is wrong. Said once, of the lift where it is worst.</summary>
    private static Sentence? OverTheWindow(Port port, IReadOnlyList<WindowUse> windows) =>
        windows.Where(w => w.OfWindow.Value - w.OfWindow.Expanded() > 1).MaxBy(w => w.OfWindow.Value) is { } worst
            ? (Sentence)$"At lift {Quantity.Lift(worst.Lift)} the port passes {Quantity.Of(worst.OfWindow, Dimension.Ratio)} of what a nozzle without loss the size of its valve window would ({Quantity.Area(worst.Window.Area)}, valve {Quantity.Length(port.Valve!.HeadDiameter)}): that cannot be. Look at the unit of the lift, the valve's diameter, the range and the test pressure."
            : null;

    /// <summary>An exhaust that was drawn, an intake that was blown.</summary>
    private static Sentence? AgainstItsWay(PortKind kind, FlowDirection direction) => (kind, direction) switch
    {
        (PortKind.Exhaust, FlowDirection.Draw) => (Sentence)$"This exhaust was drawn: the air went in where the engine sends it out. Blowing is usual, and the two ways differ by several percent (common practice, no source). Compare it only with others drawn.",
        (PortKind.Intake, FlowDirection.Blow) => $"This intake was blown: the air went out where the engine draws it in. Drawing is usual, and the two ways differ by several percent (common practice, no source). Compare it only with others blown.",
        _ => null,
    };

    /// <summary>What was swept otherwise, and is therefore neither in the curve nor compared.</summary>
    private static IEnumerable<Sentence> Apart(Reductions reductions, CutFlow flow)
    {
        foreach (var fitting in flow.Apart.Select(s => s.Sweep.Fact.Fitting).Distinct())
        {
            yield return $"This cut was also swept {fitting.Words}: that measures something else and is not in this curve ({flow.Fitting.Words}).";
        }

        foreach (var cut in reductions.Ledger.CutsOf(flow.Cut.Fact.Port).Where(c => c.Fact.Number < flow.Cut.Fact.Number))
        {
            if (reductions.Of(cut, flow.Fitting) is null && reductions.Of(cut) is { } other)
            {
                yield return $"Cut {cut.Fact.Number} was swept {other.Fitting.Words}, this one {flow.Fitting.Words}: they are not compared. Sweep both alike.";
            }
        }
    }
}
