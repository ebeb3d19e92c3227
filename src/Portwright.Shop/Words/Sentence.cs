using System.ComponentModel;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json.Serialization;
using Portwright.Shop.Units;

namespace Portwright.Shop.Words;

/// <summary>
/// What is said, as a value: words and quantities, each with its dimension and doubt. It is laid out for a reader once, at the very end
/// (<see cref="In"/>), so that it is the same in inches and in millimetres, on a page, on paper and in a file.
/// </summary>
/// <remarks>
/// Implementation note: the compiler builds it from an interpolated string, <c>Sentence s = $"the throat is {Quantity.Length(d)}"</c>. A
/// number that is neither a <see cref="Quantity"/> nor given a format of its own does not compile: no number is printed by accident. It is
/// whole with its first reading; a piece put in afterwards is a programmer's mistake and throws.
/// </remarks>
[InterpolatedStringHandler]
[JsonConverter(typeof(SentenceJson))]
public sealed class Sentence : IEquatable<Sentence>
{
    /// <summary>Stands before a quantity that was made text too early; no person types it.</summary>
    internal const char Flattened = '\uE000';

    private readonly List<Piece> _pieces;
    private bool _whole;

    /// <summary>For the compiler.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public Sentence(int literalLength, int formattedCount) => _pieces = new(2 * formattedCount + Math.Sign(literalLength));

    /// <summary>Of pieces as they come; neighbouring words become one.</summary>
    public Sentence(IEnumerable<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        _pieces = [];
        foreach (var piece in pieces) Add(piece);
        _whole = true;
    }

    /// <summary>Nothing said.</summary>
    public static Sentence Empty { get; } = new([]);

    /// <summary>Words without a quantity: a name, or what a person typed.</summary>
    public static Sentence Plain(string? text) => string.IsNullOrEmpty(text) ? Empty : new([new Piece.Plain(text.Replace(Flattened, ' '))]);

    /// <summary>Several in a row with words between.</summary>
    public static Sentence Join(string between, IEnumerable<Sentence> sentences)
    {
        ArgumentNullException.ThrowIfNull(sentences);
        var pieces = new List<Piece>();
        foreach (var sentence in sentences.Where(s => !s.IsEmpty))
        {
            if (pieces.Count > 0) pieces.Add(new Piece.Plain(between));
            pieces.AddRange(sentence.Pieces);
        }

        return new(pieces);
    }

    public IReadOnlyList<Piece> Pieces
    {
        get
        {
            _whole = true;
            return _pieces;
        }
    }

    public bool IsEmpty => Pieces.Count == 0;

    public IEnumerable<Quantity> Quantities => Pieces.OfType<Piece.Number>().Select(n => n.Quantity);

    /// <summary>As a reader of those units sees it.</summary>
    public string In(UnitSystem units) => LaidOut(units, q => q.In(units));

    /// <summary>The same without units behind the numbers, for a cell under a head that names the unit.</summary>
    public string BareIn(UnitSystem units) => LaidOut(units, q => q.Bare(units));

    /// <summary>With a capital first letter, as it stands over something.</summary>
    public Sentence Capital() => Pieces is [Piece.Plain { Text: var first }, ..]
        ? new([new Piece.Plain(char.ToUpperInvariant(first[0]) + first[1..]), .. Pieces.Skip(1)])
        : this;

    /// <summary>With a capital first letter and a full stop, as a sentence stands by itself.</summary>
    public Sentence Whole()
    {
        if (IsEmpty) return this;
        var pieces = Capital().Pieces.ToList();
        if (pieces[^1] is not Piece.Plain { Text: var last } || last[^1] is not ('.' or '?' or ':')) pieces.Add(new Piece.Plain("."));
        return new(pieces);
    }

    public bool Equals(Sentence? other) => other is not null && Pieces.SequenceEqual(other.Pieces);

    public override bool Equals(object? obj) => Equals(obj as Sentence);

    public override int GetHashCode() => Pieces.Aggregate(0, HashCode.Combine);

    /// <summary>For a debugger: whoever shows a sentence to a person lays it out with <see cref="In"/>.</summary>
    public override string ToString() => string.Concat(Pieces.Select(p => p switch
    {
        Piece.Plain plain => plain.Text,
        Piece.Number number => number.Quantity.ToString(),
        Piece.Word word => word.Term.Us,
        _ => "",
    }));

    /// <summary>For the compiler.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendLiteral(string value) => Add(new Piece.Plain(value));

    /// <inheritdoc cref="AppendLiteral"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(string? value)
    {
        if (string.IsNullOrEmpty(value)) return;
        // A condition of two texts is a text to the compiler, and a quantity in it would lose its unit for good.
        if (value.Contains(Flattened, StringComparison.Ordinal))
            throw new InvalidOperationException($"A quantity was made text inside a sentence: \"{value.Replace(Flattened, '#')}\". Write (Sentence) before the inner text.");
        Add(new Piece.Plain(value));
    }

    /// <inheritdoc cref="AppendLiteral"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(Quantity value) => Add(new Piece.Number(value));

    /// <inheritdoc cref="AppendLiteral"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(Term value) => Add(new Piece.Word(value));

    /// <inheritdoc cref="AppendLiteral"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(Sentence? value)
    {
        foreach (var piece in value?.Pieces ?? []) Add(piece);
    }

    /// <summary>A whole number, which has no unit.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(int value) => AppendFormatted(value.ToString(CultureInfo.InvariantCulture));

    /// <inheritdoc cref="AppendLiteral"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(int value, string format) => AppendFormatted(value.ToString(format, CultureInfo.InvariantCulture));

    /// <inheritdoc cref="AppendFormatted(int)"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(int? value) => AppendFormatted(value?.ToString(CultureInfo.InvariantCulture));

    /// <summary>A number without a dimension, in the format given.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(double value, string format) => AppendFormatted(value.ToString(format, CultureInfo.InvariantCulture));

    /// <inheritdoc cref="AppendFormatted(double, string)"/>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(double? value, string format) => AppendFormatted(value?.ToString(format, CultureInfo.InvariantCulture));

    /// <summary>A day, one way everywhere: <c>27 Nov 2026</c>.</summary>
    [EditorBrowsable(EditorBrowsableState.Never)]
    public void AppendFormatted(DateOnly value) => AppendFormatted(value.ToString("d MMM yyyy", CultureInfo.InvariantCulture));

    private void Add(Piece piece)
    {
        if (_whole) throw new InvalidOperationException("A sentence is whole once it was read. Make a new one of it: $\"{sentence} and more\".");
        if (piece is Piece.Plain { Text: var text })
        {
            if (text.Length == 0) return;
            if (_pieces.Count > 0 && _pieces[^1] is Piece.Plain before)
            {
                _pieces[^1] = new Piece.Plain(before.Text + text);
                return;
            }
        }

        _pieces.Add(piece);
    }

    private string LaidOut(UnitSystem units, Func<Quantity, string> number)
    {
        var text = new StringBuilder();
        foreach (var piece in Pieces)
        {
            text.Append(piece switch
            {
                Piece.Plain plain => plain.Text,
                Piece.Number n => number(n.Quantity),
                Piece.Word word => word.Term.In(units),
                _ => throw new InvalidOperationException($"A piece of kind {piece.GetType().Name} has no layout."),
            });
        }

        return text.ToString();
    }
}
