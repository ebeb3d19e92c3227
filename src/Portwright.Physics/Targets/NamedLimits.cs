namespace Portwright.Physics.Targets;

/// <summary>The register of ratios and rules of thumb that findings, targets and calculations hold a port against: each stands here and nowhere else.</summary>
/// <remarks>Printed row by row in docs/theory/targets.md; a test holds the page and the program's other sources against it.</remarks>
public static class NamedLimits
{
    private const string NoSource = "common practice, no source";

    public static readonly NamedLimit ThroatOverValve = new(
        "throat-over-valve", "Throat over valve", "throat under the seat over the valve's head, by diameter",
        new(0.85, 0.92), "percent", TargetBasis.CommonPractice, NoSource,
        "What is left for the seat and its angles depends on the seat's width and the spring; a wide throat cannot be made narrow again.")
    { Vague = 0.01 };

    public static readonly NamedLimit ExhaustOverIntake = new(
        "exhaust-over-intake", "Exhaust over intake", "flow of a cylinder's exhausts over that of its intakes, each at its own cam's lift, at one test pressure, the exhaust blown and the intake drawn",
        new(0.70, 0.80), "percent", TargetBasis.CommonPractice, NoSource,
        "Flow at one lift hides the cam: long exhaust timing does with less, supercharging and nitrous oxide want more. An exhaust without its stub of pipe or an intake without its radius costs several percent.")
    { Vague = 0.01 };

    public static readonly NamedLimit InletMachKnee = new(
        "inlet-mach-knee", "Inlet Mach index", "piston area times mean piston speed, over mean effective area of the open inlet valves times the speed of sound, where filling begins to fall",
        new(0.5, 0.6), "", TargetBasis.Published, "Taylor, The Internal Combustion Engine in Theory and Practice, vol. 1, ch. 6; Livengood and Stanitz, NACA TN 915 (1943)",
        "One mean for the whole event: it says when the valve is too small, not at which lift. Long timing and a tuned runner carry somewhat past the knee.");

    public static readonly NamedLimit SectionMach = new(
        "section-mach", "Section as the limit", "Mach number of the piston's fastest demand in the smallest section",
        new(0.55, 0.55), "", TargetBasis.CommonPractice, NoSource,
        "A section is no wall: past it each further rpm brings less air, it does not stop.")
    { Vague = 0.01 };

    public static readonly NamedLimit PowerOfFlow = new(
        "power-of-flow", "Power an intake's flow can carry", "naturally aspirated on petrol, each cfm at 28 inH2O through one cylinder's intakes, times the cylinders",
        new(0.25, 0.26), "hp a cfm", TargetBasis.CommonPractice, NoSource,
        "An upper estimate for a whole engine that suits the port, never a forecast.");

    public static readonly NamedLimit BestOfWindow = new(
        "best-of-window", "The best a valve window passes", "effective area over the smaller of window and throat",
        new(0.95, 0.95), "", TargetBasis.CommonPractice, NoSource,
        "A worked port stays well under it where window and throat are alike.");

    public static readonly NamedLimit LeastLift = new(
        "least-lift", "Least lift a flow is wanted at", "lift over the valve's head diameter",
        new(0.10, 0.10), "", TargetBasis.CommonPractice, NoSource,
        "Below it the seat's angles rule and the engine has no wish of its own that could be told.");

    public static readonly NamedLimit CurtainEqualsHead = new(
        "curtain-equals-head", "Curtain as large as the head", "lift over the valve's head diameter: pi Dv L = pi/4 Dv^2",
        new(0.25, 0.25), "", TargetBasis.WorkedOut, "plain geometry, worked out here",
        "The seat's angle and the stem are left out.");

    public static readonly NamedLimit EchoAngle = new(
        "echo-angle", "Runner's echo", "crank angle after which the suction of the piston's fastest moment should return as pressure, before the valve shuts",
        new(80, 90), "degrees", TargetBasis.CommonPractice, NoSource,
        "Speed of the air itself and the wave's width are left out.");

    public static readonly NamedLimit VesselFactor = new(
        "vessel-factor", "Cylinder and runner as a vessel with a neck", "the note of vessel and neck over the engine speed at which they ring together",
        new(2.0, 2.5), "", TargetBasis.Published, "Engelman, Design of a Tuned Intake Manifold, ASME paper 73-WA/DGP-2 (1973)",
        "The cylinder is taken as it stands at half stroke. The factor between note and engine speed is not one number.");

    public static readonly NamedLimit ThrottleNeck = new(
        "throttle-neck", "Neck of a throttle", "length of its bore without its ends",
        new(60, 60), "mm", TargetBasis.CommonPractice, NoSource,
        "Only the plenum's note rests on it, by its square root.");

    /// <summary>In the order of the page.</summary>
    public static IReadOnlyList<NamedLimit> All { get; } =
        [ThroatOverValve, ExhaustOverIntake, InletMachKnee, SectionMach, PowerOfFlow, BestOfWindow, LeastLift, CurtainEqualsHead, EchoAngle, VesselFactor, ThrottleNeck];
}
