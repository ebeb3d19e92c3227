namespace Portwright.Web.Endpoints;

/// <summary>Where a form leads back to.</summary>
internal static class Back
{
    /// <summary>Only a place of ours: "//elsewhere" and "/\elsewhere" are addresses of other machines, and lead to the first page instead.</summary>
    public static string Local(string? back) =>
        back is ['/', ..] && !back.StartsWith("//", StringComparison.Ordinal) && !back.Contains('\\', StringComparison.Ordinal) ? back : "/";
}
