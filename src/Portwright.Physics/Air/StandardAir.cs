namespace Portwright.Physics.Air;

/// <summary>The air a flow is stated in. The bench card holds it and every report prints it.</summary>
public sealed record StandardAir
{
    /// <param name="pressure">Absolute, Pa.</param>
    /// <param name="temperature">K.</param>
    /// <param name="relativeHumidity">0 to 1, no unit.</param>
    public StandardAir(double pressure = 101_325, double temperature = 293.15, double relativeHumidity = 0)
    {
        State = AirState.FromRelativeHumidity(pressure, temperature, relativeHumidity);
        RelativeHumidity = relativeHumidity;
    }

    /// <summary>101325 Pa, 20 degC, dry.</summary>
    public static StandardAir Default { get; } = new();

    /// <summary>Pa.</summary>
    public double Pressure => State.Pressure;

    /// <summary>K.</summary>
    public double Temperature => State.Temperature;

    /// <summary>Fraction, 0 to 1.</summary>
    public double RelativeHumidity { get; }

    /// <summary>kg/m3.</summary>
    public double Density => State.Density;

    /// <summary>The air itself.</summary>
    public AirState State { get; }
}
