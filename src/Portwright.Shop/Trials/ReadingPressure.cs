using Portwright.Shop.Entering;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;

namespace Portwright.Shop.Trials;

/// <summary>The judgement of a test pressure typed with a reading, by what its pass asks for.</summary>
public static class ReadingPressure
{
    /// <summary>The meter's number and, where an @ stands behind it, the test pressure it was read at, both as typed.</summary>
    public static (string Number, string? At) Apart(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.IndexOf('@', StringComparison.Ordinal) is >= 0 and var mark ? (text[..mark].Trim(), text[(mark + 1)..].Trim()) : (text, null);
    }

    /// <param name="pass">The pass it was read in; null where the run has one alone.</param>
    /// <returns>Null where nothing was typed: it was the sweep's.</returns>
    public static EntryAnswer? Of(Sweep sweep, int? pass, string text, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        if (string.IsNullOrWhiteSpace(text)) return null;
        var asked = TestRun.Of(sweep).Steps.FirstOrDefault(s => s.Pass == pass && s.TestPressure is not null)?.TestPressure ?? sweep.TestPressure;
        return EntryJudge.Of(EnteredRoom.TestPressure, text, units, Surroundings.None.With(EnteredRoom.UsualPressure, asked.Si(Dimension.Pressure)));
    }
}
