namespace Portwright.Shop.Units;

/// <summary>
/// One unit of one dimension: the name we print, the other spellings we read, and its size.
/// SI value = (number + <see cref="Offset"/>) × <see cref="Factor"/>.
/// </summary>
/// <param name="Name">As printed, and as stored beside a typed number.</param>
/// <param name="Decimals">How many decimals are printed when no doubt is known.</param>
/// <param name="Spellings">Other ways it is typed, already folded by <see cref="UnitText.Fold"/>.</param>
public sealed record Unit(string Name, Dimension Dimension, double Factor, double Offset, int Decimals, params string[] Spellings)
{
    /// <summary>The value in SI.</summary>
    public double ToSi(double number) => (number + Offset) * Factor;

    /// <summary>The number in this unit.</summary>
    public double FromSi(double si) => si / Factor - Offset;

    /// <summary>The unit a bare number is taken in, and the one results are printed in.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A dimension or system that is not one of the enumeration's.</exception>
    public static Unit Default(Dimension dimension, UnitSystem system)
    {
        if (!Enum.IsDefined(system))
            throw new ArgumentOutOfRangeException(nameof(system), system, "UsCustomary or Si.");
        return UnitTable.Of(dimension)[system == UnitSystem.UsCustomary ? 0 : 1];
    }

    /// <summary>The unit of that name or spelling in the dimension, or null.</summary>
    public static Unit? Find(string text, Dimension dimension) => UnitTable.Find(text, dimension);

    /// <summary>Every unit of a dimension, the US customary default first, the SI default second.</summary>
    public static IReadOnlyList<Unit> All(Dimension dimension) => UnitTable.Of(dimension);
}
