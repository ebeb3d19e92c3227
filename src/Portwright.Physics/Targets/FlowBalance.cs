namespace Portwright.Physics.Targets;

/// <summary>Exhaust against intake, and the power an intake's flow can carry at most.</summary>
public static class FlowBalance
{
    public static readonly TargetRule Rule = NamedLimits.ExhaustOverIntake.Rule;

    public static readonly TargetRule PowerRule = NamedLimits.PowerOfFlow.Rule;

    private const double WattsAHorsepower = 745.69987158227022, CubicMetresASecondACfm = 4.719474432e-4;

    /// <summary>W for each m3/s of standard air at 28 inH2O through one cylinder's intakes.</summary>
    public static readonly UsualRange PowerPerFlow = new(
        NamedLimits.PowerOfFlow.Limits.Low * WattsAHorsepower / CubicMetresASecondACfm, NamedLimits.PowerOfFlow.Limits.High * WattsAHorsepower / CubicMetresASecondACfm);

    /// <summary>Exhaust over intake: two flows at one test pressure. No unit.</summary>
    /// <param name="exhaust">Zero or above, in the unit of the intake.</param>
    /// <param name="intake">Above zero, in the same unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static double Of(double exhaust, double intake) =>
        Require.NotNegative(exhaust, nameof(exhaust), "(the unit of the intake)") / Require.Positive(intake, nameof(intake), "(the unit of the exhaust)");

    /// <summary>Upper estimate of an engine's power from its best intake flow, W, as a range.</summary>
    /// <param name="flow">Standard air at 28 inH2O through one cylinder's intakes, m3/s, zero or above.</param>
    /// <param name="cylinders">1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static UsualRange Power(double flow, int cylinders)
    {
        Require.NotNegative(flow, nameof(flow), "m3/s");
        if (cylinders < 1) Require.Refuse(cylinders, nameof(cylinders), "1 or more");
        return new(PowerPerFlow.Low * flow * cylinders, PowerPerFlow.High * flow * cylinders);
    }
}
