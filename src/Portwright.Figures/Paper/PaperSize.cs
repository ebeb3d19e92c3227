namespace Portwright.Figures;

/// <summary>A sheet of paper in points, 1/72 inch.</summary>
public sealed record PaperSize(string Name, double Width, double Height)
{
    /// <summary>210 by 297 mm (ISO 216).</summary>
    public static PaperSize A4 { get; } = new("A4", 595.28, 841.89);

    /// <summary>8 1/2 by 11 inch.</summary>
    public static PaperSize Letter { get; } = new("Letter", 612, 792);

    /// <summary>The sheet in the printer where those units are used.</summary>
    public static PaperSize Of(Shop.Units.UnitSystem units) => units == Shop.Units.UnitSystem.Si ? A4 : Letter;
}
