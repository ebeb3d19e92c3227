using Portwright.Geometry;
using Portwright.Physics.Drag;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;

namespace Portwright.Shop.Balls;

/// <summary>A ball at one place: what it took from the flow, what it should take of attached air, and what that says.</summary>
/// <param name="Point">Middle of the ball in the section, from its centroid, m; null where the section was not measured.</param>
/// <param name="Fall">Fall of flow over flow.</param>
/// <param name="Loss">The same as flow restated, m3/s: what the porter sees on the meter.</param>
/// <param name="Response">Measured against expected; null where nothing can be expected, and <paramref name="Problem"/> says why.</param>
/// <param name="FromRing">True where the local speed is a ring's; false where the section's mean speed stands in.</param>
public sealed record BallPlace(
    Kept<BallCheck> Check,
    Kept<Station> Station,
    double? Bearing,
    IReadOnlyList<Kept<BallReading>> Readings,
    PlanePoint? Point,
    Estimate Fall,
    Estimate Loss,
    BallResponse? Response,
    bool FromRing,
    string Problem)
{
    /// <summary>Loss expected of attached air at the local speed, m3/s restated; null where none can be expected.</summary>
    public Estimate? Expected => Response is null ? null : Response.Expected.Fall.Scale(ReferenceFlow);

    /// <summary>Flow without the ball, m3/s restated.</summary>
    public double ReferenceFlow { get; init; }
}

/// <summary>A ball check reduced.</summary>
/// <param name="Drift">Reference flow after less before, as a share; null with one reference.</param>
/// <param name="Remarks">In sentences.</param>
public sealed record ReducedBallCheck(Kept<BallCheck> Check, IReadOnlyList<BallPlace> Places, Difference? Drift, IReadOnlyList<string> Remarks);
