using Portwright.Shop.Record;

namespace Portwright.Shop.Walls;

/// <summary>The least metal a shop leaves between port and what lies behind it, where the porter states no limit of his own.</summary>
public static class WallLimit
{
    /// <summary>m, by the metal of the head and what is behind the wall. Common practice, no source; a shop's own limit takes its place.</summary>
    /// <param name="material">As on the head: aluminium, iron; anything else is taken as aluminium, which wants more.</param>
    public static double Usual(string material, Behind behind)
    {
        ArgumentNullException.ThrowIfNull(material);
        // Aluminium is softer, cast with more scatter, and fatigues: it is left thicker than iron over the same water.
        var iron = material.Contains("iron", StringComparison.OrdinalIgnoreCase);
        var overWater = iron ? 0.100 : 0.120;
        var overAir = iron ? 0.080 : 0.100;
        return 0.0254 * (behind == Behind.Air ? overAir : overWater);
    }

    /// <summary>What is behind the metal, in a word or two for a table.</summary>
    public static string Short(Behind behind) => behind switch
    {
        Behind.Pushrod => "pushrod",
        Behind.SpringSeat => "spring seat",
        Behind.Air => "nothing",
        Behind.Unknown => "not known",
        _ => behind.ToString().ToLowerInvariant(),
    };

    /// <summary>What is behind the metal, in words.</summary>
    public static string Words(Behind behind) => behind switch
    {
        Behind.Water => "water behind it",
        Behind.Oil => "oil behind it",
        Behind.Pushrod => "a pushrod behind it",
        Behind.SpringSeat => "the spring seat behind it",
        Behind.Bolt => "a bolt behind it",
        Behind.Air => "nothing behind it",
        _ => "what is behind it is not known",
    };
}
