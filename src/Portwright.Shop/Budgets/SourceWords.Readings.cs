using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>What one sweep, one reading, one ball or one probe has in doubt.</summary>
public sealed partial class SourceWords
{
    private readonly Dictionary<Guid, Sentence> _sweeps = [];

    private NamedSource? OfSweep(SourceName name, Guid of)
    {
        if (name.Head == "set-up" && name.Rest.Length > 0)
        {
            Kept<Sweep>[] together = [.. ledger.All<Sweep>().Where(s => s.Entry.Job == of && s.Fact.SetUp == name.Rest)];
            return new($"set-up \"{name.Rest}\"", together.Length > 0 ? Share(DoubtOf(together[0]).SetUpScatter) : null,
                together.Length > 1 ? (Sentence)$"the {together.Length} sweeps of that set-up" : $"the whole sweep", [.. together.Select(s => s.Id)]);
        }

        if (ledger.Find<Sweep>(of) is not { } sweep) return null;
        var doubt = DoubtOf(sweep);
        return name.Head switch
        {
            "set-up" => new($"set-up of {Words(sweep)}", Share(doubt.SetUpScatter), $"the whole sweep", [of]),
            "repeat" => new($"repeats at {Lift(name.Rest)}, {Words(sweep)}", null, Sentence.Empty, [of, .. At(sweep, name.Rest).Select(r => r.Id)]),
            "lift" => new($"lift set anew at {Lift(name.Rest)}, {Words(sweep)}", Step(doubt.Lift, Dimension.Lift), Sentence.Empty, [of]),
            _ => null,
        };
    }

    private NamedSource? OfReading(SourceName name, Guid of)
    {
        if (name.Head == "what the balls of check" && ledger.Find<BallCheck>(of) is not null)
            return new($"what all places of the ball share: its size, the rod, a port that is no pipe", null, $"every place of that ball", [of]);
        if (name.Head is not ("resolution of reading" or "repeat of reading" or "reading" or "leak")) return null;
        if (ledger.Find<FlowReading>(of) is { Fact: var flow } && ledger.Find<Sweep>(flow.Sweep) is { } sweep)
        {
            var range = flow.Range.Length > 0 ? flow.Range : sweep.Fact.Range;
            return new($"last digit of {AsTyped.Of(flow.Reading, range)} at {Quantity.Lift(flow.Lift.Si(Dimension.Lift))}, {Words(sweep)}", LastDigit(sweep.Fact.Bench, range), Sentence.Empty, [of]);
        }

        if (ledger.Find<LeakReading>(of) is { Fact: var leak } && ledger.Find<Sweep>(leak.Of) is { } leaking)
        {
            return name.Head == "leak"
                ? new($"leak, {Words(leaking)}", Share(DoubtOf(leaking).Leak), $"the whole sweep", [of])
                : new($"last digit of {AsTyped.Of(leak.Reading, leak.Range)}, leak test, {Words(leaking)}", LastDigit(leaking.Fact.Bench, leak.Range), $"the whole sweep", [of]);
        }

        if (ledger.Find<BallReading>(of) is { Fact: var ball } && ledger.Find<BallCheck>(ball.Check) is { Fact.Setting: var held })
            return Held(name, of, held, ball.Reading, BallPlace(ball));
        if (ledger.Find<ProbeReading>(of) is { Fact: var probe } && ledger.Find<Ring>(probe.Ring) is { Fact: var around })
            return new($"probe's {probe.Reading.Text.Trim()}, {ProbePlace(probe, around)}", Share(Rings.ReducedRing.ProbeScatter), Sentence.Empty, [of]);

        return ledger.Find<Ring>(of) is { Fact: var ring } ? OfRing(name, of, ring) : null;
    }

    private NamedSource? OfRing(SourceName name, Guid of, Ring ring)
    {
        var letter = Letter(ring.Station);
        if (name.Head != "reading") return ring.BenchReading is { } read ? Held(name, of, ring.Setting, read, $"flow with ring {letter}") : null;
        Sentence what = name.Rest switch
        {
            "at another lift" => $"ring {letter} carried to another lift",
            _ when name.Rest.StartsWith("at ", StringComparison.Ordinal) => $"ring {letter} read at one place",
            _ => $"air between the readings of ring {letter}",
        };
        return new(what, null, Sentence.Empty, [of]);
    }

