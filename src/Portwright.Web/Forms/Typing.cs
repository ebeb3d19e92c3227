using System.Globalization;
using Microsoft.Extensions.Primitives;
using Portwright.Shop.Entering;
using Portwright.Shop.Units;

namespace Portwright.Web.Forms;

/// <summary>What a person typed in a form, read by our own parser, with a sentence for each field that could not be taken.</summary>
public sealed class Typing(IEnumerable<KeyValuePair<string, StringValues>> fields, UnitSystem units)
{
    /// <summary>Longest free text taken.</summary>
    public const int LongestText = 4000;

    private readonly Dictionary<string, StringValues> _fields = new(fields, StringComparer.Ordinal);
    private readonly Dictionary<string, string> _problems = [];
    private readonly Dictionary<string, FieldQuestion> _questions = [];
    private readonly List<KeptValue> _kept = [];

    public static Typing Nothing { get; } = new([], UnitSystem.UsCustomary);

    /// <summary>A sentence for each field that could not be taken, by the field's name.</summary>
    public IReadOnlyDictionary<string, string> Problems => _problems;

    /// <summary>What is asked about a field, by its name: the value waits in its box until it is answered.</summary>
    public IReadOnlyDictionary<string, FieldQuestion> Questions => _questions;

    /// <summary>What was asked about and kept all the same.</summary>
    public IReadOnlyList<KeptValue> KeptAsTyped => _kept;

    public bool IsGood => _problems.Count == 0 && _questions.Count == 0;

    /// <summary>It was refused or is asked about: where it lies folded away it is opened.</summary>
    public bool Wants(string name) => _problems.ContainsKey(name) || _questions.ContainsKey(name);

    /// <summary>The first field that wants something, in the order of the form's own boxes: the cursor goes there.</summary>
    public string? FirstTrouble => _fields.Keys.FirstOrDefault(Wants);

    /// <summary>The initials typed, where the form asks for them.</summary>
    public string? Hand => _fields.TryGetValue("hand", out var hand) ? hand.ToString() : null;

    /// <summary>What was typed letter for letter; null where the form was not sent or has no such field.</summary>
    /// <remarks>Where a question was answered by the value it offered, that; a number typed anew while the question stood is the answer, whatever button Enter pressed.</remarks>
    public string? Raw(string name)
    {
        var box = Box(name);
        return Box(FieldQuestion.Take(name)) is { } taken && Box(FieldQuestion.Of(name)) == box ? taken : box;
    }

    /// <summary>What was asked about in this box and kept: a later look at the same form does not ask again.</summary>
    public string? Kept(string name) => Box(FieldQuestion.Keep(name)) is { } kept && kept == Raw(name) ? kept : null;

    private string? Box(string name) => _fields.TryGetValue(name, out var value) ? value.ToString() : null;

    public bool Ticked(string name) => _fields.ContainsKey(name);

    /// <summary>Free text without control characters but line breaks, its ends trimmed.</summary>
    public string Text(string name, string label = "")
    {
        var text = new string([.. (Raw(name) ?? "").Where(c => !char.IsControl(c) || c is '\n')]).Trim();
        if (text.Length > LongestText)
        {
            Refuse(name, $"{label} holds {text.Length} characters; at most {LongestText} are kept. Make it shorter.");
        }

        return text;
    }

    /// <summary>Free text that must be there.</summary>
    public string Required(string name, string label)
    {
        var text = Text(name, label);
        if (text.Length == 0)
        {
            Refuse(name, $"{label} is empty. Type a few words.");
        }

        return text;
    }

    /// <summary>A number that may be left out.</summary>
    public Typed? Number(string name, string label, Dimension dimension) =>
        string.IsNullOrWhiteSpace(Raw(name)) ? null : Needed(name, label, dimension);

    /// <summary>A number that must be there, judged by what is known around it: in question it waits in its box.</summary>
    /// <param name="unit">Of a bare number; null for the usual.</param>
    public Typed? Needed(string name, EnteredField field, Surroundings around, Unit? unit = null)
    {
        switch (EntryJudge.Of(field, Raw(name), units, around, unit))
        {
            case Take take:
                return take.Value;
            case Ask ask when ask.MayKeep && Kept(name) is { } kept:
                _kept.Add(new KeptValue(field.Label, kept, ask.Question.In(units)));
                return ask.Value;
            case Ask ask:
                _questions.TryAdd(name, new FieldQuestion(ask.Question.In(units), [.. ask.Likely.Select(m => m.Text)], ask.MayKeep ? Raw(name) : null));
                return ask.Value;
            case Refuse refused:
                Refuse(name, refused.Problem);
                return null;
            default:
                throw new InvalidOperationException("A value is taken, asked about or refused.");
        }
    }

    /// <summary>As above, where it may be left out.</summary>
    public Typed? Number(string name, EnteredField field, Surroundings around, Unit? unit = null) => string.IsNullOrWhiteSpace(Raw(name)) ? null : Needed(name, field, around, unit);

