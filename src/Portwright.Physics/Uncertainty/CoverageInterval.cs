namespace Portwright.Physics.Uncertainty;

/// <summary>An interval that holds the quantity with a stated probability. Same unit as the quantity.</summary>
/// <param name="Low">Lower end, in the unit of the quantity.</param>
/// <param name="High">Upper end, in the unit of the quantity.</param>
public readonly record struct CoverageInterval(double Low, double High)
{
    /// <summary>Half its width, in the unit of the quantity.</summary>
    public double HalfWidth => (High - Low) / 2;

    /// <param name="value">In the unit of the quantity.</param>
    public bool Contains(double value) => value >= Low && value <= High;
}
