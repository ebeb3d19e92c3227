using CsCheck;
using Portwright.Geometry.Sections;

namespace Portwright.Geometry.Tests.Sections;

/// <summary>Random sections of every kind, sizes of real ports, m.</summary>
internal static class SectionShapes
{
    private static readonly Gen<double> Size = Gen.Double[0.018, 0.06];
    private static readonly Gen<double> Share = Gen.Double[0.02, 0.48];

    public static readonly Gen<SectionMeasure> Rectangle =
        Gen.Select(Size, Size, Share.Array[4], (w, h, s) =>
        {
            var least = Math.Min(w, h);
            return (SectionMeasure)new RectangleSection(w, h, new(s[0] * least, s[1] * least, s[2] * least, s[3] * least));
        });

    public static readonly Gen<SectionMeasure> EvenRectangle =
        Gen.Select(Size, Size, Share, (w, h, s) => (SectionMeasure)new RectangleSection(w, h, s * Math.Min(w, h)));

    public static readonly Gen<SectionMeasure> Oval = Gen.Select(Size, Size, (w, h) => (SectionMeasure)new OvalSection(w, h));

    public static readonly Gen<SectionMeasure> Racetrack = Gen.Select(Size, Size, (w, h) => (SectionMeasure)new RacetrackSection(w, h));

    public static readonly Gen<SectionMeasure> Egg =
        Gen.Select(Gen.Double[0.008, 0.02], Gen.Double[0.008, 0.02], Gen.Double[1.05, 2.5],
            (roof, floor, s) => (SectionMeasure)new EggSection(roof, floor, roof + floor + s * Math.Abs(roof - floor) + 0.002));

    public static readonly Gen<SectionMeasure> Trapezoid =
        Gen.Select(Size, Gen.Double[0.7, 1.4], Size, Gen.Double[0.05, 0.25], Gen.Double[-0.003, 0.003],
            (w, s, h, r, shift) => (SectionMeasure)new TrapezoidSection(w, w * s, h, r * Math.Min(w * Math.Min(1, s), h), shift));

    public static readonly Gen<SectionMeasure> Widths =
        Gen.Select(Gen.Double[0.02, 0.03].Array[3, 7], Gen.Double[0.006, 0.012], Gen.Double[0, 0.003],
            (w, step, r) => (SectionMeasure)new WidthsSection([.. w.Select((width, i) => new WidthAtHeight(i * step, width))], r));

    public static readonly Gen<SectionMeasure> Traced = Outlines.SeenWhole.Select(o => (SectionMeasure)new TracedSection(o.Points));

    public static readonly Gen<SectionMeasure> Template =
        Gen.Select(Outlines.SeenWhole, Size, Size, (o, w, h) => (SectionMeasure)new TemplateSection(o, w, h));

    public static readonly Gen<SectionMeasure> Any = Gen.OneOf(Rectangle, EvenRectangle, Oval, Racetrack, Egg, Trapezoid, Widths, Traced, Template);
}