    /// <summary>As above, in SI; NaN where it could not be taken.</summary>
    public double NeededSi(string name, EnteredField field, Surroundings around) => Needed(name, field, around)?.Si(field.Dimension) ?? double.NaN;

    /// <summary>A number that must be there.</summary>
    public Typed? Needed(string name, string label, Dimension dimension) => Needed(name, label, dimension, null);

    /// <summary>A number that must be there, bare numbers taken in <paramref name="unit"/>.</summary>
    public Typed? Needed(string name, string label, Dimension dimension, Unit? unit) => NeededText(name, label, Raw(name), dimension, unit);

    /// <summary>As above, of a part of what was typed.</summary>
    public Typed? NeededText(string name, string label, string? text, Dimension dimension, Unit? unit = null)
    {
        if (TypedNumber.TryParse(text, dimension, units, label, DecimalMark.Either, unit, out var value, out var problem))
        {
            return value;
        }

        Refuse(name, problem);
        return null;
    }

    /// <summary>As <see cref="Number(string, string, Dimension)"/>, in SI.</summary>
    public double? Si(string name, string label, Dimension dimension) => Number(name, label, dimension)?.Si(dimension);

    /// <summary>As <see cref="Needed(string, string, Dimension)"/>, in SI; NaN where it could not be taken.</summary>
    public double NeededSi(string name, string label, Dimension dimension) => Needed(name, label, dimension)?.Si(dimension) ?? double.NaN;

    /// <summary>Whole number in a range.</summary>
    public int Count(string name, string label, int least, int most)
    {
        var value = Needed(name, label, Dimension.Count);
        if (value is not null && (value.Value < least || value.Value > most))
        {
            Refuse(name, $"{label} \"{value.Text}\" is outside {least} to {most}. Type a number in between.");
            return least;
        }

        return value is null ? least : (int)value.Value;
    }

    /// <summary>Several numbers of one kind, parted by spaces, semicolons or line breaks.</summary>
    public IReadOnlyList<Typed> Several(string name, string label, Dimension dimension, int most = 200) =>
        Several(name, label, dimension, null, most);

    /// <inheritdoc cref="Several(string, string, Dimension, int)"/>
    public IReadOnlyList<Typed> Several(string name, string label, Dimension dimension, Unit? unit, int most = 200)
    {
        var list = new List<Typed>();
        foreach (var part in NumberList.Parts(Raw(name) ?? ""))
        {
            if (list.Count == most)
            {
                Refuse(name, $"{label}: more than {most} numbers. Make the list shorter.");
                break;
            }

            if (!TypedNumber.TryParse(part, dimension, units, label, DecimalMark.Either, unit, out var value, out var problem))
            {
                Refuse(name, problem);
                break;
            }

            list.Add(value);
        }

        return list;
    }

    /// <summary>Several of one field, each judged; the list is asked about as a whole, the first in question put right in its place.</summary>
    public IReadOnlyList<Typed> Several(string name, EnteredField field, Surroundings around)
    {
        ArgumentNullException.ThrowIfNull(field);
        var parts = NumberList.Parts(Raw(name) ?? "");
        var list = Several(name, field.Label, field.Dimension);
        if (list.Count < parts.Count) return list;
        for (var i = 0; i < parts.Count; i++)
        {
            if (EntryJudge.Of(field, parts[i], units, around) is not Ask ask) continue;
            var words = ask.Question.In(units);
            if (Kept(name) is { } kept)
            {
                if (_kept.TrueForAll(k => k.Field != field.Label)) _kept.Add(new KeptValue(field.Label, kept, words));
                continue;
            }

            _questions.TryAdd(name, new FieldQuestion(words, [.. ask.Likely.Select(m => string.Join("  ", parts.Select((p, k) => k == i ? m.Text : p)))], Raw(name)));
        }

        return list;
    }

    /// <summary>A day up to today; null where the field is empty.</summary>
    public DateOnly? Day(string name, string label)
    {
        var text = Raw(name)?.Trim() ?? "";
        if (text.Length == 0)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day <= DateOnly.FromDateTime(DateTime.Now))
        {
            return day;
        }

        Refuse(name, $"{label} \"{text}\" is no day up to today. Write it as 2026-03-18.");
        return null;
    }

    /// <summary>One of the values of an enumeration, by name.</summary>
    public T Choice<T>(string name, T otherwise)
        where T : struct, Enum =>
        Enum.TryParse<T>(Raw(name), ignoreCase: false, out var value) && Enum.IsDefined(value) ? value : otherwise;

    /// <summary>Asks about a box whose notation its own page reads; one kept against the question is remembered as kept.</summary>
    public void Ask(string name, string label, FieldQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.AsTyped is not null && Kept(name) is { } kept) _kept.Add(new KeptValue(label, kept, question.Words));
        else _questions.TryAdd(name, question);
    }

    public void Refuse(string name, string sentence) => _problems.TryAdd(name, sentence);
}
