namespace Portwright.Physics.Valves;

/// <summary>Effective area over each of three reference areas. Which one is meant must be said with every coefficient.</summary>
/// <param name="OnCurtain">Over pi Dv L; not a number at no lift, no unit.</param>
/// <param name="OnWindow">Over the smallest section of <see cref="ValveWindow"/>; not a number at no lift, no unit.</param>
/// <param name="OnThroat">Over the throat less the stem, no unit.</param>
public readonly record struct DischargeCoefficients(double OnCurtain, double OnWindow, double OnThroat)
{
    /// <param name="effectiveArea">m2.</param>
    /// <param name="lift">m, zero or above.</param>
    public static DischargeCoefficients From(double effectiveArea, ValveSeat seat, double lift)
    {
        var window = ValveWindow.At(seat, lift);
        return lift == 0
            ? new(double.NaN, double.NaN, effectiveArea / window.ThroatArea)
            : new(effectiveArea / window.CurtainArea, effectiveArea / window.Area, effectiveArea / window.ThroatArea);
    }
}
