using Portwright.Physics.Statistics;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
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

        if (port.Valve is { } v && v.ThroatDiameter > 0.92 * v.HeadDiameter)
        {
            cautions.Add($"The throat is {Quantity.Share(v.ThroatDiameter / v.HeadDiameter)} of the valve by diameter; 85 to 92 is usual (common practice). Little seat is left to cut.");
        }

        return cautions;
    }

    public static IReadOnlyList<Sentence> Remarks(
        Reductions reductions, Port port, CutFlow? flow, CamPoint? cam, BenchMorning? morning, DateOnly day)
    {
        var remarks = new List<Sentence>();
        if (flow is null)
        {
            remarks.Add($"No reading at this cut yet.");
            return remarks;
        }

        if (morning is null || morning.Mornings[^1].Check.Fact.Date != day)
        {
            remarks.Add($"The bench was not checked on the day of this sweep. A leak test and one check plate take five minutes and say whether the day can be trusted.");
        }
        else if (morning.Answer != ChartAnswer.Go)
        {
            remarks.AddRange(morning.Words.Select(Sentence.Plain));
        }

        if (cam is { Flow: null })
        {
            remarks.Add($"The cam lifts to {Quantity.Lift(cam.Lift)}, which was not tested (highest {Quantity.Lift(flow.Curve.HighestLift)}). Nothing is guessed past the last reading.");
        }

        if (port.Valve is null)
        {
            remarks.Add($"Valve and seat are not written down for this port: no window and no discharge coefficients.");
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
