using Portwright.Shop.Bench;
using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Trials;

/// <summary>The judgement of one number read off the meter, before it is kept: taken, asked about with what was likely meant, or refused.</summary>
public static class ReadingEntry
{
    /// <summary>Standard deviations off what is expected past which it is asked where a slip of the fingers explains it; judgement, no source.</summary>
    public const double Suspect = 2.6;

    /// <summary>The same where nothing explains it.</summary>
    public const double Strange = 4;

    /// <summary>What was meant lies no further off than this.</summary>
    private const double Near = 1.6;

    /// <param name="before">The record without it.</param>
    /// <param name="entry">The reading as it would be kept.</param>
    /// <param name="outOfRange">Why no such reading can be kept at all; what was meant may still be one. Null where it can.</param>
    public static EntryAnswer Of(Reductions before, Entry entry, UnitSystem units, string? outOfRange = null)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(entry);
        var fact = (FlowReading)entry.Fact;
        var ledger = before.Ledger;
        var sweep = ledger.Get<Sweep>(fact.Sweep);
        var range = ledger.Get<BenchCard>(sweep.Fact.Bench).Fact.RangeNamed(fact.Range.Length > 0 ? fact.Range : sweep.Fact.Range);
        if (range is null) return new Refuse($"The bench card has no range named \"{fact.Range}\". Choose one that is on the card.");
        var dimension = MeterOf.ReadingDimension(range);
        var lift = fact.Lift.Si(Dimension.Lift);
        var sofar = before.Of(sweep).Curve;
        var expected = ExpectedFlow.At(sofar, Like(before, sweep), ValveOf(ledger, sweep), lift);
        var typed = outOfRange is null ? Tried(before, sweep, entry, fact.Reading) : (null, outOfRange);
        var end = EndOfScale(range);
        var past = fact.Reading.Si(dimension) > end;
        if (typed.Flow is { } flow && typed.Why is null && !past && (expected is null || Math.Abs(Off(flow, expected)) <= Suspect)) return new Take(fact.Reading);

        var likely = expected is null ? [] : Slips.Undone(fact.Reading, dimension, units)
            .Where(m => m.Slip != SlipKind.Unit || range.Unit != "%")
            .Where(m => m.Si <= end)
            .Select(m => (Meant: m, Tried: Tried(before, sweep, entry, Read(m, dimension, units, range))))
            .Where(t => t.Tried.Flow is { } f && Math.Abs(Off(f, expected)) <= Near)
            .OrderBy(t => t.Meant.Slip).Select(t => t.Meant).Take(EntryJudge.Offered).ToList();
        if (typed.Flow is not { } shown)
        {
            return likely.Count > 0 ? new Ask(fact.Reading, likely, $"{likely[0].Text}? \"{fact.Reading.Text.Trim()}\" is no air flow here.", MayKeep: false) : new Refuse(typed.Why!);
        }

        if (past && likely.Count == 0)
        {
            return new Refuse($"Reading \"{fact.Reading.Text.Trim()}\" is past the end of range {range.Name}. Read it on a larger range, or type the number again.");
        }

        if (past) return new Ask(fact.Reading, likely, $"{likely[0].Text}? \"{fact.Reading.Text.Trim()}\" is past the end of range {range.Name}.", MayKeep: false);
        if (IsTheLift(fact)) return new Ask(fact.Reading, [], $"\"{fact.Reading.Text.Trim()}\" is the lift. What does the meter show there?");
        if (likely.Count == 0 && typed.Why is { } under) return new Ask(fact.Reading, [], Sentence.Plain(under));
        if (likely.Count == 0 && Math.Abs(Off(shown, expected!)) <= Strange) return new Take(fact.Reading);
        Sentence would = $"\"{fact.Reading.Text.Trim()}\" would be {Quantity.Flow(shown)}; about {expected!.Said} is likely: {expected.Because}.";
        return new Ask(fact.Reading, likely, likely.Count > 0 ? $"{likely[0].Text}? {would}" : would);
    }

    private static double Off(double flow, ExpectedFlow expected) => flow > 0 ? Math.Log(flow / expected.Flow) / expected.Spread : double.NegativeInfinity;

    /// <summary>Restated flow of the one reading, m3/s; and why it is none, or hardly one.</summary>
    private static (double? Flow, string? Why) Tried(Reductions before, Kept<Sweep> sweep, Entry entry, Typed reading)
    {
        var tried = entry with { Fact = (FlowReading)entry.Fact with { Reading = reading } };
        var with = new Reductions(before.Ledger.With([tried])).Of(sweep);
        if (Trial.Refuses(with, entry.Subject) is { } why) return (null, why);
        var curve = with.Curve;
        return curve.Points.SelectMany(p => p.Readings).FirstOrDefault(r => r.Reading.Id == entry.Subject) is { } one
            ? (Physics.TestPiece.RestatedFlow.VolumeFlow(one.EffectiveArea.Value, curve.RestatedAt, curve.Air, curve.Direction), UnderTheLeak.Words(one.Reading.Fact, one.Lift, one.EffectiveArea))
            : (null, "The reading can't be reduced. Look at the number and its unit.");
    }

    private static Typed Read(MeantValue meant, Dimension dimension, UnitSystem units, RangeCard range) =>
        TypedNumber.TryParse(meant.Text, dimension, units, "", DecimalMark.Either, Unit.Find(range.Unit, dimension), out var value, out _) ? value : throw new InvalidOperationException($"'{meant.Text}' was read once.");

    /// <summary>Past it the scale has no mark: a hundred percent.</summary>
    private static double EndOfScale(RangeCard range) => range is { Meter: PercentCard, Unit: "%" } ? 1.0 : double.PositiveInfinity;

    /// <summary>The lift's own number, in its unit or in thousandths of an inch.</summary>
    private static bool IsTheLift(FlowReading fact) => fact.Reading.Value is var number
        && (number == fact.Lift.Value || Math.Abs(number * 0.0000254 - fact.Lift.Si(Dimension.Lift)) < 1e-9);

    /// <summary>The cut before and the sister ports, tested alike; the ports are looked for only where the cut does not say.</summary>
    private static IEnumerable<(FlowCurve Curve, string Name)> Like(Reductions before, Kept<Sweep> sweep)
    {
        var ledger = before.Ledger;
        var cut = ledger.Get<Cut>(sweep.Fact.Cut);
        if (before.Before(cut, sweep.Fact.Fitting) is [.., var last]) yield return (last.Curve, $"cut {last.Cut.Fact.Number}");
        foreach (var sister in SisterPorts.Of(before, cut.Fact.Port, cut.Id))
        {
            if (sister.Sheet.Flow is { } flow && flow.Curve.Direction == sweep.Fact.Direction) yield return (flow.Curve, sister.Sheet.Port.Fact.Name);
        }
    }

    /// <summary>Where the lengths written down make one.</summary>
    private static ValveData? ValveOf(Ledger ledger, Kept<Sweep> sweep) =>
        ledger.Get<Port>(ledger.Get<Cut>(sweep.Fact.Cut).Fact.Port).Fact.Valve is { } valve && ValveCheck.Of(valve) is null ? valve : null;
}
