using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Entering;

/// <summary>What is said of a value before it is kept: take it, ask, or refuse.</summary>
public abstract record EntryAnswer;

/// <summary>It is kept as it was typed.</summary>
public sealed record Take(Typed Value) : EntryAnswer;

/// <summary>It waits in its box, outside the record, until it is answered.</summary>
/// <param name="Value">As it was read.</param>
/// <param name="Likely">What was meant, the likeliest first; nothing where no slip explains it.</param>
/// <param name="Question">One short sentence, the likely value first: <c>2.02 in? 202 in: a valve is ...</c>.</param>
/// <param name="MayKeep">False where what was typed is no such quantity at all.</param>
public sealed record Ask(Typed Value, IReadOnlyList<MeantValue> Likely, Sentence Question, bool MayKeep = true) : EntryAnswer;

/// <summary>It can't be kept.</summary>
/// <param name="Problem">Names the field, the value and the cure.</param>
/// <param name="At">Index of the first character in the text that could not be read; -1 where it is the whole.</param>
public sealed record Refuse(string Problem, int At = -1) : EntryAnswer;

/// <summary>What may have been meant.</summary>
/// <param name="Text">To be typed in its place: <c>2.02</c>, <c>1009.5 hPa</c>.</param>
/// <param name="Si">The same in SI.</param>
/// <param name="Slip">How it became what was typed.</param>
public sealed record MeantValue(string Text, double Si, SlipKind Slip);

/// <summary>How a value comes to be typed wrong, the commonest first; common practice, no source.</summary>
public enum SlipKind
{
    /// <summary>The point was left out or stands elsewhere: 1952 for 195.2.</summary>
    Point,

    /// <summary>Read in another unit than the one asked for: 1009.5 in a box of inHg.</summary>
    Unit,

    /// <summary>A share of one for percent, or percent for a share.</summary>
    Share,

    /// <summary>A digit typed twice: 1995.2 for 195.2.</summary>
    Doubled,

    /// <summary>Two neighbouring digits changed places: 159.2 for 195.2.</summary>
    Swapped,

    /// <summary>A weather report's pressure, brought to the sea's level, in place of the wall's.</summary>
    SeaLevel,

    /// <summary>A sign before it that belongs to no such quantity.</summary>
    Sign,
}
