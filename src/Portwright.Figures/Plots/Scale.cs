namespace Portwright.Figures;

/// <summary>A straight scale from values to places along one direction of a drawing.</summary>
internal readonly record struct Scale(double From, double To, double PlaceFrom, double PlaceTo)
{
    public double At(double value) => PlaceFrom + (value - From) / (To - From) * (PlaceTo - PlaceFrom);

    /// <summary>A step of 1, 2 or 5 times a power of ten that cuts a span into at most <paramref name="most"/> parts.</summary>
    public static double Step(double span, int most)
    {
        if (!(span > 0) || !double.IsFinite(span)) return 1;
        var rough = span / Math.Max(1, most);
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        foreach (var times in (ReadOnlySpan<double>)[1, 2, 5])
        {
            if (times * power >= rough * (1 - 1e-9)) return times * power;
        }

        return 10 * power;
    }

    /// <summary>Round values inside a span, ends included.</summary>
    public static IEnumerable<double> Ticks(double from, double to, double step)
    {
        for (var i = (long)Math.Ceiling(from / step - 1e-9); i * step <= to + step * 1e-9; i++) yield return i * step;
    }
}
