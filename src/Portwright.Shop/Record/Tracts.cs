using System.Text.Json.Serialization;

namespace Portwright.Shop.Record;

/// <summary>What lies before the intake port; null where not known yet.</summary>
/// <param name="RunnerLength">From the flange to the plenum or the open end, along the middle, m.</param>
/// <param name="FlangeArea">Section of the runner at the flange, m2.</param>
/// <param name="FarArea">Section at its other end, m2.</param>
/// <param name="PlenumVolume">Shared by the cylinders, m3.</param>
public sealed record IntakeTract(double? RunnerLength = null, double? FlangeArea = null, double? FarArea = null, double? PlenumVolume = null, Throttle? Throttle = null);

/// <summary>What all the engine's air passes before the plenum, wide open.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "throttle")]
[JsonDerivedType(typeof(ThrottleArea), "area")]
[JsonDerivedType(typeof(ThrottleBores), "bores")]
[JsonDerivedType(typeof(RatedCarburettor), "rated-carburettor")]
public abstract record Throttle;

/// <summary>A throttle that was put on a bench.</summary>
/// <param name="EffectiveArea">m2.</param>
public sealed record ThrottleArea(double EffectiveArea) : Throttle;

/// <summary>A throttle by its bores.</summary>
/// <param name="Diameter">At the plate, m.</param>
public sealed record ThrottleBores(int Count, double Diameter) : Throttle;

/// <summary>A carburettor by its rating.</summary>
/// <param name="Flow">m3/s.</param>
/// <param name="RatedAt">Drop of pressure it is rated at, Pa; the trade's usual are 1.5 and 3.0 inHg.</param>
public sealed record RatedCarburettor(double Flow, double RatedAt) : Throttle;

/// <summary>What lies behind the exhaust port; null where not known yet. Lengths and diameters inside, m.</summary>
/// <param name="PrimaryLength">From the flange to the collector.</param>
/// <param name="PrimariesACollector">How many primaries meet in one collector; 1 where each pipe ends by itself.</param>
public sealed record ExhaustTract(
    double? PrimaryLength = null, double? PrimaryDiameter = null, int? PrimariesACollector = null, double? CollectorLength = null, double? CollectorDiameter = null);
