using System.Globalization;

namespace Portwright.Engine.Cam;

/// <summary>Why a table makes no lift curve, in a porter's words with the cure.</summary>
internal static class TableProblem
{
    private const double Degree = Math.PI / 180;

    /// <param name="lash">At the place where the table was read, m.</param>
    public static string? Of(ReadOnlySpan<double> crank, ReadOnlySpan<double> lift, double lash)
    {
        if (crank.Length != lift.Length) return Say($"The lift table has {crank.Length} angles and {lift.Length} lifts. Each row needs both.");
        if (crank.Length < 5) return Say($"The lift table has {crank.Length} rows. It takes five or more, from seat to seat.");
        int opens = -1, closes = -1;
        for (var i = 0; i < crank.Length; i++)
        {
            if (!double.IsFinite(crank[i]) || !(lift[i] >= 0) || lift[i] > 0.1)
                return Say($"Row {i + 1} of the lift table, {lift[i] * 1e3:0.###} mm at {crank[i] / Degree:0.##} degrees, is no lift. Type it again, or check the unit.");
            if (i > 0 && !(crank[i] > crank[i - 1]))
                return Say($"Row {i + 1} of the lift table, {crank[i] / Degree:0.##} degrees, does not come after the row before. Sort the rows, and count on past 720 rather than from 0 again.");
            if (lift[i] <= lash) continue;
            if (opens < 0) opens = i;
            closes = i;
        }

        if (!(crank[^1] - crank[0] < 4 * Math.PI)) return Say($"The lift table spans {(crank[^1] - crank[0]) / Degree:0.#} degrees; a cycle has 720. Is it in cam degrees twice over?");
        if (opens < 0) return "The lift table never lifts the valve off its seat. Check lash and unit.";
        if (lift[0] != 0 || lift[^1] != 0) return "The lift table must begin and end with a row of no lift. Add the rows on the base circle.";
        for (var i = opens; i <= closes; i++)
        {
            if (lift[i] <= lash)
                return Say($"The lift table shuts the valve at {crank[i] / Degree:0.##} degrees and opens it again. Only one event can be run; take the other rows out.");
        }

        return null;
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