    /// <summary>The meter while something is held in the port: its last digit, or its scatter.</summary>
    private NamedSource Held(SourceName name, Guid of, BenchSetting setting, Typed reading, Sentence what) => name.Head == "repeat of reading"
        ? new($"scatter of {AsTyped.Of(reading, setting.Range)}, {what}", ledger.Find<BenchCard>(setting.Bench) is { } bench ? Share(bench.Fact.Doubt.RepeatScatter) : null, Sentence.Empty, [of])
        : new($"last digit of {AsTyped.Of(reading, setting.Range)}, {what}", LastDigit(setting.Bench, setting.Range), Sentence.Empty, [of]);

    private NamedSource? OfPort(SourceName name, Guid of)
    {
        if (name.Head == "section" && ledger.Find<Section>(of) is { Fact: var section })
        {
            var own = Sections.SectionShape.Of(section, out _) is { } shape ? Sections.ReducedSection.DoubtOf(section, shape).Contributions.FirstOrDefault(c => c.Name == name.Rest) : null;
            return new($"{name.Rest}, section {Letter(section.Station)}", own is null ? null : Step(own.InputDoubt, name.Rest == "tilt" ? Dimension.Angle : Dimension.Length), Sentence.Empty, [of]);
        }

        if (name.Head == "burette" && ledger.Find<VolumeReading>(of) is { Fact: var volume })
            return new($"burette's {volume.Volume.Text.Trim()}", Step(Survey.SurveyReduction.BuretteDoubt, Dimension.Volume), Sentence.Empty, [of]);
        if (name.Head.EndsWith(" of port", StringComparison.Ordinal) && ledger.Find<Port>(of) is not null)
            return new($"{name.Head[..^" of port".Length]} as measured", null, $"every lift and cut of this port", [of]);
        if (name.Head == "way from" && ledger.Find<Station>(of) is { Fact: var from })
            return new($"way along the middle line from {from.Letter}", null, Sentence.Empty, [of]);
        return name.Head == "advice" ? new($"what the advice promised", null, Sentence.Empty, [of]) : null;
    }

    /// <summary><c>cut 3, sweep of 9 Apr 2026</c>, with its number where the cut was swept more than once that day.</summary>
    private Sentence Words(Kept<Sweep> sweep)
    {
        if (_sweeps.TryGetValue(sweep.Id, out var words)) return words;
        var day = DayOf(sweep);
        Kept<Sweep>[] alike = [.. Days[(sweep.Fact.Bench, day)].Where(s => s.Fact.Cut == sweep.Fact.Cut)];
        var number = Array.FindIndex(alike, s => s.Id == sweep.Id) + 1;
        var cut = ledger.Get<Cut>(sweep.Fact.Cut).Fact;
        return _sweeps[sweep.Id] = $"{(cut.Port == home ? "" : PortName(cut.Port) + ", ")}cut {cut.Number}, {(alike.Length > 1 ? (Sentence)$"sweep {number}" : $"sweep")} of {day}";
    }

    /// <summary><c>head A intake 2</c>.</summary>
    private string PortName(Guid port) => ledger.Find<Port>(port) is { Fact: var fact } ? $"{ledger.Find<Head>(fact.Head)?.Fact.Name} {fact.Name}".Trim() : "another port";

    private BenchDoubt DoubtOf(Kept<Sweep> sweep) => ledger.Get<BenchCard>(sweep.Fact.Bench).Fact.Doubt;

    private IEnumerable<Kept<FlowReading>> At(Kept<Sweep> sweep, string rest) =>
        Readings[sweep.Id].Where(r => LiftGroups.Same(r.Fact.Lift.Si(Dimension.Lift), Metres(rest)));

    private static Quantity Lift(string rest) => Quantity.Lift(Metres(rest));

    private static double Metres(string rest) => double.Parse(rest.AsSpan("at ".Length), CultureInfo.InvariantCulture);

    private string Letter(Guid station) => ledger.Find<Station>(station)?.Fact.Letter ?? "?";
}
