using Portwright.Physics.Air;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>The air where the engine runs.</summary>
public sealed record AirInFull(PlanFigure Pressure, PlanFigure Temperature, PlanFigure RelativeHumidity)
{
    /// <summary>As the physics wants it.</summary>
    public AirState State { get; } = AirState.FromRelativeHumidity(Pressure.Value, Temperature.Value, RelativeHumidity.Value);

    internal static AirInFull? Of(RunningAir? air, List<PlanProblem> problems)
    {
        var before = problems.Count;
        void Check(string field, double? value, double least, double most, string cure)
        {
            if (value is { } v && !(v >= least && v <= most))
            {
                problems.Add(new(field, $"{field} {cure}"));
            }
        }

        Check("Elevation", air?.Elevation, -500, 9000, $"lies outside -500 to 9,000 m. Type the height above the sea.");
        Check("Pressure of the air", air?.Pressure, 30e3, 115e3, $"is no pressure of open air. Type that of the place itself, not reduced to the sea.");
        Check("Temperature of the air", air?.Temperature, 220, 350, $"is no temperature an engine breathes. Check its unit.");
        Check("Humidity", air?.RelativeHumidity, 0, 1, $"lies outside 0 to 100 percent. Type it in percent.");
        if (problems.Count > before)
        {
            return null;
        }

        return new AirInFull(
            PlanFigure.Of(
                "Pressure of the air", air?.Pressure, Dimension.Barometer, air?.Elevation is { } high ? StandardAtmosphere.At(high).Pressure : StandardAtmosphere.SeaLevelPressure,
                air?.Elevation is null ? (Sentence)$"neither pressure nor elevation given: standard pressure at the sea" : $"not given: that of the standard atmosphere at the elevation"),
            PlanFigure.Of("Temperature of the air", air?.Temperature, Dimension.Temperature, 293.15, $"not given: that of the usual standard air"),
            PlanFigure.Of("Humidity", air?.RelativeHumidity, Dimension.Fraction, 0, $"not given: dry, as the usual standard air"));
    }
}
