namespace Portwright.Figures;

/// <summary>Words beside the metal: each on a piece of clear ground, a leader to the place it speaks of, none over another.</summary>
internal sealed class LongViewLabels
{
    private readonly LabelPlaces _places;
    private readonly double _text;
    private readonly double _wide;
    private readonly List<Action<Pen>> _leaders = [];
    private readonly List<Action<Pen>> _words = [];

    public LongViewLabels(Box room, double text)
    {
        (_text, _wide) = (text, Math.Min(14 * text, room.Width * 0.48));
        _places = new LabelPlaces(room.Grown(-2));
    }

    public void Take(Box box) => _places.Take(box);

    public void Avoid(IReadOnlyList<Place> line) => _places.Avoid(line);

    /// <summary>Puts words near a place. False where there is no room left for them: they are said in the drawing's description instead.</summary>
    /// <param name="leader">False: the words name what they stand beside, no leader is drawn.</param>
    /// <param name="near">Where room is looked for; null: at the place itself.</param>
    public bool Put(Place at, string words, Role role = Role.Ink, bool leader = true, double? wide = null, Place? near = null)
    {
        var lines = Lettering.Wrap(words, _text, wide ?? _wide).ToList();
        if (lines.Count == 0) return false;
        var height = lines.Count * 1.2 * _text + 0.35 * _text;
        var width = lines.Max(l => Lettering.Width(l, _text)) + 0.7 * _text;
        if (_places.Find(near ?? at, width, height, leader ? 1.5 * _text : 0.6 * _text) is not { } box) return false;
        if (leader)
        {
            var end = new Place(Math.Clamp(at.X, box.X, box.Right), Math.Clamp(at.Y, box.Y, box.Bottom));
            _leaders.Add(pen => pen.Line(at.X, at.Y, end.X, end.Y, new Stroke(Role.Ink, _text / 14)));
            _places.Avoid([at, end]);
        }

        _words.Add(pen =>
        {
            pen.Box(box, 2, Role.Ground);
            for (var i = 0; i < lines.Count; i++) pen.Text(box.X + 0.35 * _text, box.Y + (1.05 + 1.2 * i) * _text, lines[i], _text, role);
        });
        return true;
    }

    /// <summary>Leaders and grounds first, so that a mark drawn after them lies over its leader.</summary>
    public void Draw(Pen pen)
    {
        foreach (var leader in _leaders) leader(pen);
        foreach (var words in _words) words(pen);
    }
}
