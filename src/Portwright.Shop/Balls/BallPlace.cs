using Portwright.Geometry;
using Portwright.Physics.Drag;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Judgement;
using Portwright.Shop.Record;

namespace Portwright.Shop.Balls;

/// <summary>A ball at one place: what it took from the flow, what it should take of even air, and what that says.</summary>
/// <param name="Point">Middle of the ball in the section, from its centroid, m; null where the section was not measured.</param>
/// <param name="Fall">Fall of flow over flow.</param>
/// <param name="Loss">The same as flow restated, m3/s: what the porter sees on the meter.</param>
/// <param name="Response">Measured against expected; null where nothing can be expected, and <paramref name="Problem"/> says why.</param>
/// <param name="Air">The ball in even air of the section: what its due follows from; null where nothing can be expected.</param>
public sealed record BallPlace(
    Kept<BallCheck> Check,
    Kept<Station> Station,
    double? Bearing,
    IReadOnlyList<Kept<BallReading>> Readings,
    PlanePoint? Point,
    Estimate Fall,
    Estimate Loss,
    BallResponse? Response,
    BallAir? Air,
    string Problem)
{
    /// <summary>Loss expected of even air by what this ball takes at all its places, m3/s restated; null where none can be expected.</summary>
    public Estimate? Expected => Response is null ? null : Response.Expected.Fall.Scale(ReferenceFlow);

    /// <summary>Flow without the ball, m3/s restated.</summary>
    public double ReferenceFlow { get; init; }

    /// <summary>Published due of even air, without what the ball's places share; null where none can be expected.</summary>
    internal ExpectedBallLoss? PublishedDue { get; init; }
}

/// <summary>A ball check reduced.</summary>
/// <param name="Factor">What its places share, measured over due; null where no place has a due.</param>
/// <param name="AfterPipe">True where the ball was read in a straight pipe on this bench: its due is then absolute.</param>
/// <param name="Drift">Effective area without the ball after less before, m2; null with one reference.</param>
/// <param name="Remarks">In sentences.</param>
public sealed record ReducedBallCheck(Kept<BallCheck> Check, IReadOnlyList<BallPlace> Places, Difference? Drift, IReadOnlyList<string> Remarks, SharedFactor? Factor = null, bool AfterPipe = false);
