namespace Portwright.Web.Forms;

/// <summary>What is asked about a typed value before it is kept.</summary>
/// <param name="Likely">Offered in its place, the likeliest first.</param>
/// <param name="AsTyped">To be kept all the same; null where it can't be.</param>
public sealed record FieldQuestion(string Words, IReadOnlyList<string> Likely, string? AsTyped)
{
    /// <summary>Name of the box that remembers what the question was about.</summary>
    public static string Of(string field) => $"asked.{field}";

    /// <summary>Name of the button that puts another value in the field's place.</summary>
    public static string Take(string field) => $"take.{field}";

    /// <summary>Name of the button that keeps what was typed, and of the box that remembers it.</summary>
    public static string Keep(string field) => $"keep.{field}";
}

/// <summary>A value that was asked about and kept.</summary>
/// <param name="Field">Its label.</param>
public sealed record KeptValue(string Field, string Text, string Question);
