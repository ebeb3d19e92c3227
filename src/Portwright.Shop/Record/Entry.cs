namespace Portwright.Shop.Record;

/// <summary>
/// One line of the record. Entries are only ever added: a correction is a later entry about the same
/// <see cref="Subject"/>, and hiding something is an entry too.
/// </summary>
/// <param name="Number">The entry's own number, made where it was typed. Saving the same number twice saves it once.</param>
/// <param name="Subject">The thing the entry speaks of: a job, a head, a port, a reading.</param>
/// <param name="Job">The job it belongs to; null for what belongs to the shop, such as a bench card.</param>
/// <param name="At">When it was typed, with the shop's offset from UTC.</param>
/// <param name="Hand">Whose hand: the person's name or initials, may be empty.</param>
/// <param name="Source">Where it came from: <c>typed</c>, or the name of the file and its cell.</param>
/// <param name="Fact">What is stated.</param>
/// <param name="Replaces">The number of the entry this one corrects; null when it corrects none.</param>
/// <param name="Reason">Why a measured fact was corrected or hidden; required for both.</param>
public sealed record Entry(
    Guid Number,
    Guid Subject,
    Guid? Job,
    DateTimeOffset At,
    string Hand,
    string Source,
    Fact Fact,
    Guid? Replaces = null,
    string? Reason = null)
{
    /// <summary>A first entry about a new subject.</summary>
    public static Entry About(Guid subject, Guid? job, Fact fact, DateTimeOffset at, string hand = "", string source = "typed") =>
        new(Guid.CreateVersion7(at), subject, job, at, hand, source, fact);
}
