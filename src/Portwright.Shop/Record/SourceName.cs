namespace Portwright.Shop.Record;

/// <summary>The name of a cause of doubt taken apart, as <see cref="Sources"/> put it together.</summary>
/// <param name="Head">The words before the subject; the whole name where it names none.</param>
/// <param name="Of">The subject: a bench, a sweep, a reading.</param>
/// <param name="Rest">What follows the subject: a lift, a plate, a day.</param>
internal readonly record struct SourceName(string Head, Guid? Of, string Rest)
{
    private const int SubjectLength = 32;

    public static SourceName Read(string source)
    {
        for (var at = 0; at + SubjectLength <= source.Length; at++)
        {
            if (at > 0 && source[at - 1] != ' ') continue;
            if (Guid.TryParseExact(source.AsSpan(at, SubjectLength), "N", out var subject))
                return new(source[..at].TrimEnd(), subject, source[(at + SubjectLength)..].TrimStart(' ', ':', ','));
        }

        return new(source, null, "");
    }
}
