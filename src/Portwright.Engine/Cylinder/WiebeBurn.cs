namespace Portwright.Engine.Cylinder;

/// <summary>How much of the charge is burnt at a crank angle.</summary>
/// <remarks>
/// x = 1 - exp(-a ((th - th0)/dth)^(m+1)): J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equation 9.31; I. Wiebe (1956). With a = 5 the last 0.67 percent
/// stays unburnt, which is left so. It is a shape put in, not found: combustion is not computed.
/// </remarks>
public sealed record WiebeBurn
{
    /// <param name="start">Crank angle, rad; 2 pi is top dead centre of firing.</param>
    /// <param name="duration">rad, above zero.</param>
    /// <param name="efficiency">Factor a, above zero, no unit.</param>
    /// <param name="form">Exponent m, no unit, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public WiebeBurn(double start, double duration, double efficiency = UsualEfficiency, double form = UsualForm)
    {
        Start = Require.Between(start, 0, 4 * Math.PI, nameof(start), "rad");
        Duration = Require.Positive(duration, nameof(duration), "rad");
        Efficiency = Require.Positive(efficiency, nameof(efficiency), "(no unit)");
        Form = Require.NotNegative(form, nameof(form), "(no unit)");
    }

    /// <summary>a and m as Heywood gives them, no unit.</summary>
    public const double UsualEfficiency = 5, UsualForm = 2;

    /// <summary>Crank angle, rad.</summary>
    public double Start { get; }

    /// <summary>rad.</summary>
    public double Duration { get; }

    /// <summary>Factor a, no unit.</summary>
    public double Efficiency { get; }

    /// <summary>Exponent m, no unit.</summary>
    public double Form { get; }

    /// <summary>Crank angle, rad.</summary>
    public double End => Start + Duration;

    /// <summary>From the crank angle at which half is burnt and the angle from a tenth to nine tenths, as indicated engines are described.</summary>
    /// <param name="half">Crank angle, rad; 8 to 10 degrees after 2 pi for best torque (common practice).</param>
    /// <param name="tenthToNineTenths">rad, above zero; 20 to 35 degrees for most (common practice).</param>
    /// <param name="efficiency">Factor a, no unit, above zero.</param>
    /// <param name="form">Exponent m, no unit, zero or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static WiebeBurn About(double half, double tenthToNineTenths, double efficiency = UsualEfficiency, double form = UsualForm)
    {
        // Of what burns in all, 1 - exp(-a).
        double Place(double share) => Math.Pow(-Math.Log(1 - share * (1 - Math.Exp(-efficiency))) / efficiency, 1 / (form + 1));
        var duration = Require.Positive(tenthToNineTenths, nameof(tenthToNineTenths), "rad") / (Place(0.9) - Place(0.1));
        return new(half - Place(0.5) * duration, duration, efficiency, form);
    }

    /// <summary>Mass fraction burnt, 0 before the start.</summary>
    /// <param name="crank">Crank angle, rad, 0 to 4 pi.</param>
    public double At(double crank)
    {
        if (crank <= Start) return 0;
        var share = Math.Min(1, (crank - Start) / Duration);
        return 1 - Math.Exp(-Efficiency * (Form == 2 ? share * share * share : Math.Pow(share, Form + 1)));
    }
}
