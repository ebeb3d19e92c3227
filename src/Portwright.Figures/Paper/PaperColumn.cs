namespace Portwright.Figures;

/// <summary>Lays blocks under each other over as many sheets as they need.</summary>
internal sealed class PaperColumn
{
    private readonly List<Pen> _pages = [new Pen()];
    private readonly double _top;
    private readonly double _bottom;
    private double _y;
    private (double Height, Action<Pen, double> Draw)? _held;

    public PaperColumn(double top, double bottom) => (_top, _bottom, _y) = (top, bottom, top);

    public IReadOnlyList<Pen> Pages => _pages;

    /// <summary>Height of an empty sheet.</summary>
    public double Room => _bottom - _top;

    /// <summary>Room left on the sheet, under a heading that is held back.</summary>
    public double Left => _bottom - _y - (_held?.Height ?? 0);

    /// <summary>Keeps a heading back until it is known on which sheet that stands which it belongs to.</summary>
    public void Hold(double height, Action<Pen, double> draw) => _held = (height, draw);

    /// <summary>Puts a block of known height where there is room, else on a further sheet.</summary>
    /// <param name="keep">Room that must be left under it for what belongs to it.</param>
    /// <param name="again">Drawn first on a further sheet, such as the head of a table; gives its height.</param>
    public void Put(double height, Action<Pen, double> draw, double keep = 0, Func<Pen, double, double>? again = null)
    {
        if (height + keep > Left && _y > _top)
        {
            _pages.Add(new Pen());
            _y = _top;
            if (again is not null) _y += again(_pages[^1], _y);
        }

        if (_held is { } before)
        {
            _held = null;
            before.Draw(_pages[^1], _y);
            _y += before.Height;
        }

        draw(_pages[^1], _y);
        _y += height;
    }

    public void Space(double height) => _y += Math.Min(height, Math.Max(0, Left));
}
