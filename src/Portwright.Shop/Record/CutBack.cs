namespace Portwright.Shop.Record;

/// <summary>
/// A whole cut taken back with all that hangs on it, and put back at one touch: for a cut written down by mistake. Everything stays in the record, hidden by one act; what had been taken back
/// before by itself stays so when the cut comes back.
/// </summary>
public static class CutBack
{
    /// <summary>What hangs on a cut and is not hidden, in the order it was saved, the cut itself left out.</summary>
    public static IReadOnlyList<Kept<Fact>> HangingOn(Ledger ledger, Guid cut)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        HashSet<Guid> reached = [cut];
        List<Kept<Fact>> hanging = [];
        // What a fact hangs on was saved before it.
        foreach (var kept in ledger.All<Fact>())
        {
            if (On(kept.Fact) is not { } on || !reached.Contains(on)) continue;
            reached.Add(kept.Id);
            hanging.Add(kept);
        }

        return hanging;
    }

    /// <summary>Why a cut cannot be taken back; null where it can.</summary>
    public static string? Refusal(Ledger ledger, Kept<Cut> cut)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(cut);
        if (cut.Fact.Number == 0) return "Cut 0 is the port as it was received: it cannot be taken back. Put the head away instead.";
        var latest = ledger.CutsOf(cut.Fact.Port)[^1];
        return latest.Id == cut.Id ? null : $"Cut {latest.Fact.Number} was made after it. Take that one back first.";
    }

    /// <summary>Hides the cut and what hangs on it, all at one time and with one reason.</summary>
    public static IReadOnlyList<Entry> Take(Ledger ledger, Kept<Cut> cut, DateTimeOffset at, string hand)
    {
        ArgumentNullException.ThrowIfNull(cut);
        var reason = Reason(cut);
        return [Amend.Hide(cut, at, hand, reason), .. HangingOn(ledger, cut.Id).Select(h => Amend.Hide(h, at, hand, reason))];
    }

    /// <summary>The cut of a port that was taken back last and can be put back; null where there is none, or where its number has been given to another since.</summary>
    public static Kept<Cut>? Last(Ledger ledger, Guid port)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        return ledger.Entries.Reverse().Where(e => e.Fact is Hidden && ledger.IsHidden(e.Subject)).Select(e => ledger.Find<Cut>(e.Subject)).OfType<Kept<Cut>>()
            .FirstOrDefault(c => c.Fact.Port == port) is { } last && last.Fact.Number == ledger.CutsOf(port).Select(c => c.Fact.Number).DefaultIfEmpty(-1).Max() + 1
            ? last : null;
    }

    /// <summary>When the cut was taken back.</summary>
    /// <exception cref="InvalidOperationException">It was not.</exception>
    public static DateTimeOffset TakenAt(Ledger ledger, Kept<Cut> cut) => Taking(ledger, cut).At;

    /// <summary>Shows the cut and what was hidden with it.</summary>
    /// <exception cref="InvalidOperationException">It was not taken back.</exception>
    public static IReadOnlyList<Entry> Put(Ledger ledger, Kept<Cut> cut, DateTimeOffset at, string hand)
    {
        var taking = Taking(ledger, cut);
        var reason = $"cut {cut.Fact.Number} put back";
        return
        [
            .. ledger.Entries.Where(e => e.Fact is Hidden && e.At == taking.At && e.Reason == taking.Reason && ledger.IsHidden(e.Subject))
                .Select(e => ledger.Find<Fact>(e.Subject)).OfType<Kept<Fact>>().Select(k => Amend.Show(k, at, hand, reason)),
        ];
    }

    private static Entry Taking(Ledger ledger, Kept<Cut> cut) => ledger.IsHidden(cut.Id)
        ? ledger.History(cut.Id).Last(e => e.Fact is Hidden)
        : throw new InvalidOperationException($"Cut {cut.Fact.Number} was not taken back.");

    private static string Reason(Kept<Cut> cut) => $"cut {cut.Fact.Number} taken back";

    /// <summary>The subject a fact hangs on; null for what stands by itself.</summary>
    private static Guid? On(Fact fact) => fact switch
    {
        Sweep f => f.Cut,
        FlowReading f => f.Sweep,
        WeatherReading f => f.Of,
        LeakReading f => f.Of,
        Photo f => f.Of,
        Section f => f.Cut,
        VolumeReading f => f.Cut,
        Ring f => f.Cut,
        ProbeReading f => f.Ring,
        BallCheck f => f.Cut,
        BallReading f => f.Check,
        FlagReading f => f.Cut,
        WallPoint f => f.Cut,
        Advice f => f.Cut,
        Confirmed f => f.Of,
        _ => null,
    };
}
