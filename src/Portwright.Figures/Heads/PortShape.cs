namespace Portwright.Figures;

/// <summary>The outline of a port as a sketch of its flange: a rounded rectangle, an intake taller than an exhaust.</summary>
internal static class PortShape
{
    /// <summary>Places around a Lamé curve of exponent 3.4, clockwise from the right.</summary>
    public static IEnumerable<Place> Outline(Box box)
    {
        const int places = 56;
        const double exponent = 3.4;
        for (var i = 0; i < places; i++)
        {
            var angle = 2 * Math.PI * i / places;
            var (sin, cos) = Math.SinCos(angle);
            yield return new(
                box.Centre.X + box.Width / 2 * Math.Sign(cos) * Math.Pow(Math.Abs(cos), 2 / exponent),
                box.Centre.Y + box.Height / 2 * Math.Sign(sin) * Math.Pow(Math.Abs(sin), 2 / exponent));
        }
    }
}
