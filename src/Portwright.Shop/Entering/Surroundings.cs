namespace Portwright.Shop.Entering;

/// <summary>What is known around a field while it is typed: the other fields, the plan, the bench, the cut before, the sister ports; in SI, by the field's key.</summary>
public sealed class Surroundings
{
    private readonly Dictionary<string, double> _known;

    public Surroundings(IEnumerable<KeyValuePair<string, double>> known)
    {
        ArgumentNullException.ThrowIfNull(known);
        _known = new(known.Where(k => double.IsFinite(k.Value)).GroupBy(k => k.Key).Select(g => g.Last()), StringComparer.Ordinal);
    }

    public static Surroundings None { get; } = new([]);

    /// <summary>Null where nobody knows it.</summary>
    public double? this[EnteredField field] => field is not null && _known.TryGetValue(field.Key, out var value) ? value : null;

    /// <summary>Both together; what the other says goes first.</summary>
    public Surroundings With(Surroundings other) => other is null ? this : new([.. _known, .. other._known]);

    /// <summary>With one more; a value that is no number changes nothing.</summary>
    public Surroundings With(EnteredField field, double? si) => field is not null && si is { } value ? new([.. _known, new(field.Key, value)]) : this;
}
