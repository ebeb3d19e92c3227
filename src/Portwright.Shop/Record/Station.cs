namespace Portwright.Shop.Record;

/// <summary>A named place along a port, the same through all its cuts.</summary>
/// <param name="Letter">As it is lettered in the drawing: <c>A</c> next to the flange.</param>
/// <param name="Distance">From the flange along the centreline, m.</param>
/// <param name="Mark">What lies there, in the trade's word: <c>pinch</c>, <c>short side</c>, <c>bowl</c>; may be empty.</param>
public sealed record Station(Guid Port, string Letter, double Distance, string Mark = "") : Fact;

/// <summary>The centreline of a port: straight from the flange, then an arc to the seat.</summary>
/// <param name="Length">From flange to seat along the centreline, m.</param>
/// <param name="Turn">Angle between the flange's axis and the valve's, rad; 0 is a port without a bend.</param>
/// <param name="Straight">Length of the straight before the arc, m.</param>
public sealed record Centreline(Guid Port, double Length, double Turn, double Straight) : Fact;
