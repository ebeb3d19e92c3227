namespace Portwright.Physics.Curves;

/// <summary>What a curve does outside its tested range.</summary>
public enum Extrapolation
{
    /// <summary>It has no value there.</summary>
    Refused,

    /// <summary>It goes on along its end tangent, and the value is marked.</summary>
    Marked,
}
