namespace Portwright.Figures;

/// <summary>A place on a drawing: pixels (or points on paper) from the top left corner, y downward.</summary>
public readonly record struct Place(double X, double Y);

/// <summary>An upright rectangle on a drawing.</summary>
public readonly record struct Box(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;

    public double Bottom => Y + Height;

    public Place Centre => new(X + Width / 2, Y + Height / 2);

    /// <summary>The rectangle grown on all sides; a negative amount shrinks it.</summary>
    public Box Grown(double by) => new(X - by, Y - by, Width + 2 * by, Height + 2 * by);

    /// <summary>True where the two share more than an edge.</summary>
    public bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;

    /// <summary>True where the other lies wholly inside, edges included.</summary>
    public bool Holds(Box other) => other.X >= X && other.Y >= Y && other.Right <= Right && other.Bottom <= Bottom;
}
