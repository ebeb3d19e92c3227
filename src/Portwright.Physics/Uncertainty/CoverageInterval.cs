namespace Portwright.Physics.Uncertainty;

/// <summary>An interval that holds the quantity with a stated probability. Same unit as the quantity.</summary>
public readonly record struct CoverageInterval(double Low, double High)
{
    public double HalfWidth => (High - Low) / 2;

    public bool Contains(double value) => value >= Low && value <= High;
}
