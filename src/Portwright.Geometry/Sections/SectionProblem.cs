namespace Portwright.Geometry.Sections;

/// <summary>Why readings make no section: the field, its value (m or rad, for the page to print in the porter's unit) and the cure.</summary>
/// <param name="Value">m, or rad for an angle.</param>
public sealed record SectionProblem(string Field, double Value, string Cure)
{
    internal static SectionProblem? NotPositive(string field, double value) =>
        value > 0 && double.IsFinite(value) ? null : new(field, value, "It must be above zero. Measure it again or type it again.");

    internal static SectionProblem? Negative(string field, double value) =>
        value >= 0 && double.IsFinite(value) ? null : new(field, value, "It cannot be below zero. Type it again.");
}
