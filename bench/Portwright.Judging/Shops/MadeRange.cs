using Portwright.Judging.Chance;
using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;

namespace Portwright.Judging.Shops;

/// <summary>A range of the bench with what its meter's flow must truly be multiplied by.</summary>
/// <param name="Most">Effective area it is read up to, m2.</param>
public sealed record MadeRange(RangeCard Card, double Factor, double Most)
{
    private const double InchOfWater = 249.08891;

    /// <summary>A range of some kind of meter for test pieces up to an effective area (m2).</summary>
    public static MadeRange Drawn(int kind, string name, double most, double testPressure, Pencil pencil, double accuracy, Draw draw)
    {
        // A hole in series sees the differential that its area against the port's leaves it.
        double Hole(double inches) => Math.Sqrt(most * 1.08 * Math.Sqrt(testPressure / (inches * InchOfWater)) / (0.605 * Math.PI / 4));
        var head = draw.Between(7, 13);
        var hole = Math.Round(Hole(head), 4);
        var pressure = pencil.Metric ? "mmH2O" : "inH2O";
        var step = pencil.Metric ? draw.Of(0.5, 1.0) : draw.Of(0.02, 0.05);
        var along = pencil.Metric ? "mm" : "in";
        var alongStep = pencil.Metric ? draw.Of(0.5, 1.0) : draw.Of(0.02, 0.05);
        var flow = pencil.Metric ? draw.Of("l/s", "m³/h") : "cfm";
        var flowStep = flow == "l/s" ? 0.05 : flow == "cfm" ? 0.1 : 0.2;
        var tube = new TubeCard(draw.Of(784.0, 826.0, 998.0), draw.Between(0.25, 0.55));
        var air = new AirCard();
        var full = RestatedFlow.VolumeFlow(most * draw.Between(1.08, 1.35), testPressure, air.Air(), FlowDirection.Draw);
        var card = kind switch
        {
            0 => new RangeCard(name, new OrificeCard(Math.Round(hole / 0.58, 4), hole, draw.Of(OrificeTaps.Flange, OrificeTaps.Corner)), pressure, step, accuracy),
            1 => new RangeCard(name, new PlenumPlateCard(hole, 0.605), pressure, step, accuracy),
            2 => new RangeCard(name, new PlenumPlateCard(Math.Round(Hole(draw.Between(5, 7)), 4), 0.605, tube), along, alongStep, accuracy),
            3 => new RangeCard(name, new PercentCard(full, testPressure, RangeScale.SquareRoot, 10 * InchOfWater), "%", draw.Of(0.1, 0.25, 0.5), accuracy),
            4 => new RangeCard(name, new PercentCard(full, testPressure, RangeScale.Linear, 10 * InchOfWater), "%", draw.Of(0.1, 0.25), accuracy),
            5 => new RangeCard(name, new LaminarCard(full * 1.1, 8 * InchOfWater, 293.15), pressure, step, accuracy),
            6 => new RangeCard(name, new DirectCard(ReadoutBasis.ActualAtMeter, air), flow, flowStep, accuracy),
            7 => new RangeCard(name, new DirectCard(ReadoutBasis.StandardAirCorrected, air), flow, flowStep, accuracy),
            _ => new RangeCard(name, new DirectCard(ReadoutBasis.AssumedDensity, air), flow, flowStep, accuracy),
        };
        return new MadeRange(card, draw.Factor(accuracy), most);
    }
}
