namespace Portwright.Shop.Words;

/// <summary>One thing a document says: every layout shows every block, each in its own way, and none leaves one out.</summary>
/// <param name="Key">Its name for programs: small letters and hyphens, one a document.</param>
public abstract record Block(string Key);

/// <summary>A sentence, or a few that belong together.</summary>
public sealed record Paragraph(string Key, Sentence Text) : Block(Key);

/// <summary>What can hurt someone or ruin the casting.</summary>
public sealed record Caution(string Key, Sentence Text) : Block(Key);

/// <summary>Named values, a line each.</summary>
public sealed record Values(string Key, IReadOnlyList<NamedValue> Rows) : Block(Key);

/// <summary>A name and what it is: <c>at the cam's lift .500</c>, <c>221.9 ± 1.1 cfm</c>.</summary>
/// <param name="Key">For programs, one a list.</param>
/// <param name="Shape">Of the verdict in it.</param>
public sealed record NamedValue(string Key, Sentence Name, Sentence Value, VerdictShape Shape = VerdictShape.None);

/// <summary>Rows under heads.</summary>
/// <param name="Caption">What it shows; it stands above the heads.</param>
/// <param name="Note">Under it, in small print; may be empty.</param>
public sealed record Table(string Key, Sentence Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows, Sentence Note) : Block(Key)
{
    /// <summary>Without the columns no row has anything under: said here, so that no layout has to choose.</summary>
    public Table Filled()
    {
        int[] used = [.. Enumerable.Range(0, Columns.Count).Where(c => c == 0 || Rows.Any(r => !r[c].Text.IsEmpty))];
        return used.Length == Columns.Count ? this : this with
        {
            Columns = [.. used.Select(c => Columns[c])],
            Rows = [.. Rows.Select(r => (IReadOnlyList<Cell>)[.. used.Select(c => r[c])])],
        };
    }
}

/// <summary>One column of a table.</summary>
/// <param name="Key">For programs, one a table.</param>
/// <param name="Dimension">Where every number of the column is of one kind: its unit stands in the head and not in the cells.</param>
/// <param name="Strong">The result the table is read for.</param>
public sealed record Column(string Key, Sentence Head, Units.Dimension? Dimension = null, bool Strong = false)
{
    /// <summary>The unit that stands in the head; empty where each cell has its own, or none is written.</summary>
    public string UnitIn(Units.UnitSystem units) => Dimension is { } of ? Quantity.UnitName(of, units) : "";

    /// <summary>A cell of this column as a reader sees it.</summary>
    public string CellIn(Cell cell, Units.UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return Dimension is null ? cell.Text.In(units) : cell.Text.BareIn(units);
    }
}

/// <summary>What stands in one row under one head; may be empty.</summary>
public sealed record Cell(Sentence Text, VerdictShape Shape = VerdictShape.None)
{
    public static Cell Empty { get; } = new(Sentence.Empty);
}

/// <summary>A drawing. Its sentence says what it shows: a caption where it is drawn, the drawing itself where none can be.</summary>
/// <param name="Station">Which section; null where the whole port is drawn.</param>
public sealed record Figure(string Key, FigureKind Kind, Sentence Instead, Guid? Station = null) : Block(Key);

/// <summary>A finding: what the numbers say about the metal, how sure, on what evidence, and what to do.</summary>
/// <param name="Kind">How it stands to metal.</param>
/// <param name="Title">Name and place: <c>The floor is lazy at D</c>.</param>
/// <param name="Confidence">Probability that it is so.</param>
/// <param name="Says">With its numbers.</param>
/// <param name="Then">What follows: the next cut, the measurement that would decide it; may be empty.</param>
public sealed record FindingSaid(string Key, FindingKind Kind, Sentence Title, double Confidence, Sentence Says, IReadOnlyList<Sentence> Then) : Block(Key)
{
    /// <summary>How sure, in words: <c>97 in 100</c>.</summary>
    public Sentence Odds => Sentence.Plain(Words.Confidence.Words(Confidence));
}

/// <summary>How a finding stands to metal.</summary>
public enum FindingKind
{
    /// <summary>Something to cut, or to build up.</summary>
    Port,

    /// <summary>A fault of the measurement: no metal is cut on its word.</summary>
    Measurement,

    /// <summary>A reason to leave metal alone.</summary>
    Stop,
}

/// <summary>The shape beside a verdict: never by colour alone, never by the shape alone.</summary>
public enum VerdictShape
{
    None,

    /// <summary>A real gain: filled triangle up.</summary>
    Gain,

    /// <summary>A real loss: filled triangle down.</summary>
    Loss,

    /// <summary>Inside the noise: hollow circle.</summary>
    Noise,

    /// <summary>Not enough readings: dotted circle with a cross.</summary>
    Unsure,
}

/// <summary>What a drawing shows.</summary>
public enum FigureKind
{
    /// <summary>Flow over lift, with earlier cuts and the difference under it.</summary>
    FlowOverLift,

    /// <summary>Discharge coefficients over lift and diameter.</summary>
    Coefficients,

    /// <summary>The port along its centreline.</summary>
    LongView,

    /// <summary>Areas along the centreline.</summary>
    AreaSchedule,

    /// <summary>What was observed round one section.</summary>
    Section,

    /// <summary>Torque and power over engine speed.</summary>
    TorqueAndPower,

    /// <summary>What area at each lift is worth in the engine.</summary>
    WorthOverLift,
}
