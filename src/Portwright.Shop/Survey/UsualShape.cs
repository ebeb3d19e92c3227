using Portwright.Geometry.LongView;
using Portwright.Shop.Record;

namespace Portwright.Shop.Survey;

/// <summary>What the usual port is drawn from where a port was not measured.</summary>
public static class UsualShape
{
    /// <summary>A valve of this diameter (m) stands in where none is written down.</summary>
    private const double Valve = 0.045;

    /// <summary>Diameter of the port's valve, else of the usual one, m.</summary>
    public static double ValveDiameter(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Valve?.HeadDiameter ?? Valve;
    }

    public static PortSide Side(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return port.Kind == PortKind.Intake ? PortSide.Intake : PortSide.Exhaust;
    }
}
