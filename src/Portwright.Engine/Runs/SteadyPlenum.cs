using Portwright.Engine.Gas.Ends;
using Portwright.Physics.TestPiece;

namespace Portwright.Engine.Runs;

/// <summary>The plenum behind a throttle where one cylinder stands for all: its pressure is steady, such that the throttle passes what all cylinders draw on average.</summary>
/// <remarks>Found from cycle to cycle. With many cylinders the plenum hardly breathes; with one or two run all of them instead.</remarks>
internal sealed class SteadyPlenum(GasAtRest outside, double throttleArea, double heatCapacityRatio, double gasConstant) : Reservoir
{
    private const int Halvings = 50;

    private double _drawn;
    private (double Pressure, double Flow) _before;

    /// <summary>Pa.</summary>
    public double Pressure { get; private set; } = outside.Pressure;

    public override GasAtRest Midway(double step) => outside with { Pressure = Pressure };

    public override void Take(double mass, double energy, double burntMass, double step) => _drawn -= mass;

    /// <summary>Sets the pressure for the next cycle.</summary>
    /// <param name="cylinders">That draw alike.</param>
    /// <param name="seconds">The cycle took.</param>
    public void EndCycle(int cylinders, double seconds)
    {
        var flow = Math.Max(0, _drawn) * cylinders / seconds;
        _drawn = 0;
        var density = outside.Pressure / (gasConstant * outside.Temperature);
        double Passes(double pressure) => throttleArea * Nozzle.MassFlux(outside.Pressure, density, heatCapacityRatio, pressure);
        double critical = Nozzle.CriticalPressureRatio(heatCapacityRatio) * outside.Pressure, most = Passes(critical);
        double low = critical, high = outside.Pressure;
        if (flow >= most || Pressure <= critical)
        {
            // Choked: what passes no longer says the pressure. It moves until the cylinders draw what passes; how strongly they answer is learnt from the last move.
            var answer = _before.Pressure > 0 && _before.Pressure != Pressure && flow > 0 && _before.Flow > 0
                ? Math.Clamp(Math.Log(flow / _before.Flow) / Math.Log(Pressure / _before.Pressure), 1, 8) : 3;
            _before = (Pressure, flow);
            Pressure *= Math.Exp(Math.Clamp(0.8 * Math.Log(most / Math.Max(flow, 0.01 * most)) / answer, -0.3, 0.3));
            return;
        }

        _before = default;

        for (var i = 0; i < Halvings; i++)
        {
            var middle = 0.5 * (low + high);
            if (Passes(middle) > flow) low = middle;
            else high = middle;
        }

        // The loss goes as the flow squared and the flow about as the pressure: this share of the move lands where both agree.
        Pressure += (0.5 * (low + high) - Pressure) / (1 + 2 * (outside.Pressure - Pressure) / Pressure);
    }
}
