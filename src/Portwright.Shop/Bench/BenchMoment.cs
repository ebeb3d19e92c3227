using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>
/// When something was read off the bench: its day, and within the day its place in the record. Between days the stated dates alone decide.
/// Within one day the order decides where both were written down on the day they speak of; what was typed on another day (a sheet of paper,
/// a file brought in) has no place in the order, and the day's calibrations hold for it as for the whole day.
/// </summary>
/// <param name="Sequence">Place in the record: later entries have larger ones.</param>
/// <param name="At">When it was written down; null where that was on another day than the one it speaks of.</param>
public readonly record struct BenchMoment(DateOnly Day, int Sequence, TimeOnly? At)
{
    /// <summary>After everything.</summary>
    public static BenchMoment Last { get; } = EndOf(DateOnly.MaxValue);

    /// <summary>After everything of a day.</summary>
    public static BenchMoment EndOf(DateOnly day) => new(day, int.MaxValue, TimeOnly.MaxValue);

    /// <summary>Of a thing that states no day: the day it was first written down.</summary>
    public static BenchMoment Of<T>(Ledger ledger, Kept<T> kept)
        where T : Fact => Of(ledger, kept, null);

    /// <summary>Of a thing that states its day, or with null of one that does not.</summary>
    public static BenchMoment Of<T>(Ledger ledger, Kept<T> kept, DateOnly? stated)
        where T : Fact
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(kept);
        var written = ledger.FirstWritten(kept).DateTime;
        var day = stated ?? DateOnly.FromDateTime(written);
        return new(day, kept.Sequence, DateOnly.FromDateTime(written) == day ? TimeOnly.FromDateTime(written) : null);
    }

    /// <summary>Of a calibration. One typed after the work it was made before says so, and stands at its day's beginning.</summary>
    public static BenchMoment Of(Ledger ledger, Kept<Calibration> calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return Of(ledger, calibration, calibration.Fact.Date, calibration.Fact.BeforeWork);
    }

    /// <summary>Of a check of the bench, likewise.</summary>
    public static BenchMoment Of(Ledger ledger, Kept<MorningCheck> check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return Of(ledger, check, check.Fact.Date, check.Fact.BeforeWork);
    }

    /// <summary>The time of day after its day: <c> at 07:50</c>; empty where it is not known.</summary>
    public string Clock => At is { } at && at > TimeOnly.MinValue && at < TimeOnly.MaxValue ? FormattableString.Invariant($" at {at:HH:mm}") : "";

    /// <summary>True where both have a place in the order of one day.</summary>
    public bool IsOrderedWith(in BenchMoment other) => Day == other.Day && At is not null && other.At is not null;

    /// <summary>Came before, as far as is known: an earlier day, or the same day and earlier in the record. False where the order within the day is not known.</summary>
    public bool IsBefore(in BenchMoment other) => Day < other.Day || (IsOrderedWith(other) && Sequence < other.Sequence);

    private static BenchMoment Of<T>(Ledger ledger, Kept<T> kept, DateOnly stated, bool beforeWork)
        where T : Fact
    {
        var moment = Of(ledger, kept, stated);
        return beforeWork ? moment with { Sequence = 0, At = TimeOnly.MinValue } : moment;
    }
}
