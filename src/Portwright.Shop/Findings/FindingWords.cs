using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Shop.Findings;

/// <summary>
/// Numbers inside a finding's sentence. They are marked, not printed: whoever shows the sentence prints them in the porter's units
/// (<see cref="Show"/>), so that a finding is the same in inches and in millimetres.
/// </summary>
public static class FindingWords
{
    private const char Open = '⟦';
    private const char Shut = '⟧';

    /// <param name="metres">m.</param>
    public static string Length(double metres) => Mark(metres, Dimension.Length);

    /// <param name="metresASecond">m/s.</param>
    public static string Speed(double metresASecond) => Mark(metresASecond, Dimension.Speed);

    /// <param name="flow">m3/s.</param>
    public static string Flow(double flow) => Mark(flow, Dimension.VolumeFlow);

    /// <param name="area">m2.</param>
    public static string Area(double area) => Mark(area, Dimension.Area);

    /// <param name="volume">m3.</param>
    public static string Volume(double volume) => Mark(volume, Dimension.Volume);

    /// <param name="lift">m.</param>
    public static string Lift(double lift) => Mark(lift, Dimension.Lift);

    /// <param name="share">Of one.</param>
    public static string Percent(double share) => FormattableString.Invariant($"{share * 100:0.#} percent");

    /// <summary>A flow with its expanded doubt.</summary>
    public static string Flow(Estimate flow)
    {
        ArgumentNullException.ThrowIfNull(flow);
        return FormattableString.Invariant($"{Open}{(int)Dimension.VolumeFlow}|{flow.Value:R}|{flow.Expanded():R}{Shut}");
    }

    /// <summary>A bearing in words of the metal: <c>6 o'clock (floor)</c>.</summary>
    public static string Bearing(double hours) => FormattableString.Invariant($"{hours:0.#} o'clock ({Geometry.Views.ViewWords.Metal(hours)})");

    /// <summary>What was seen, as one sentence.</summary>
    public static string Sentence(params string[] seen)
    {
        var joined = string.Join("; ", seen);
        return joined.Length == 0 ? "" : char.ToUpperInvariant(joined[0]) + joined[1..] + ".";
    }

    /// <summary>The sentence with its numbers in the porter's units.</summary>
    public static string Show(string sentence, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        var shown = new System.Text.StringBuilder(sentence.Length);
        var at = 0;
        while (sentence.IndexOf(Open, at) is >= 0 and var open)
        {
            shown.Append(sentence, at, open - at);
            var shut = sentence.IndexOf(Shut, open);
            var parts = sentence[(open + 1)..shut].Split('|');
            var dimension = (Dimension)int.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture);
            var value = double.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture);
            shown.Append(parts.Length > 2
                ? Print.WithDoubt(value, double.Parse(parts[2], System.Globalization.CultureInfo.InvariantCulture), dimension, units)
                // A length in a sentence is written as a lift is, .094, with its unit.
                : dimension == Dimension.Length
                    ? $"{Print.Bare(value, Dimension.Lift, units)} {Print.UnitName(Dimension.Length, units)}"
                    : Print.Number(value, dimension, units));
            at = shut + 1;
        }

        return shown.Append(sentence, at, sentence.Length - at).ToString();
    }

    private static string Mark(double si, Dimension dimension) => FormattableString.Invariant($"{Open}{(int)dimension}|{si:R}{Shut}");
}
