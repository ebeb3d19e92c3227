namespace Portwright.Judging.Ports;

/// <summary>
/// Discharge coefficient on the curtain by L/D, as tables of steady-flow tests give it: nearly level at low lift, a dip where the jet leaves one side of the seat, then falling as the port takes over.
/// The shapes are those of J. B. Heywood, Internal Combustion Engine Fundamentals (1988), section 6.3 (sharp and rounded seat edges, inlet and exhaust); from memory, level and stretch drawn anew for each head.
/// </summary>
public sealed record CoefficientTable(FlowDesign Design, IReadOnlyList<double> Shape) : FlowLaw
{
    public static readonly IReadOnlyList<double> LiftOverDiameter = [0, 0.05, 0.10, 0.15, 0.20, 0.25, 0.30, 0.40, 0.60];

    public static readonly IReadOnlyList<double> SharpEdges = [1.00, 1.00, 0.98, 0.93, 0.86, 0.77, 0.68, 0.53, 0.36];

    public static readonly IReadOnlyList<double> RoundEdges = [0.97, 1.00, 1.02, 0.99, 0.91, 0.80, 0.70, 0.545, 0.368];

    public static readonly IReadOnlyList<double> JetLeavesOneSide = [1.00, 1.02, 0.99, 0.87, 0.82, 0.75, 0.67, 0.525, 0.358];

    public override double At(double lift)
    {
        var top = Coefficient(Design.Top / Design.Head);
        // Off the seat the level is the design's low one, at the highest lift the design's flow: between them the table says how.
        var least = Design.Low;
        var most = Design.Most / (Math.PI * Design.Head * Design.Top);
        var share = (Shape[0] - Coefficient(lift / Design.Head)) / (Shape[0] - top);
        return Math.PI * Design.Head * lift * (least + (most - least) * share);
    }

    private double Coefficient(double x)
    {
        var i = 1;
        while (i < LiftOverDiameter.Count - 1 && LiftOverDiameter[i] < x) i++;
        // Catmull-Rom through the table: no corners that a table does not have.
        var (x1, x2) = (LiftOverDiameter[i - 1], LiftOverDiameter[i]);
        var t = (x - x1) / (x2 - x1);
        double Slope(int at)
        {
            var (a, b) = (Math.Max(0, at - 1), Math.Min(Shape.Count - 1, at + 1));
            return (Shape[b] - Shape[a]) / (LiftOverDiameter[b] - LiftOverDiameter[a]) * (x2 - x1);
        }

        return (2 * t * t * t - 3 * t * t + 1) * Shape[i - 1] + (t * t * t - 2 * t * t + t) * Slope(i - 1)
            + (-2 * t * t * t + 3 * t * t) * Shape[i] + (t * t * t - t * t) * Slope(i);
    }
}
