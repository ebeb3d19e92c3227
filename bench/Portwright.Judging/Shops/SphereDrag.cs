using Portwright.Judging.Ports;

namespace Portwright.Judging.Shops;

/// <summary>What a ball held in the stream costs: its drag, at the speeds it stands in, taken as work from the flow.</summary>
public static class SphereDrag
{
    /// <summary>Drag coefficient of a smooth sphere by Reynolds number: Schiller and Naumann (1933) up to 1000, then Newton's range at 0.44, a little less towards the crisis; from memory.</summary>
    public static double Coefficient(double reynolds) => reynolds < 1000
        ? 24 / reynolds * (1 + 0.15 * Math.Pow(reynolds, 0.687))
        : 0.44 - 0.03 * Math.Clamp((reynolds - 1e4) / 1e5, 0, 1);

    /// <summary>
    /// Share of the flow that goes: half the work the ball takes over the work the bench puts in, since with a fixed test pressure flow goes as the root of one over the loss.
    /// </summary>
    /// <param name="ball">Diameter, m.</param>
    /// <param name="x">m, middle of the ball.</param>
    /// <param name="y">m.</param>
    /// <param name="seen">Factor on the speed the ball sees there.</param>
    /// <param name="testPressure">Pa.</param>
    public static double Fall(SpeedField field, LocalAir air, double ball, double x, double y, double seen, double testPressure)
    {
        // The ball feels the air over its whole face.
        double cubes = 0, squares = 0;
        (double X, double Y)[] face = [(0, 0), (0.6, 0), (-0.6, 0), (0, 0.6), (0, -0.6), (0.5, 0.5), (-0.5, 0.5), (0.5, -0.5), (-0.5, -0.5)];
        foreach (var (dx, dy) in face)
        {
            var v = air.Mean * seen * field.At(x + dx * ball / 2, y + dy * ball / 2);
            squares += v * v / face.Length;
            cubes += v * v * v / face.Length;
        }

        var front = Math.PI / 4 * ball * ball;
        // A narrow duct speeds the air up round the ball.
        var confined = 1 + 2.2 * front / field.Section.Area;
        var drag = Coefficient(air.Density * Math.Sqrt(squares) * ball / 1.8e-5) * front * air.Density / 2 * confined;
        var flow = air.Mean * field.Section.Area * air.Density / 1.19;
        return 0.5 * drag * cubes / (testPressure * flow);
    }
}
