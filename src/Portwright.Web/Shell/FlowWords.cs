using Portwright.Physics.Uncertainty;
using Portwright.Shop.Units;

namespace Portwright.Web.Shell;

/// <summary>A flow, its doubt and what a difference is worth, in the words pages use.</summary>
public static class FlowWords
{
    private const double Level = 0.95;

    /// <summary>The number alone, to the place its doubt reaches: <c>221.9</c>.</summary>
    public static string Value(Estimate flow, UnitSystem units, Dimension dimension = Dimension.VolumeFlow) => Split(flow, units, dimension).Value;

    /// <summary>The doubt with the unit: <c>± 1.1 cfm</c>; the unit alone where no doubt is known.</summary>
    public static string Doubt(Estimate flow, UnitSystem units, Dimension dimension = Dimension.VolumeFlow) => Split(flow, units, dimension).Doubt;

    /// <summary>The doubt without the unit: <c>± 1.1</c>.</summary>
    public static string DoubtAlone(Estimate flow, UnitSystem units) =>
        Doubt(flow, units).Replace(Print.UnitName(Dimension.VolumeFlow, units), "", StringComparison.Ordinal).TrimEnd();

    /// <summary><c>gain</c>, <c>loss</c>, <c>noise</c> or <c>unsure</c>.</summary>
    public static string ShapeOf(Difference difference) => difference.Verdict switch
    {
        Verdict.Real => difference.Of.Value >= 0 ? "gain" : "loss",
        Verdict.InsideTheNoise => "noise",
        _ => "unsure",
    };

    /// <summary><c>2.4 more than cut 2. Real, 97 in 100.</c></summary>
    public static string Against(Difference difference, string than, UnitSystem units)
    {
        var size = Print.Bare(Math.Abs(difference.Of.Value), Dimension.VolumeFlow, units);
        var way = difference.Of.Value >= 0 ? "more" : "less";
        return $"{size} {way} than {than}. {VerdictWords(difference)}";
    }

    /// <summary>With its sign and doubt: <c>+2.4 ± 1.6 cfm</c>.</summary>
    public static string Signed(Difference difference, UnitSystem units) => Signed(difference.Of, units);

    /// <inheritdoc cref="Signed(Difference, UnitSystem)"/>
    public static string Signed(Estimate flow, UnitSystem units)
    {
        var words = Print.WithDoubt(flow.Value, flow.Expanded(Level), Dimension.VolumeFlow, units);
        return flow.Value > 0 ? $"+{words}" : words.Replace('-', '−');
    }

    /// <summary><c>Real, 97 in 100.</c></summary>
    public static string VerdictWords(Difference difference) => difference.Verdict switch
    {
        Verdict.Real => $"Real, {Chance(difference)} in 100.",
        Verdict.InsideTheNoise => "Inside the noise.",
        _ => difference.MoreReadings is { } more ? $"Not enough readings: read it {more} more {(more == 1 ? "time" : "times")}." : "Not enough readings.",
    };

    private static int Chance(Difference difference) =>
        (int)Math.Clamp(Math.Floor(100 * Math.Max(difference.ProbabilityOfGain, 1 - difference.ProbabilityOfGain)), 50, 99);

    private static (string Value, string Doubt) Split(Estimate flow, UnitSystem units, Dimension dimension)
    {
        var whole = Print.WithDoubt(flow.Value, flow.Expanded(Level), dimension, units);
        var at = whole.IndexOf(' ', StringComparison.Ordinal);
        return at < 0 ? (whole, "") : (whole[..at], whole[(at + 1)..]);
    }
}
