namespace Portwright.Store.Export;

/// <summary>
/// Text that a spreadsheet would take for a formula when it opens a CSV (OWASP, "CSV Injection": a leading = + - @,
/// tab, carriage return or line feed) gets an apostrophe in front. Text that begins with an apostrophe gets one more,
/// so that taking one off always gives back what was there, letter for letter.
/// </summary>
public static class HarmlessText
{
    /// <summary>As it is written.</summary>
    public static string Write(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && (IsTrigger(text[0]) || text[0] == '\'') ? "'" + text : text;
    }

    /// <summary>What was written by <see cref="Write"/>, as it was before.</summary>
    public static string Read(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        return written.Length > 1 && written[0] == '\'' && (IsTrigger(written[1]) || written[1] == '\'') || written == "'" ? written[1..] : written;
    }

    // The full-width forms are folded to the plain ones by some spreadsheets.
    private static bool IsTrigger(char c) => c is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '＝' or '＋' or '－' or '＠';
}
