namespace Portwright.Shop.Record;

/// <summary>On which side of the head the exhausts come out.</summary>
public enum ExhaustSide
{
    // Records hold the name and are read by number too: neither is ever changed.
    /// <summary>Across from the intakes.</summary>
    Across = 0,

    /// <summary>Beside the intakes, on one flange face.</summary>
    WithIntakes = 1,
}

/// <summary>How the ports of a head lie: said once, when the head is drawn. Which of them are mirror images stands with each port.</summary>
/// <param name="Exhausts">Where the exhausts come out.</param>
/// <param name="FromRight">True where cylinder 1 is the one at the right, seen from the intakes' flange, head upright.</param>
public sealed record HeadLay(ExhaustSide Exhausts = ExhaustSide.Across, bool FromRight = false);
