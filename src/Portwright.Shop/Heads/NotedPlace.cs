using Portwright.Shop.Record;
using Portwright.Shop.Words;

namespace Portwright.Shop.Heads;

/// <summary>
/// A place noted in a port by touching a drawing of it. The record keeps the metal, and the drawing said which metal that was: where the drawing lay the other way round
/// and the hand went by what it saw, the metal kept is that across. Nobody but the porter knows whether it went by the sight or by the name of the side.
/// </summary>
/// <param name="Reading">As it stands; hidden ones too, since they can be put back.</param>
/// <param name="Bearing">Clock hour as the record keeps it; null in the middle.</param>
/// <param name="Lean">Of a flag; else null.</param>
/// <param name="TakenBack">It is hidden now.</param>
public sealed record NotedPlace(Kept<Fact> Reading, Guid Cut, Guid Station, double? Bearing, double? Lean, bool TakenBack)
{
    /// <summary>Why a place was turned over, as the record says it.</summary>
    public const string Reason = "noted as seen, while the port was drawn the other way round";

    /// <summary>The places of a port that would lie across if they were noted by sight, once it is drawn mirrored or not mirrored: those noted on a drawing that lay the other way.</summary>
    /// <remarks>A place at the roof, at the floor or in the middle is the same in the mirror.</remarks>
    public static IReadOnlyList<NotedPlace> Across(Ledger ledger, Guid port, bool mirrored)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var drawn = ledger.Entries.Select((e, i) => (Entry: e, At: i)).Where(e => e.Entry.Subject == port && e.Entry.Fact is Port).Select(e => (((Port)e.Entry.Fact).Mirrored, e.At)).ToList();
        var noted = new Dictionary<Guid, (int At, Fact Fact)>();
        for (var i = 0; i < ledger.Entries.Count; i++)
        {
            var entry = ledger.Entries[i];
            if (PlaceOf(entry.Fact) is not { } place) continue;
            // A number corrected later leaves the place where it was noted.
            if (!noted.TryGetValue(entry.Subject, out var before) || PlaceOf(before.Fact) != place) noted[entry.Subject] = (i, entry.Fact);
        }

        return
        [
            .. noted.Where(n => drawn.LastOrDefault(d => d.At < n.Value.At).Mirrored != mirrored)
                .Select(n => Of(ledger, n.Key)).OfType<NotedPlace>()
                .Where(p => ledger.Find<Cut>(p.Cut)?.Fact.Port == port && (IsAside(p.Bearing) || IsAside(p.Lean))),
        ];
    }

    /// <summary>The reading with its place across, as a correction with its reason.</summary>
    public Entry TurnedOver(DateTimeOffset at, string hand) => Amend.Correct(
        Reading,
        Reading.Fact switch
        {
            ProbeReading p => p with { Bearing = Mirror(p.Bearing) },
            BallReading b => b with { Bearing = Mirror(b.Bearing) },
            FlagReading f => f with { Bearing = Mirror(f.Bearing), Lean = Mirror(f.Lean) },
            WallPoint w => (Fact)(w with { Bearing = Geometry.Bearing.Clock(-w.Bearing) }),
            var other => throw new InvalidOperationException($"A {other.GetType().Name} has no place."),
        },
        at,
        hand,
        Reason);

    /// <summary>What was read there: <c>ball, 82.0 %</c>.</summary>
    public string What => Reading.Fact switch
    {
        ProbeReading p => $"probe, {p.Reading.WithUnit}",
        BallReading b => $"ball, {b.Reading.WithUnit}",
        FlagReading => "flag",
        WallPoint w => $"metal, {w.Thickness.WithUnit}",
        var other => throw new InvalidOperationException($"A {other.GetType().Name} has no place."),
    };

    /// <summary><c>9 o'clock (cylinder-wall side)</c>, and where a flag leans.</summary>
    public string Where => Said(Bearing, Lean);

    /// <summary>The place across.</summary>
    public string WhereAcross => Said(Mirror(Bearing), Mirror(Lean));

    private static string Said(double? bearing, double? lean)
    {
        var place = bearing is { } b ? Bearings.Words(b) : "the middle";
        return lean is { } l ? $"{place}, leaning to {Bearings.Words(l)}" : place;
    }

    private static double? Mirror(double? hours) => hours is { } h ? Geometry.Bearing.Clock(-h) : null;

    private static bool IsAside(double? hours) => hours is { } h && Math.Abs(Geometry.Bearing.Direction(h).X) > 1e-9;

    private static (double?, double?)? PlaceOf(Fact fact) => fact switch
    {
        ProbeReading p => (p.Bearing, null),
        BallReading b => (b.Bearing, null),
        FlagReading f => (f.Bearing, f.Lean),
        WallPoint w => (w.Bearing, null),
        _ => null,
    };

    private static NotedPlace? Of(Ledger ledger, Guid id)
    {
        if (ledger.Find<Fact>(id) is not { } kept) return null;
        var hidden = ledger.IsHidden(id);
        return kept.Fact switch
        {
            ProbeReading p when ledger.Find<Ring>(p.Ring) is { Fact: var ring } => new(kept, ring.Cut, ring.Station, p.Bearing, null, hidden),
            BallReading b when b.Station is { } station && ledger.Find<BallCheck>(b.Check) is { Fact: var check } => new(kept, check.Cut, station, b.Bearing, null, hidden),
            FlagReading f => new(kept, f.Cut, f.Station, f.Bearing, f.Lean, hidden),
            WallPoint w => new(kept, w.Cut, w.Station, w.Bearing, null, hidden),
            _ => null,
        };
    }
}
