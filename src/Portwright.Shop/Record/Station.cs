namespace Portwright.Shop.Record;

/// <summary>A named place along a port, the same through all its cuts.</summary>
/// <param name="Letter">As it is lettered in the drawing: <c>A</c> next to the flange.</param>
/// <param name="Distance">From the flange along the centreline, m.</param>
/// <param name="Mark">Its free name; may be empty.</param>
/// <param name="Role">What it is to the port; null in records kept before stations had one, or where the porter was not asked.</param>
public sealed record Station(Guid Port, string Letter, double Distance, string Mark = "", StationRole? Role = null) : Fact
{
    /// <summary>As stated, else as its free name says; null where neither tells.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public StationRole? RoleRead => Role ?? StationRoles.In(Mark);
}

/// <summary>The centreline of a port: straight from the flange, then an arc to the seat.</summary>
/// <param name="Length">From flange to seat along the centreline, m.</param>
/// <param name="Turn">Angle between the flange's axis and the valve's, rad; 0 is a port without a bend.</param>
/// <param name="Straight">Length of the straight before the arc, m.</param>
public sealed record Centreline(Guid Port, double Length, double Turn, double Straight) : Fact;
