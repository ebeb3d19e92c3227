namespace Portwright.Shop.Words;

/// <summary>A word the trade writes differently where units are US and where they are SI.</summary>
public sealed record Term(string Us, string Si)
{
    public static Term Aluminum { get; } = new("aluminum", "aluminium");

    public static Term Gasoline { get; } = new("gasoline", "petrol");

    public static Term Carburetor { get; } = new("carburetor", "carburettor");

    public static Term DeadCentre { get; } = new("dead center", "dead centre");

    public static Term VolumetricEfficiency { get; } = new("volumetric efficiency", "filling");

    /// <summary>The word in the reader's system.</summary>
    public string In(Units.UnitSystem units) => units == Units.UnitSystem.UsCustomary ? Us : Si;

    /// <summary>The same at the head of a line.</summary>
    public string Capital(Units.UnitSystem units) => char.ToUpperInvariant(In(units)[0]) + In(units)[1..];
}
