using System.Globalization;
using Microsoft.Extensions.Primitives;
using Portwright.Shop.Units;

namespace Portwright.Web.Forms;

/// <summary>What a person typed in a form, read by our own parser, with a sentence for each field that could not be taken.</summary>
public sealed class Typing(IEnumerable<KeyValuePair<string, StringValues>> fields, UnitSystem units)
{
    /// <summary>Longest free text taken.</summary>
    public const int LongestText = 4000;

    private readonly Dictionary<string, StringValues> _fields = new(fields, StringComparer.Ordinal);
    private readonly Dictionary<string, string> _problems = [];

    public static Typing Nothing { get; } = new([], UnitSystem.UsCustomary);

    /// <summary>A sentence for each field that could not be taken, by the field's name.</summary>
    public IReadOnlyDictionary<string, string> Problems => _problems;

    public bool IsGood => _problems.Count == 0;

    /// <summary>The initials typed, where the form asks for them.</summary>
    public string? Hand => _fields.TryGetValue("hand", out var hand) ? hand.ToString() : null;

    /// <summary>What was typed letter for letter; null where the form was not sent or has no such field.</summary>
    public string? Raw(string name) => _fields.TryGetValue(name, out var value) ? value.ToString() : null;

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

    /// <summary>A number that may be left out, bare numbers taken in <paramref name="unit"/>.</summary>
    public Typed? Number(string name, string label, Dimension dimension, string unit) =>
        string.IsNullOrWhiteSpace(Raw(name)) ? null : Needed(name, label, dimension, Unit.Find(unit, dimension));

    /// <summary>A relative humidity that may be left out.</summary>
    public Typed? Humidity(string name, string label)
    {
        var value = Number(name, label, Dimension.Fraction);
        if (value is not null && RelativeHumidity.Question(label, value.Text, value.Si(Dimension.Fraction)) is { } question)
        {
            Refuse(name, question);
        }

        return value;
    }

    /// <summary>A number that must be there.</summary>
    public Typed? Needed(string name, string label, Dimension dimension) => Needed(name, label, dimension, null);

    /// <summary>A number that must be there, bare numbers taken in <paramref name="unit"/>.</summary>
    public Typed? Needed(string name, string label, Dimension dimension, Unit? unit)
    {
        if (TypedNumber.TryParse(Raw(name), dimension, units, label, DecimalMark.Either, unit, out var value, out var problem))
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
        foreach (var part in Parts(Raw(name) ?? ""))
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

    public void Refuse(string name, string sentence) => _problems.TryAdd(name, sentence);

    // "7.6 mm 8 mm" must not break between number and unit: a part that begins with a letter belongs to the number before it.
    private static List<string> Parts(string text)
    {
        var parts = new List<string>();
        foreach (var line in text.Split(['\n', '\r', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            foreach (var word in line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd(',')).Where(w => w.Length > 0))
            {
                if (parts.Count > 0 && !char.IsAsciiDigit(word[0]) && word[0] is not ('.' or ',' or '-' or '+'))
                {
                    parts[^1] += " " + word;
                }
                else
                {
                    parts.Add(word);
                }
            }
        }

        return parts;
    }
}
