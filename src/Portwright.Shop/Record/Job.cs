using Portwright.Shop.Units;

namespace Portwright.Shop.Record;

/// <summary>One customer order: an engine plan and a set of heads.</summary>
public sealed record Job(string Name, string Customer, EnginePlan Plan, string Notes = "") : Fact;

/// <summary>A bare cylinder head as it lies on the bench.</summary>
/// <param name="Material">Aluminium, iron, …: sets the usual caution on wall thickness.</param>
/// <param name="Lay">How its ports lie; null where nobody has said: then left and right of its ports are a guess.</param>
public sealed record Head(string Name, string Material = "", string Notes = "", int Place = 0, HeadLay? Lay = null) : Fact;

/// <summary>Intake or exhaust.</summary>
public enum PortKind
{
    // Records hold the name and are read by number too: neither is ever changed.
    Intake = 0,
    Exhaust = 1,
}

/// <summary>One port of a head, with its valve and seat.</summary>
/// <param name="Cylinder">Number of the cylinder, from 1, as the shop counts along the head.</param>
/// <param name="Mirrored">True where the centre side lies left, seen from the port's own flange, head upright: the mirror image of a port that has it right.</param>
public sealed record Port(Guid Head, PortKind Kind, int Cylinder, bool Mirrored, ValveData? Valve = null, string Notes = "") : Fact
{
    /// <summary>The name a porter uses: <c>intake 2</c>.</summary>
    public string Name => $"{(Kind == PortKind.Intake ? "intake" : "exhaust")} {Cylinder}";
}

/// <summary>Valve and seat, all lengths in metres, angle in radians.</summary>
/// <param name="ThroatDiameter">Inside diameter of the throat just under the seat.</param>
public sealed record ValveData(double HeadDiameter, double SeatAngle, double SeatWidth, double ThroatDiameter, double StemDiameter)
{
    /// <summary>The same as the physics of the valve window wants it.</summary>
    public Physics.Valves.ValveSeat Seat() => new(HeadDiameter, SeatAngle, SeatWidth, ThroatDiameter, StemDiameter);
}

/// <summary>One numbered round of shaping on one port; cut 0 is the port as received.</summary>
/// <param name="Done">What was done, in the porter's words.</param>
/// <param name="Hours">Time spent on it; null where it was not noted.</param>
public sealed record Cut(Guid Port, int Number, string Done, DateOnly Date, Typed? Hours = null) : Fact;

/// <summary>A photograph or a short clip kept with the record: of a cut, or of a flag as it stood.</summary>
/// <param name="Of">The cut, port, head or sweep it shows.</param>
/// <param name="Content">SHA-256 of the picture's bytes, lower-case hexadecimal; the bytes are kept beside the journal under it.</param>
/// <param name="MediaType"><c>image/jpeg</c>, <c>image/png</c> or <c>image/webp</c>, decided from the bytes.</param>
public sealed record Photo(Guid Of, string Content, string MediaType, string Caption = "") : Fact;
