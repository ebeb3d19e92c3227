namespace Portwright.Shop.Units;

/// <summary>Relative humidity is typed in percent and kept in percent; a hygrometer's share of one typed bare is taken for a slip.</summary>
public static class RelativeHumidity
{
    /// <summary>The sentence that asks back, the likely value first, where a bare number is so small that a share of one was meant; null where it may stand.</summary>
    /// <param name="fieldName">The field as the page or command names it; opens the sentence.</param>
    /// <param name="text">What was typed, letter for letter.</param>
    /// <param name="humidity">As it was read, a share of one.</param>
    public static string? Question(string fieldName, string text, double humidity)
    {
        ArgumentNullException.ThrowIfNull(text);
        var hasUnit = text.Any(c => char.IsLetter(c) || c == '%');
        return hasUnit || humidity is not (> 0 and <= 0.01)
            ? null
            : FormattableString.Invariant(
                $"{fieldName} \"{text.Trim()}\": {humidity * 10_000:0.##} %? Typed without a unit it is {humidity * 100:0.##} percent, drier than any room. Type it as {humidity * 10_000:0.##} %, or as {humidity * 100:0.##} % if that was read.");
    }
}
