using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Reduction;

/// <summary>Why lengths and angle make no valve on a seat.</summary>
/// <param name="Field"><c>head</c>, <c>throat</c>, <c>angle</c>, <c>width</c> or <c>stem</c>: the one to look at first.</param>
public sealed record ValveProblem(string Field, Sentence Words);

/// <summary>What no valve can be, or none is: asked where it is typed, and said on the sheet of a record that has it already.</summary>
public static class ValveCheck
{
    private const double Degree = Math.PI / 180;

    /// <summary>Seat angles outside these, from the plane of the valve head, are a slip or counted from the axis; common practice, no source.</summary>
    public const double LeastAngle = 20 * Degree, MostAngle = 70 * Degree;

    /// <summary>The first thing wrong; null where the valve can be.</summary>
    public static ValveProblem? Of(ValveData valve)
    {
        ArgumentNullException.ThrowIfNull(valve);
        var (head, throat, width, stem) = (Quantity.Length(valve.HeadDiameter), Quantity.Length(valve.ThroatDiameter), Quantity.Length(valve.SeatWidth), Quantity.Length(valve.StemDiameter));
        return valve switch
        {
            { HeadDiameter: not > 0 } => new("head", $"The valve head, {head}, is no diameter. Measure it across its edge."),
            { ThroatDiameter: not > 0 } => new("throat", $"The throat, {throat}, is no diameter. Measure it just under the seat."),
            { SeatAngle: not (>= LeastAngle - 1e-9 and <= MostAngle + 1e-9) } => new("angle",
                $"The seat angle, {new Quantity(valve.SeatAngle, Dimension.Angle)}, is outside 20 to 70 degrees; 30 and 45 are usual (common practice). Count it from the plane of the valve head."),
            _ when !(valve.SeatWidth >= 0 && 2 * valve.SeatWidth < valve.HeadDiameter) => new("width",
                $"The seat width, {width}, leaves nothing of a valve of {head}. Measure it along the seat's face."),
            _ when valve.ThroatDiameter > valve.HeadDiameter => new("throat",
                $"The throat, {throat}, is wider than its valve, {head}: there is no seat to close on. Measure both again; one may be in another unit."),
            _ when !(valve.StemDiameter >= 0 && valve.StemDiameter < valve.ThroatDiameter) => new("stem",
                $"The stem, {stem}, is no thinner than the throat it stands in, {throat}. Measure both again; one may be in another unit."),
            _ => null,
        };
    }
}
