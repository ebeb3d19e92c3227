using System.Globalization;

namespace Portwright.Geometry.Views;

/// <summary>Bearings and views in words.</summary>
public static class ViewWords
{
    private static readonly string[] Places = ["roof", "centre side", "floor", "cylinder-wall side"];

    /// <summary>The metal at a recorded bearing: "roof", or "between roof and centre side" from half an hour off either.</summary>
    /// <param name="bearingHours">Clock as the record keeps it, in hours, any finite number.</param>
    public static string Metal(double bearingHours)
    {
        var quarters = Bearing.Clock(bearingHours) % 12 / 3;
        var nearest = (int)Math.Round(quarters) % 4;
        if (Math.Abs(quarters - Math.Round(quarters)) * 3 <= 0.5) return Places[nearest];
        var before = (int)Math.Floor(quarters);
        return $"between {Places[before]} and {Places[(before + 1) % 4]}";
    }

    /// <summary>A recorded bearing as this view shows it: "centre side, left on the screen".</summary>
    /// <param name="bearingHours">Clock as the record keeps it, in hours, any finite number.</param>
    public static string Describe(this View view, double bearingHours)
    {
        ArgumentNullException.ThrowIfNull(view);
        return $"{Metal(bearingHours)}, {OnScreen(view.ToScreen(bearingHours))} on the screen";
    }

    /// <summary>The view in one line: "from the flange, head upright".</summary>
    public static string Describe(this View view)
    {
        ArgumentNullException.ThrowIfNull(view);
        List<string> words = [];
        if (view.Head.Length > 0) words.Add(view.Head);
        if (view.Cylinder is { } cylinder) words.Add(string.Create(CultureInfo.InvariantCulture, $"cylinder {cylinder}"));
        if (view.AtEnd) words.Add("end port");
        words.Add(view.SeenFrom == SeenFrom.Flange ? "from the flange" : "from the chamber");
        words.Add(view.Lying == Lying.Upright ? "head upright" : "head inverted");
        if (view.Mirrored) words.Add("mirrored port");
        return string.Join(", ", words);
    }

    /// <summary>Where a recorded bearing is on this view's screen: "bottom", "top right".</summary>
    /// <param name="bearingHours">Clock as the record keeps it, in hours, any finite number.</param>
    public static string OnScreen(this View view, double bearingHours)
    {
        ArgumentNullException.ThrowIfNull(view);
        return OnScreen(view.ToScreen(bearingHours));
    }

    private static string OnScreen(double screenHours)
    {
        var (x, y) = Bearing.Direction(screenHours);
        // Half an hour either side of straight is called straight: 15 degrees.
        var straight = Math.Sin(Math.PI / 12) + 1e-9;
        var height = Math.Abs(y) <= straight ? "" : y > 0 ? "top" : "bottom";
        var side = Math.Abs(x) <= straight ? "" : x > 0 ? "right" : "left";
        return height.Length == 0 ? side : side.Length == 0 ? height : $"{height} {side}";
    }
}
