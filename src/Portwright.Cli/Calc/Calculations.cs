namespace Portwright.Cli.Calc;

/// <summary>Every formula <c>calc</c> reaches, in the order the help lists them.</summary>
internal static class Calculations
{
    public static IReadOnlyList<Calculation> All { get; } =
    [
        .. AirCalculations.All,
        .. MeterCalculations.All,
        .. TestPieceCalculations.All,
        .. PortCalculations.All,
    ];
}
