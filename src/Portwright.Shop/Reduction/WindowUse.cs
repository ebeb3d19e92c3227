using Portwright.Physics.Uncertainty;
using Portwright.Physics.Valves;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>What the valve window allows at one lift, and how much of it the port uses.</summary>
/// <param name="Lift">m.</param>
/// <param name="OfCurtain">Discharge coefficient on the curtain area.</param>
/// <param name="OfWindow">On the minimum area between seat and valve.</param>
/// <param name="OfThroat">On the throat less the stem.</param>
public sealed record WindowUse(double Lift, ValveWindow Window, Estimate OfCurtain, Estimate OfWindow, Estimate OfThroat)
{
    /// <summary>Discharge coefficients at a tested lift, with the doubt of the flow and of every length measured on valve and seat.</summary>
    /// <param name="port">Identity of the port, whose measured lengths are the same at every lift and cut.</param>
    public static WindowUse At(Guid port, ValveData valve, BenchDoubt doubt, LiftPoint point)
    {
        InputEstimate Length(string what, double value) => new(Sources.OfValve(port, what), value, doubt.Calliper, Kind: ContributionKind.Geometry);
        InputEstimate[] inputs =
        [
            Length("valve head", valve.HeadDiameter),
            Length("seat width", valve.SeatWidth),
            Length("throat", valve.ThroatDiameter),
            Length("stem", valve.StemDiameter),
        ];
        Estimate Coefficient(Area of) => Estimate.Ratio(
            point.EffectiveArea, Propagation.Propagate(new AreaModel(of, valve.SeatAngle, point.Lift), inputs));
        return new WindowUse(
            point.Lift,
            ValveWindow.At(valve.Seat(), point.Lift),
            Coefficient(Area.Curtain),
            Coefficient(Area.Window),
            Coefficient(Area.Throat));
    }

    private enum Area
    {
        Curtain,
        Window,
        Throat,
    }

    /// <summary>One area of the valve from head, seat width, throat and stem.</summary>
    private readonly struct AreaModel(Area area, double seatAngle, double lift) : IMeasurementModel
    {
        public double Evaluate(ReadOnlySpan<double> x)
        {
            var (head, width, throat, stem) = (x[0], Math.Max(0, x[1]), x[2], Math.Max(0, x[3]));
            if (2 * width >= head || stem >= throat)
            {
                // Within the doubt of the lengths there is no valve on this side: the propagation then looks to the other.
                return double.NaN;
            }

            var window = ValveWindow.At(new ValveSeat(head, seatAngle, width, throat, stem), lift);
            return area switch
            {
                Area.Curtain => window.CurtainArea,
                Area.Window => window.Area,
                _ => window.ThroatArea,
            };
        }
    }
}
