namespace Portwright.Shop.Judgement;

/// <summary>How likely an offset is, by the two distributions evidence is weighed with.</summary>
internal static class Density
{
    /// <summary>Of the normal distribution, per unit of the offset.</summary>
    public static double Normal(double off, double spread) => Math.Exp(-off * off / (2 * spread * spread)) / (spread * Math.Sqrt(2 * Math.PI));

    /// <summary>Of Student's distribution, over what it is in its middle: 1 there, no unit.</summary>
    public static double StudentOverItsMiddle(double off, double scatter, double degrees) =>
        Math.Pow(1 + off * off / (scatter * scatter * degrees), -(degrees + 1) / 2);
}
