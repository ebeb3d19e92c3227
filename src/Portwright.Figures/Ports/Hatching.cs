namespace Portwright.Figures;

/// <summary>Thin lines at 45 degrees over cut metal of any shape (ISO 128-3:2022), left out where there is none.</summary>
internal static class Hatching
{
    /// <summary>Pieces of hatch inside a closed shape and outside another.</summary>
    public static IEnumerable<(Place From, Place To)> Over(IReadOnlyList<Place> metal, IReadOnlyList<Place> open, double spacing)
    {
        double Key(Place p) => p.X + p.Y;
        var (low, high) = (metal.Min(Key), metal.Max(Key));
        for (var s = Math.Ceiling(low / spacing) * spacing; s < high; s += spacing)
        {
            // Along x + y = s, x tells the place.
            var inMetal = Crossings(metal, s);
            var inOpen = Crossings(open, s);
            var cuts = inMetal.Concat(inOpen).Order().ToList();
            for (var i = 0; i + 1 < cuts.Count; i++)
            {
                var middle = (cuts[i] + cuts[i + 1]) / 2;
                if (cuts[i + 1] - cuts[i] < 0.5 || !Inside(inMetal, middle) || Inside(inOpen, middle)) continue;
                yield return (new(cuts[i], s - cuts[i]), new(cuts[i + 1], s - cuts[i + 1]));
            }
        }
    }

    /// <summary>True for a place inside a closed shape.</summary>
    public static bool Holds(IReadOnlyList<Place> shape, Place place) => Inside(Crossings(shape, place.X + place.Y), place.X);

    private static bool Inside(List<double> crossings, double x) => crossings.Count(c => c < x) % 2 == 1;

    private static List<double> Crossings(IReadOnlyList<Place> shape, double s)
    {
        var found = new List<double>();
        for (var i = 0; i < shape.Count; i++)
        {
            var (a, b) = (shape[i], shape[(i + 1) % shape.Count]);
            var (ka, kb) = (a.X + a.Y - s, b.X + b.Y - s);
            if (ka > 0 == kb > 0) continue;
            found.Add(a.X + (b.X - a.X) * ka / (ka - kb));
        }

        return found;
    }
}
