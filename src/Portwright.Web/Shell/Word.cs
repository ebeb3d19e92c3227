namespace Portwright.Web.Shell;

/// <summary>One word of the sentence that says where one is.</summary>
/// <param name="Href">Where touching it leads; where there are <see cref="Choices"/>, they open instead.</param>
/// <param name="Before">Quiet words before it.</param>
/// <param name="After">Quiet words after it.</param>
public sealed record Word(string Text, string? Href = null, string? Before = null, string? After = null, bool Last = false)
{
    public IReadOnlyList<Choice> Choices { get; init; } = [];
}

/// <summary>What a word can be changed to.</summary>
public sealed record Choice(string Text, string Href, bool Here = false);
