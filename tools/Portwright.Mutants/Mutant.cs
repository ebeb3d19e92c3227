using System.Globalization;

namespace Portwright.Mutants;

/// <summary>One figure or one comparison of the compiled rooms, moved.</summary>
/// <param name="Folder">Of the source, from the project's own: <c>Findings/Rules</c>.</param>
/// <param name="At">Offset in the file of the first byte that changes.</param>
/// <param name="Bytes">What stands there instead.</param>
/// <param name="What">What was moved and where to.</param>
internal sealed record Mutant(string Folder, string File, int Line, string Method, int At, byte[] Bytes, string What)
{
    public string Place => string.Create(CultureInfo.InvariantCulture, $"{Folder}/{File}:{Line}");

    public override string ToString() => $"{Place} {Method}: {What}";
}

/// <summary>How a mutant fared.</summary>
internal enum Fate
{
    /// <summary>A test failed, or the run never ended.</summary>
    Killed,

    Survived,
}
