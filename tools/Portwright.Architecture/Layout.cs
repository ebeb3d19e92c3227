namespace Portwright.Architecture;

/// <summary>A place in a picture, px.</summary>
public readonly record struct Place(double X, double Y);

/// <summary>
/// Rooms in rows, what is used above what uses it; arrows that pass a row go between its rooms. Rows are ordered by the mean place of their
/// neighbours, up and down in turns (K. Sugiyama, S. Tagawa, M. Toda, IEEE Trans. Syst. Man Cybern. 11 (1981) 109-125), and the order with the fewest crossings is kept.
/// </summary>
public sealed class Layout
{
    private const double Gap = 24, Passing = 18;
    private readonly double _roomWidth, _rowHeight;
    private readonly List<List<string>> _rows = [];
    private readonly List<(string Above, string Below)> _pieces = [];
    private readonly Dictionary<string, double> _x = [];

    public Layout(UseGraph uses, double roomWidth, double rowHeight)
    {
        (_roomWidth, _rowHeight) = (roomWidth, rowHeight);
        var levels = uses.Levels();
        for (var level = 0; level <= levels.Values.Max(); level++) _rows.Add([.. uses.Rooms.Where(r => levels[r] == level)]);
        foreach (var (used, user) in uses.Plain()) Ways.Add((used, user, Way(used, levels[used], user, levels[user])));
        Order();
        Spread();
    }

    /// <summary>Each arrow's rooms and the places it passes, by name.</summary>
    public List<(string Used, string User, IReadOnlyList<string> Through)> Ways { get; } = [];

    public double Width => _rows.SelectMany(r => r).Max(n => _x[n] + Half(n));

    public int Rows => _rows.Count;

    /// <summary>Middle of a room or of a passing, px.</summary>
    public Place At(string name) => new(_x[name], _rows.FindIndex(r => r.Contains(name)) * _rowHeight);

    private static bool IsRoom(string name) => !name.Contains('>', StringComparison.Ordinal);

    private double Half(string name) => IsRoom(name) ? _roomWidth / 2 : Passing / 2;

    private List<string> Way(string used, int from, string user, int to)
    {
        var way = new List<string> { used };
        for (var row = from + 1; row < to; row++)
        {
            way.Add($"{used}>{user}>{row}");
            _rows[row].Add(way[^1]);
        }

        way.Add(user);
        for (var i = 1; i < way.Count; i++) _pieces.Add((way[i - 1], way[i]));
        return way;
    }

    private void Order()
    {
        var (best, fewest) = (_rows.ConvertAll(r => r.ToList()), Crossings());
        for (var turn = 0; turn < 24; turn++)
        {
            var down = turn % 2 == 0;
            for (var k = 1; k < _rows.Count; k++)
            {
                var row = down ? k : _rows.Count - 1 - k;
                var beside = _rows[down ? row - 1 : row + 1];
                var old = _rows[row].ToList();
                double Mean(string name)
                {
                    var at = (down ? _pieces.Where(p => p.Below == name).Select(p => p.Above) : _pieces.Where(p => p.Above == name).Select(p => p.Below)).Select(n => (double)beside.IndexOf(n)).ToList();
                    return at.Count > 0 ? at.Average() / Math.Max(1, beside.Count - 1) : old.IndexOf(name) / (double)Math.Max(1, old.Count - 1);
                }

                _rows[row] = [.. old.OrderBy(Mean).ThenBy(n => n, StringComparer.Ordinal)];
            }

            if (Crossings() is var now && now < fewest) (best, fewest) = (_rows.ConvertAll(r => r.ToList()), now);
        }

        _rows.Clear();
        _rows.AddRange(best);
    }

    private int Crossings() => _rows.SkipLast(1).Select((row, i) =>
    {
        var pieces = _pieces.Where(p => row.Contains(p.Above)).Select(p => (A: row.IndexOf(p.Above), B: _rows[i + 1].IndexOf(p.Below))).ToList();
        return pieces.Sum(p => pieces.Count(q => p.A < q.A && p.B > q.B));
    }).Sum();

    /// <summary>Each name near the mean of its neighbours, no two nearer than they are wide.</summary>
    private void Spread()
    {
        foreach (var row in _rows)
        {
            var x = 0.0;
            foreach (var name in row)
            {
                _x[name] = x + Half(name);
                x += 2 * Half(name) + Gap;
            }
        }

        for (var turn = 0; turn < 60; turn++)
        {
            foreach (var row in turn % 2 == 0 ? _rows : Enumerable.Reverse(_rows)) Draw(row);
        }

        var left = _x.Min(n => n.Value - Half(n.Key));
        foreach (var name in _x.Keys.ToList()) _x[name] = Math.Round(_x[name] - left, 1);
    }

    private void Draw(List<string> row)
    {
        var wanted = row.ConvertAll(n =>
        {
            var at = _pieces.Where(p => p.Above == n || p.Below == n).Select(p => _x[p.Above == n ? p.Below : p.Above]).ToList();
            return at.Count > 0 ? at.Average() : _x[n];
        });
        double Apart(int i) => Half(row[i - 1]) + Half(row[i]) + Gap;
        // From the left as far right as wanted, from the right as far left; the middle of both keeps the distances.
        var (right, left) = (wanted.ToArray(), wanted.ToArray());
        for (var i = 1; i < row.Count; i++) right[i] = Math.Max(right[i], right[i - 1] + Apart(i));
        for (var i = row.Count - 2; i >= 0; i--) left[i] = Math.Min(left[i], left[i + 1] - Apart(i + 1));
        for (var i = 0; i < row.Count; i++) _x[row[i]] = (left[i] + right[i]) / 2;
    }
}
