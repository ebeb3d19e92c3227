using System.Globalization;

namespace Portwright.Physics.Targets;

/// <summary>A range of the trade, ends included.</summary>
/// <param name="Low">Lower end of the range, in the unit of the quantity.</param>
/// <param name="High">Upper end of the range, in the unit of the quantity.</param>
public readonly record struct UsualRange(double Low, double High)
{
    /// <summary>Half way, in the unit of the range.</summary>
    public double Middle => (Low + High) / 2;

    /// <summary>Half of what lies between the ends, in the unit of the range.</summary>
    public double HalfWidth => (High - Low) / 2;

    /// <param name="value">In the unit of the range.</param>
    public bool Holds(double value) => value >= Low && value <= High;
}

/// <summary>A ratio or rule of thumb with its one set of limits; all of them stand in <see cref="NamedLimits"/>.</summary>
/// <param name="Key">Small letters and hyphens, never changed.</param>
/// <param name="Name">As a porter would say it.</param>
/// <param name="Definition">What over what, measured how.</param>
/// <param name="Limits">In <paramref name="Unit"/>; both ends alike where the rule has one figure.</param>
/// <param name="Unit">As it is printed; empty where it has none. Percent are kept as shares.</param>
/// <param name="Source">Author, work and year, or <c>common practice, no source</c>.</param>
/// <param name="Caution">What the rule leaves out.</param>
public sealed record NamedLimit(string Key, string Name, string Definition, UsualRange Limits, string Unit, TargetBasis Basis, string Source, string Caution)
{
    /// <summary>How far off either limit may itself be, half of a range of which no value is likelier than another, in the unit of the limits: a habit of the trade is no sharp line.</summary>
    public double Vague { get; init; }

    /// <summary>The low limit with its own vagueness.</summary>
    public UsualRange LowEdge => new(Limits.Low - Vague, Limits.Low + Vague);

    /// <summary>The high limit with its own vagueness.</summary>
    public UsualRange HighEdge => new(Limits.High - Vague, Limits.High + Vague);

    /// <summary><c>85 to 92 percent</c>, <c>0.5 to 0.6</c>, <c>0.95</c>.</summary>
    public string Said => Numbers + (Unit.Length > 0 ? " " + Unit : "");

    /// <summary>The same without the unit.</summary>
    public string Numbers => Limits.Low == Limits.High ? Figure(Limits.Low) : $"{Figure(Limits.Low)} to {Figure(Limits.High)}";

    /// <summary>The low limit as it is printed, without its unit.</summary>
    public string Low => Figure(Limits.Low);

    /// <summary>The high limit as it is printed, without its unit.</summary>
    public string High => Figure(Limits.High);

    /// <summary>To stand beside a target's figure.</summary>
    public TargetRule Rule => new(Name, Basis, Basis == TargetBasis.CommonPractice ? $"{Source}: {Said}, {Definition}" : Source, Caution);

    /// <param name="value">In the unit of the limits.</param>
    private string Figure(double value) => (Unit == "percent" ? 100 * value : value).ToString("0.###", CultureInfo.InvariantCulture);
}
