using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>The one judgement of a typed value, the same on every page, in <c>calc</c>, in an import and on the command line.</summary>
public static class EntryJudge
{
    /// <summary>So many values are offered.</summary>
    public const int Offered = 3;

    /// <summary>Takes, asks or refuses.</summary>
    /// <param name="text">What was typed, letter for letter.</param>
    /// <param name="asked">The unit a bare number is taken in; null for the usual of the units shown.</param>
    public static EntryAnswer Of(EnteredField field, string? text, UnitSystem system, Surroundings around, Unit? asked = null)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(around);
        var read = TypedNumber.TryParse(text, field.Dimension, system, field.Label, DecimalMark.Either, asked, out var value, out var problem);
        if (!read && BareNumber(text, field.Dimension, system, asked) is { } bare) value = bare;
        else if (!read) return new Refuse(problem, FirstStrange(text ?? "", field.Dimension));
        var si = value.Si(field.Dimension);
        var expected = field.Expected(around);
        var possible = read && field.IsPossible(si);
        if (possible && (expected.Count == 0 || expected.Any(r => r.Holds(si)))) return new Take(value);
        var nearest = expected.MinBy(r => r.Outside(si));
        var undone = Slips.Undone(value, field.Dimension, system);
        // The same number in the box's unit and, where it was typed bare, in every other.
        var likely = undone.Where(m => m.Slip == SlipKind.Unit).Select(m => new Typed(value.Value, m.Text.Split(' ')[^1], m.Text)).Prepend(value)
            .SelectMany(v => field.AlsoMeant(v, around)).Concat(undone)
            .Where(m => field.IsPossible(m.Si) && expected.Any(r => r.Holds(m.Si)))
            .OrderBy(m => expected.TakeWhile(r => !r.Holds(m.Si)).Count())
            .Take(Offered).ToList();
        if (!possible && likely.Count == 0)
        {
            return new Refuse(read ? $"{field.Label} \"{value.Text.Trim()}\": {Between(field, system)}" : problem);
        }

        return new Ask(value, likely, Question(field, value, likely, nearest), possible);
    }

    /// <summary>The same at a door where nobody can answer a question: the sentence that asks back, or null. What was typed with its unit was meant so.</summary>
    /// <param name="label">The field as this door names it.</param>
    public static string? Objection(EnteredField field, string label, string text, UnitSystem system, Surroundings around)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Of(field with { Label = label }, text, system, around) switch
        {
            Refuse refused => refused.Problem,
            Ask { MayKeep: true, Value: var value } when value.WithUnit == value.Text.Trim() && value.Unit.Length > 0 => null,
            Ask { MayKeep: true, Value: var value } ask => $"{ask.Question.In(system)} Type {(ask.Likely.Count > 0 ? $"{ask.Likely[0].Text}, or " : "")}{value.WithUnit} if that was read.",
            Ask ask => $"{ask.Question.In(system)} Type {ask.Likely[0].Text}.",
            _ => null,
        };
    }

    /// <summary>A number out of all range is still a number: what was meant may be another unit's, or have no sign. Null where it is none.</summary>
    /// <param name="asked">As in <see cref="Of"/>.</param>
    public static Typed? BareNumber(string? text, Dimension dimension, UnitSystem system, Unit? asked)
    {
        if (!TypedNumber.TrySplit(text, DecimalMark.Either, out var number, out var rest)) return null;
        var unit = rest.Length == 0 ? asked ?? Unit.Default(dimension, system) : Unit.Find(rest, dimension);
        return unit is not null && double.IsFinite(unit.ToSi(number)) ? new Typed(number, unit.Name, text!) : null;
    }

    private static Sentence Question(EnteredField field, Typed value, List<MeantValue> likely, LikelyRange? nearest)
    {
        Sentence because = nearest is null ? Sentence.Empty : $": {nearest.Because}";
        return likely.Count > 0
            ? (Sentence)$"{field.Label}: {likely[0].Text}? \"{value.Text.Trim()}\" was typed{because}."
            : $"{field.Label} \"{value.Text.Trim()}\"? It is unusual{because}.";
    }

    private static string Between(EnteredField field, UnitSystem system) =>
        $"it lies between {Print.Number(field.Least, field.Dimension, system)} and {Print.Number(field.Most, field.Dimension, system)}. Check the point and the unit, and type it again with its unit.";

    /// <summary>Index of the first character that belongs to no number and no unit; -1 where none stands out.</summary>
    private static int FirstStrange(string text, Dimension dimension)
    {
        if (string.IsNullOrWhiteSpace(text)) return -1;
        if (!TypedNumber.TrySplit(text, DecimalMark.Either, out _, out var rest)) return text.Length - text.TrimStart().Length;
        return rest.Length == 0 || Unit.Find(rest, dimension) is not null ? -1 : Math.Max(0, text.LastIndexOf(rest, StringComparison.Ordinal));
    }
}
