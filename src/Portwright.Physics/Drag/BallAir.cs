using System.Globalization;
using Portwright.Physics.Uncertainty;

namespace Portwright.Physics.Drag;

/// <summary>A ball held in the air of a section: what its expected loss follows from, each with its doubt.</summary>
/// <remarks>
/// Causes are recognised by their source: name the probe factor, the calibers and the bench alike at every place and they cancel where
/// two places are compared. If the speed is the mean of the section, compute it from the flow and the area given here.
/// </remarks>
/// <param name="Place">Name of the place, unique within a job: what only this place has in doubt is named after it.</param>
/// <param name="Diameter">Of the ball, m.</param>
/// <param name="Speed">Of the air at the ball's place with no ball there, m/s: from the ring, or the mean.</param>
/// <param name="SectionArea">Of the section normal to the air, m2.</param>
/// <param name="Density">Of the air in the section, kg/m3.</param>
/// <param name="Flow">Volume flow through the section at that density with no ball, m3/s.</param>
/// <param name="TestPressure">Held by the bench, Pa.</param>
/// <param name="Viscosity">Pa s; a percent of it moves the loss by less than a thousandth.</param>
public sealed record BallAir(
    string Place, Estimate Diameter, Estimate Speed, Estimate SectionArea, Estimate Density, Estimate Flow, Estimate TestPressure, double Viscosity)
{
    /// <summary>Ball over the round tube of the section's area, no unit.</summary>
    public double DiameterRatio => Diameter.Value / Math.Sqrt(4 * SectionArea.Value / Math.PI);

    /// <summary>Reynolds number of the ball in the section.</summary>
    public double Reynolds => Density.Value * Speed.Value * Diameter.Value / Viscosity;

    /// <summary>Why no loss can be expected here, in a porter's words with the cure; null where one can.</summary>
    public string? Problem
    {
        get
        {
            if (!(Diameter.Value >= 0)) return Say($"Ball diameter {Diameter.Value * 1e3:0.##} mm is below zero. Type the diameter of the ball.");
            if (!(Speed.Value >= 0)) return Say($"Air speed {Speed.Value:0.#} m/s is below zero. Type the speed along the port.");
            if (!(SectionArea.Value > 0)) return Say($"Section area {SectionArea.Value * 1e6:0.#} mm2 is not above zero. Measure the section first.");
            if (!(Density.Value > 0) || !(Flow.Value > 0) || !(TestPressure.Value > 0) || !(Viscosity > 0))
                return "Air density, flow and test pressure must be above zero. Type the reading without the ball first.";
            if (DiameterRatio > Confinement.LargestDiameterRatio)
                return Say($"Ball diameter {Diameter.Value * 1e3:0.##} mm is more than half of this section. Use a smaller ball.");
            if (Reynolds > SphereDragSpread.LargestReynolds)
                return Say($"Ball of {Diameter.Value * 1e3:0.##} mm at {Speed.Value:0} m/s is past every published drag figure. Use a smaller ball.");
            return null;
        }
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
