namespace Portwright.Cli.Tests.Layout;

/// <summary>A layout's text as its words in order, for a reader who looks sentences up in it: lines and columns may break it between words and nowhere else.</summary>
internal sealed class LaidWords
{
    private readonly string[] _words;
    private readonly int[] _lines;

    public LaidWords(string text)
    {
        var words = text.Split('\n').SelectMany((line, i) => Split(line).Select(w => (Word: w, Line: i))).ToList();
        (_words, _lines) = ([.. words.Select(w => w.Word)], [.. words.Select(w => w.Line)]);
    }

    public int Count => _words.Length;

    /// <summary>The first place of the words from there on: where they begin and what comes behind them; null where they do not stand there.</summary>
    public (int From, int To)? Find(string said, int from)
    {
        var words = Split(said);
        for (var at = from; at + words.Length <= _words.Length; at++)
            if (StandsAt(words, at)) return (at, at + words.Length);
        return null;
    }

    /// <summary>How often the words stand there.</summary>
    /// <param name="onOneLine">As a number stands with its doubt.</param>
    public int Times(string said, int from = 0, int to = int.MaxValue, bool onOneLine = false)
    {
        var words = Split(said);
        return Enumerable.Range(from, Math.Max(0, Math.Min(to, _words.Length) - words.Length + 1 - from))
            .Count(at => StandsAt(words, at) && (!onOneLine || _lines[at] == _lines[at + words.Length - 1]));
    }

    public static string[] Split(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    private bool StandsAt(string[] words, int at)
    {
        for (var i = 0; i < words.Length - 1; i++)
            if (words[i] != _words[at + i]) return false;
        // A layout may go on behind a name: "The floor is lazy, 97 in 100."
        var last = _words[at + words.Length - 1];
        return last == words[^1] || (last.Length == words[^1].Length + 1 && last[^1] is ',' or '.' && last.StartsWith(words[^1], StringComparison.Ordinal));
    }
}
