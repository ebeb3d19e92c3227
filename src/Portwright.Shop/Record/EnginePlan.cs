namespace Portwright.Shop.Record;

/// <summary>The engine the heads must suit. Lengths in metres, angles in radians, speeds in revolutions a minute; null where not known yet.</summary>
/// <param name="RodLength">Connecting-rod length between centres, m.</param>
/// <param name="Fuel">In the porter's words.</param>
/// <param name="PortSpeed">Mean air speed wanted in the intake port at the highest engine speed, from and to, m/s: the porter's own choice.</param>
/// <param name="ClassRules">Rules of a class, or emissions rules for an engine used on public roads.</param>
/// <param name="PinOffset">Of the piston pin's line from the crank's centre, m, positive towards the side on which the crank pin goes down.</param>
/// <param name="FiringOrder">Numbers of the cylinders, each once.</param>
/// <param name="SpeedWeights">What each engine speed of the range is worth to the owner; null: all alike.</param>
public sealed record EnginePlan(
    double? Bore = null,
    double? Stroke = null,
    double? RodLength = null,
    int? Cylinders = null,
    double? CompressionRatio = null,
    CamLift? IntakeCam = null,
    CamLift? ExhaustCam = null,
    double? LowestSpeed = null,
    double? HighestSpeed = null,
    string Fuel = "",
    string ClassRules = "",
    string Notes = "",
    SpeedBand? PortSpeed = null,
    double? PinOffset = null,
    IReadOnlyList<int>? FiringOrder = null,
    CamTiming? IntakeTiming = null,
    CamTiming? ExhaustTiming = null,
    IntakeTract? Intake = null,
    ExhaustTract? Exhaust = null,
    Mixture? Mixture = null,
    RunningAir? Air = null,
    IReadOnlyList<SpeedWeight>? SpeedWeights = null,
    CylinderLayout? Layout = null,
    ClassLimits? Limits = null)
{
    /// <summary>The cam of one side.</summary>
    public CamLift? CamOf(PortKind kind) => kind == PortKind.Intake ? IntakeCam : ExhaustCam;

    /// <summary>When the valve of one side opens and shuts.</summary>
    public CamTiming? TimingOf(PortKind kind) => kind == PortKind.Intake ? IntakeTiming : ExhaustTiming;

    /// <summary>Highest lift at the valve of one side, m: by the lift table where there is one, else by the cam; null where neither is written down.</summary>
    public double? LiftOf(PortKind kind) => TimingOf(kind)?.HighestOfTable ?? CamOf(kind)?.NetLift();
}

/// <summary>Speeds from and to, m/s, both above zero.</summary>
public sealed record SpeedBand(double From, double To);

/// <summary>An engine speed (revolutions a minute) and its weight in the average over the range, zero or above.</summary>
public sealed record SpeedWeight(double Speed, double Weight);

/// <summary>Which cylinders an engine run calculates.</summary>
public enum CylinderLayout
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>One stands for all, breathing alone through its own runner and primary.</summary>
    OneForAll = 0,

    /// <summary>All, with their firing order, through the plenum and collectors they share.</summary>
    All = 1,
}

/// <summary>Figures a class sets a limit to; null where it does not.</summary>
/// <param name="HighestLift">At the valve, m.</param>
/// <param name="RestrictorDiameter">Of the hole all intake air must pass, m.</param>
public sealed record ClassLimits(double? HighestLift = null, double? HighestCompressionRatio = null, double? RestrictorDiameter = null);
