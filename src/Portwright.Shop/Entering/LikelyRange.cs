using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>Where a typed value is expected, in SI, and what says so.</summary>
/// <param name="Because">What leads one to expect it, to stand after "here": <c>a throat lies between 0.80 and 0.95 of its valve</c>.</param>
public sealed record LikelyRange(double Low, double High, Sentence Because)
{
    public bool Holds(double si) => si >= Low && si <= High;

    /// <summary>How far outside, as a share of the range's width; nothing inside.</summary>
    public double Outside(double si) => Holds(si) ? 0 : Math.Min(Math.Abs(si - Low), Math.Abs(si - High)) / Math.Max(High - Low, double.Epsilon);

    /// <summary>What two things say together; the first alone where they contradict each other.</summary>
    public LikelyRange Within(LikelyRange? other) => other is not null && Math.Max(Low, other.Low) <= Math.Min(High, other.High)
        ? new(Math.Max(Low, other.Low), Math.Min(High, other.High), other.High - other.Low < High - Low ? other.Because : Because)
        : this;
}
