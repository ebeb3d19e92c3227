using Portwright.Shop.Units;

namespace Portwright.Web.Sums;

/// <summary>Whoever can do a sum: the same code as the terminal's. The workbench works out nothing itself.</summary>
public interface ISumDesk
{
    /// <summary>Every sum there is, the most used first.</summary>
    IReadOnlyList<SumOffered> Offered { get; }

    /// <param name="text">A sentence (<c>0.202 in2 at 28 inH2O</c>), a sum's name with its numbers, or a line of the terminal.</param>
    /// <param name="kept">What was asked about before was meant so.</param>
    SumAnswer Ask(string text, UnitSystem units, bool kept);
}

/// <summary>A sum that can be asked for.</summary>
/// <param name="Often">One of the few that most are after.</param>
/// <param name="Examples">That work, to be touched.</param>
public sealed record SumOffered(string Name, string Summary, bool Often, IReadOnlyList<string> Examples);

/// <summary>A line of a sum: what it is, its value, and how it came about.</summary>
public sealed record SumLine(string Words, string Value, string How = "");

/// <summary>A sum done.</summary>
/// <param name="Doubt">How the doubt of the answer is made up; the sentence under it.</param>
public sealed record SumSheet(
    string Title, IReadOnlyList<SumLine> Given, IReadOnlyList<SumLine> Working, IReadOnlyList<SumLine> Answers,
    string DoubtOf, IReadOnlyList<SumLine> Doubt, string DoubtSaid, IReadOnlyList<string> Remarks);

/// <summary>What came of a question.</summary>
/// <param name="Sheet">Null where it was not understood, refused, or is asked back about.</param>
/// <param name="Refusal">In sentences.</param>
/// <param name="Question">What is asked about one of its numbers.</param>
/// <param name="Likely">What was meant, and the whole question with it put right.</param>
/// <param name="MayKeep">It can also be meant as typed.</param>
/// <param name="Command">The same in the terminal.</param>
/// <param name="Also">Other sums the same words can be asked of, as questions.</param>
public sealed record SumAnswer(
    SumSheet? Sheet, string Refusal = "", string Question = "", IReadOnlyList<(string Words, string Text)>? Likely = null, bool MayKeep = false, string Command = "",
    IReadOnlyList<(string Words, string Text)>? Also = null);
