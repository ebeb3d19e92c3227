using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>The first page of a job: whose it is, its engine in one line, every port in one table, and what all must take care of.</summary>
public static class JobPageDocument
{
    /// <param name="sheets">Those of its ports that have a cut, each at the cut its sheet is of; a port without one is named in the table as it stands.</param>
    /// <param name="printed">The day it is laid out; null where no day is told.</param>
    /// <exception cref="KeyNotFoundException">No such job.</exception>
    public static Document Of(Ledger ledger, Guid job, IReadOnlyList<PortAtCut> sheets, DateOnly? printed = null)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(sheets);
        var fact = ledger.Get<Job>(job).Fact;
        var customer = Sentence.Plain(fact.Customer);
        List<NamedValue> whose = [];
        if (!customer.IsEmpty) whose.Add(new("customer", $"customer", customer));
        if (Engine(fact.Plan) is { IsEmpty: false } engine) whose.Add(new("engine", $"engine", engine));
        if (fact.Notes.Length > 0) whose.Add(new("notes", $"notes", Sentence.Plain(fact.Notes)));
        List<Part> parts = [];
        if (whose.Count > 0) parts.Add(new("job", $"This job", [new Values("of", whose)]));
        parts.Add(new("ports", $"Its ports", [Ports(ledger, job, sheets), .. Found(sheets)]));
        if (SetSaid.Of(sheets) is { } set) parts.Add(set);
        if (Common(sheets) is { Count: > 0 } cautions)
            parts.Add(new("cautions", $"Take care", [.. cautions.Select((c, i) => new Caution(FormattableString.Invariant($"caution-{i + 1}"), c))]));
        List<NamedValue> fields = [new("job", $"job", Sentence.Plain(fact.Name)), new("customer", $"customer", customer), new("program", $"program", Sentence.Plain(SheetOf.Program))];
        if (printed is { } day) fields.Insert(2, new("printed", $"printed", $"{day}"));
        return new(Sentence.Plain(fact.Name), customer, parts, fields);
    }

    private static Sentence Engine(EnginePlan plan)
    {
        List<Sentence> words = [];
        if (plan.Cylinders is { } cylinders) words.Add(Sentence.Plain(FlowSaid.Count(cylinders, "cylinder")));
        if (plan is { Bore: { } bore, Stroke: { } stroke }) words.Add($"bore {Quantity.Length(bore)}, stroke {Quantity.Length(stroke)}");
        if (plan.CompressionRatio is { } ratio) words.Add($"compression {Quantity.Ratio(ratio)}");
        foreach (var kind in Enum.GetValues<PortKind>())
        {
            if (plan.LiftOf(kind) is { } lift) words.Add($"{(kind == PortKind.Intake ? "intake" : "exhaust")} lift {Quantity.Lift(lift)}");
        }

        if (plan is { LowestSpeed: { } low, HighestSpeed: { } high }) words.Add($"{Quantity.Turns(low / 60) with { WithoutUnit = true }} to {Quantity.Turns(high / 60)}");
        if (plan.Fuel.Length > 0) words.Add(Sentence.Plain(plan.Fuel));
        return Sentence.Join("; ", words);
    }

    private static Table Ports(Ledger ledger, Guid job, IReadOnlyList<PortAtCut> sheets) => new(
        "ports",
        $"Flow at the cam's lift where it was tested, else at the highest tested; the whole curve against the first cut tested (its number)",
        [
            new("port", $"port"), new("cut", $"cut"), new("lift", $"lift", Dimension.Lift), new("flow", $"flow", Dimension.VolumeFlow, Strong: true),
            new("less", $"less the first", Dimension.VolumeFlow), new("verdict", $"verdict"),
        ],
        [
            .. ledger.HeadsOf(job).SelectMany(h => ledger.PortsOf(h.Id).Select(p =>
                Row(h.Fact, p.Fact, sheets.FirstOrDefault(s => s.Sheet.Port.Id == p.Id)))),
        ],
        Sentence.Empty);

    private static List<Cell> Row(Head head, Port port, PortAtCut? at)
    {
        List<Cell> row = [new($"{head.Name} {port.Name}")];
        if (at?.Sheet is not { Flow: { } flow } sheet)
        {
            row.Add(new(at is null ? (Sentence)$"not started" : $"{at.Sheet.Cut.Fact.Number}, not swept"));
            return [.. row, .. Enumerable.Repeat(Cell.Empty, 4)];
        }

        var (lift, flows) = sheet.Cam is { Flow: { } atCam } cam ? (cam.Lift, atCam) : (flow.Curve.HighestLift, flow.Curve.Points[^1].Flow);
        row.AddRange([new($"{sheet.Cut.Fact.Number}"), new($"{Quantity.Lift(lift)}"), new($"{Quantity.Flow(flows)}")]);
        var first = sheet.AgainstFirst ?? sheet.AgainstLast;
        row.AddRange(first?.Curves.WholeCurve is { } less
            ? [new($"{Quantity.Difference(less.Of, Dimension.VolumeFlow, less.Level)}"), new($"{VerdictWords.Of(less)} (cut {first.Last.Cut.Fact.Number})", VerdictWords.ShapeOf(less))]
            : [Cell.Empty, Cell.Empty]);
        return row;
    }

    /// <summary>How much was found in each port that anything was found in.</summary>
    private static IEnumerable<Block> Found(IReadOnlyList<PortAtCut> sheets)
    {
        var found = sheets.Where(s => s.Findings.Count > 0).ToList();
        if (found.Count == 0) return [];
        return
        [
            new Table(
                "findings",
                $"What was found: each port's sheet says it",
                [new("port", $"port"), new("found", $"findings", Strong: true), new("stop", $"leave alone"), new("again", $"measure again"), new("cuts", $"to cut")],
                [.. found.Select(s => (IReadOnlyList<Cell>)
                [
                    new($"{s.Sheet.Head.Fact.Name} {s.Sheet.Port.Fact.Name}"), Number(s, _ => true),
                    Number(s, f => f.Kind == FindingKind.Stop), Number(s, f => f.Kind == FindingKind.Measurement), Number(s, f => f.Suggestion is not null),
                ])],
                Sentence.Empty),
        ];
    }

    private static Cell Number(PortAtCut port, Func<Finding, bool> counts) => port.Findings.Count(counts) is > 0 and var n ? new($"{n}") : Cell.Empty;

    /// <summary>What stands on every swept port's sheet, in the first one's order.</summary>
    private static IReadOnlyList<Sentence> Common(IReadOnlyList<PortAtCut> sheets)
    {
        var each = sheets.Where(s => s.Sheet.Flow is not null).Select(RemarksSaid.AllCautions).ToList();
        return each.Count == 0 ? [] : [.. each[0].Where(c => each.TrueForAll(e => e.Contains(c)))];
    }
}
