namespace Portwright.Figures;

/// <summary>Lays blocks under each other over as many sheets as they need.</summary>
internal sealed class PaperColumn
{
    private readonly List<Pen> _pages = [new Pen()];
    private readonly double _top;
    private readonly double _bottom;
    private double _y;

    public PaperColumn(double top, double bottom) => (_top, _bottom, _y) = (top, bottom, top);

    public IReadOnlyList<Pen> Pages => _pages;

    /// <summary>Room left on the sheet.</summary>
    public double Left => _bottom - _y;

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

        draw(_pages[^1], _y);
        _y += height;
    }

    public void Space(double height) => _y += Math.Min(height, Math.Max(0, Left));
}
