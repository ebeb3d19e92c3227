using Portwright.Judging.Chance;

namespace Portwright.Judging.Ports;

/// <summary>Draws the law all sisters of a head share.</summary>
public static class FlowLaws
{
    public static FlowLaw Drawn(FlowDesign design, Draw draw)
    {
        var law = draw.Whole(0, 5) switch
        {
            0 => new CoefficientTable(design, draw.Of(CoefficientTable.SharpEdges, CoefficientTable.RoundEdges, CoefficientTable.JetLeavesOneSide)),
            1 => Tanh.Of(design),
            2 => TwoSlopes.Of(design, draw.Between(0.60, 0.75) * design.Most / design.Slope, draw.Between(0.03, 0.08) * design.Head),
            3 => Plateau.Of(design, draw.Between(2, 5)),
            4 => Falling(design, draw),
            _ => (FlowLaw)new CoefficientTable(design, [.. CoefficientTable.RoundEdges.Zip(CoefficientTable.JetLeavesOneSide, (a, b) => (a + b) / 2)]),
        };
        var corner = draw.Of(Takeover.None, Takeover.Soft, Takeover.Sharp);
        return Scaled.To(corner == Takeover.None ? law : new ThroatCorner(law, law.At(design.Top) * draw.Between(0.97, 1.12), corner), design);
    }

    private static FallOff Falling(FlowDesign design, Draw draw)
    {
        var peak = draw.Between(0.82, 0.92) * design.Top;
        return new FallOff(Tanh.Of(design), peak, design.Top, draw.Between(0.001, 0.004));
    }
}
