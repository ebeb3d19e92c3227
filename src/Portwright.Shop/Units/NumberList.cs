namespace Portwright.Shop.Units;

/// <summary>Several numbers typed side by side.</summary>
public static class NumberList
{
    /// <summary>Each number with its unit: parted by spaces, semicolons or line breaks, where "7.6 mm 8 mm" does not break between number and unit.</summary>
    public static IReadOnlyList<string> Parts(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = new List<string>();
        foreach (var line in text.Split(['\n', '\r', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            foreach (var word in line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd(',')).Where(w => w.Length > 0))
            {
                // A part that begins with a letter belongs to the number before it.
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
