using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Words;

namespace Portwright.Shop.Ports;

/// <summary>What was asked about when it was typed and kept all the same: said for as long as it stands so, one sentence each.</summary>
internal static class ConfirmedSaid
{
    /// <summary>Of the port's valve, its cut's sweeps with air and leak, the readings that count, and what was measured in it.</summary>
    public static IEnumerable<Sentence> Of(PortAtCut port)
    {
        ArgumentNullException.ThrowIfNull(port);
        var ledger = port.Ledger;
        return ledger.All<Confirmed>().Where(c => !ledger.IsHidden(c.Fact.Of) && Belongs(port, c.Fact.Of) && Stands(ledger, c)).Select(c => Said(ledger, c.Fact));
    }

    private static Sentence Said(Ledger ledger, Confirmed kept) => ledger.Find<FlowReading>(kept.Of) is { Fact: var reading }
        ? (Sentence)$"The reading \"{kept.Text.Trim()}\" at lift {reading.Lift.WithUnit} was asked about when it was typed, and kept."
        : $"{kept.Field} \"{kept.Text.Trim()}\" was asked about when it was typed, and kept.";

    private static bool Belongs(PortAtCut port, Guid of)
    {
        var (sheet, ledger) = (port.Sheet, port.Ledger);
        bool Counts(Guid sweep) => sheet.Flow?.Sweeps.Any(s => s.Sweep.Id == sweep) ?? ledger.Find<Sweep>(sweep)?.Fact.Cut == sheet.Cut.Id;
        bool Cut(Guid cut) => ledger.Find<Cut>(cut) is { Fact: var made } && made.Port == sheet.Port.Id && made.Number <= sheet.Cut.Fact.Number;
        return of == sheet.Port.Id || of == sheet.Cut.Id || Counts(of) || ledger.Entries.LastOrDefault(e => e.Subject == of)?.Fact switch
        {
            FlowReading r => Counts(r.Sweep),
            WeatherReading w => Counts(w.Of),
            LeakReading l => Counts(l.Of),
            Station s => s.Port == sheet.Port.Id,
            Centreline c => c.Port == sheet.Port.Id,
            Section s => Cut(s.Cut),
            VolumeReading v => Cut(v.Cut),
            WallPoint w => Cut(w.Cut),
            Ring r => Cut(r.Cut),
            ProbeReading p => ledger.Find<Ring>(p.Ring) is { } ring && Cut(ring.Fact.Cut),
            BallCheck b => Cut(b.Cut),
            BallReading b => ledger.Find<BallCheck>(b.Check) is { } check && Cut(check.Fact.Cut),
            FlagReading f => Cut(f.Cut),
            _ => false,
        };
    }

    /// <summary>Nothing was put in its place since. A port is written down anew for many reasons: there its valve's own measure decides.</summary>
    private static bool Stands(Ledger ledger, Kept<Confirmed> kept)
    {
        var entries = ledger.Entries;
        var then = entries.Take(kept.Sequence).LastOrDefault(e => e.Subject == kept.Fact.Of)?.Fact;
        var now = entries.LastOrDefault(e => e.Subject == kept.Fact.Of && e.Fact is not (Hidden or Shown))?.Fact;
        return then is Port { Valve: { } before } && now is Port { Valve: { } valve }
            ? Measure(before, kept.Fact.Field) is { } measure ? measure == Measure(valve, kept.Fact.Field) : before == valve
            : ReferenceEquals(then, now);
    }

    private static double? Measure(ValveData valve, string field) =>
        field == EnteredValve.Head.Label ? valve.HeadDiameter
        : field == EnteredValve.Throat.Label ? valve.ThroatDiameter
        : field == EnteredValve.SeatAngle.Label ? valve.SeatAngle
        : field == EnteredValve.SeatWidth.Label ? valve.SeatWidth
        : field == EnteredValve.Stem.Label ? valve.StemDiameter
        : null;
}
