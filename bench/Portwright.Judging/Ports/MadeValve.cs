using Portwright.Shop.Record;

namespace Portwright.Judging.Ports;

/// <summary>Valve and seat as they are, m and rad.</summary>
public sealed record MadeValve(double Head, double SeatAngle, double SeatWidth, double Throat, double Stem)
{
    public double Area => Math.PI / 4 * Head * Head;

    public double ThroatArea => Math.PI / 4 * (Throat * Throat - Stem * Stem);

    /// <summary>As a caliper shows it, to the thousandth of an inch or the hundredth of a millimetre.</summary>
    public ValveData Read(double step)
    {
        double Round(double x) => Math.Round(x / step) * step;
        return new ValveData(Round(Head), SeatAngle, Round(SeatWidth), Round(Throat), Round(Stem));
    }
}
