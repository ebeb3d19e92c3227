using System.Globalization;
using System.Text;

namespace Portwright.Figures;

/// <summary>How wide words are in the one typeface, and how they are made to fit.</summary>
public static class Lettering
{
    /// <summary>Height of the tallest letters over the baseline, as a share of the size.</summary>
    public const double Ascent = 0.78;

    /// <summary>Depth of the deepest letters under the baseline, as a share of the size.</summary>
    public const double Descent = 0.22;

    private const string Ellipsis = "…";

    /// <summary>Width of a line of text, in the unit of its size.</summary>
    public static double Width(string words, double size, Weight weight = Weight.Regular) => Typeface.Measure(words, weight) * size;

    /// <summary>The text without what a page, a picture or paper cannot show: control and direction characters, halves of pairs.</summary>
    public static string Clean(string words)
    {
        StringBuilder? kept = null;
        for (var i = 0; i < words.Length; i++)
        {
            var c = words[i];
            var pair = char.IsHighSurrogate(c) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]);
            var space = c is '\t' or '\n' or '\r' or '\u2028' or '\u2029';
            var bad = !pair && (char.IsSurrogate(c) || char.IsControl(c) || c is >= '\u202A' and <= '\u202E' or >= '\u2066' and <= '\u2069' or '\u200E' or '\u200F' or '\uFEFF' or '\uFFFE' or '\uFFFF');
            if (space || bad) kept ??= new StringBuilder(words, 0, i, words.Length);
            if (space) kept!.Append(' ');
            else if (!bad) kept?.Append(c);
            if (!pair) continue;
            i++;
            kept?.Append(words[i]);
        }

        return kept?.ToString() ?? words;
    }

    /// <summary>The text, cut short with an ellipsis where it is wider than the room.</summary>
    public static string Fit(string words, double size, double room, Weight weight = Weight.Regular)
    {
        words = Clean(words);
        if (Width(words, size, weight) <= room) return words;
        var letters = StringInfo.ParseCombiningCharacters(words);
        int low = 0, high = letters.Length - 1;
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (Width(words[..letters[middle]].TrimEnd() + Ellipsis, size, weight) <= room) low = middle;
            else high = middle - 1;
        }

        return letters.Length == 0 ? "" : words[..letters[low]].TrimEnd() + Ellipsis;
    }

    /// <summary>The text in lines no wider than the room; a word wider than that is broken.</summary>
    public static IReadOnlyList<string> Wrap(string words, double size, double room, Weight weight = Weight.Regular)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in Clean(words).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, size, room, weight)))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, size, weight) > room)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    private static IEnumerable<string> Pieces(string word, double size, double room, Weight weight)
    {
        while (Width(word, size, weight) > room)
        {
            var letters = StringInfo.ParseCombiningCharacters(word);
            var n = 1;
            while (n + 1 < letters.Length && Width(word[..letters[n + 1]], size, weight) <= room) n++;
            if (n >= letters.Length) break;
            yield return word[..letters[n]];
            word = word[letters[n]..];
        }

        yield return word;
    }
}
