using System.Globalization;

namespace Portwright.Engine.Cam;

/// <summary>How long a lobe holds its follower above a lift.</summary>
/// <param name="LobeLift">m.</param>
/// <param name="Duration">rad of crank.</param>
public readonly record struct LobeDuration(double LobeLift, double Duration);

/// <summary>What comes with a camshaft. Angles in rad of crank, lifts at the lobe in m.</summary>
/// <param name="LobeLift">On the nose, m.</param>
/// <param name="SeatDuration">Above <see cref="SeatLift"/>, rad of crank.</param>
/// <param name="DurationAt050">Above 0.050 in (1.27 mm) of lobe lift, rad of crank.</param>
/// <param name="LobeCentre">Nose after top dead centre of gas exchange for an intake, before it for an exhaust, rad of crank.</param>
public sealed record CamCard(double LobeLift, double SeatDuration, double DurationAt050, double LobeCentre)
{
    /// <summary>0.050 in, m.</summary>
    public const double Checking = 1.27e-3;

    /// <summary>0.006 in, m: where many cards count the seat duration. Common practice, no source; cards differ.</summary>
    public const double UsualSeatLift = 0.1524e-3;

    private const double Degree = Math.PI / 180;

    /// <summary>Lobe lift above which the seat duration is counted, m; zero for one counted from the base circle.</summary>
    public double SeatLift { get; init; } = UsualSeatLift;

    /// <summary>Valve movement over lobe movement; 1 for a bucket follower, no unit.</summary>
    public double RockerRatio { get; init; } = 1;

    /// <summary>Clearance at the valve, m; 0 for hydraulic followers.</summary>
    public double Lash { get; init; }

    /// <summary>Further durations, such as one at 0.200 in: they settle how full the lobe is.</summary>
    public IReadOnlyList<LobeDuration> Further { get; init; } = [];

    /// <summary>Lift of the valve at full lobe, m.</summary>
    public double HighestLift => LobeLift * RockerRatio - Lash;

    /// <summary>Every duration of the card, from high lift to low.</summary>
    internal LobeDuration[] Durations() =>
        [.. Further.Append(new(Checking, DurationAt050)).Append(new(SeatLift, SeatDuration)).OrderByDescending(d => d.LobeLift)];

    /// <summary>What is wrong with the card, in a porter's words with the cure; null where it can be a lobe.</summary>
    public string? Problem()
    {
        if (!(LobeLift > Checking && LobeLift < 0.05)) return Say($"Lobe lift {LobeLift * 1e3:0.##} mm: a lobe lifts more than 1.27 mm (0.050 in) and less than 50 mm. Is it in another unit, or the valve's lift?");
        if (!(SeatLift >= 0 && SeatLift < Checking)) return Say($"Seat lift {SeatLift * 1e3:0.###} mm: the seat duration is counted below 1.27 mm (0.050 in) of lobe lift, often at 0.15 mm (0.006 in).");
        if (!(RockerRatio > 0.5 && RockerRatio < 3)) return Say($"Rocker ratio {RockerRatio:0.###}: it lies between 0.5 and 3; a bucket follower has 1.");
        if (!(Lash >= 0 && Lash < 0.5 * LobeLift * RockerRatio)) return Say($"Lash {Lash * 1e3:0.###} mm: it is zero or above and well under the valve's lift. Is it in another unit?");
        if (!double.IsFinite(LobeCentre) || Math.Abs(LobeCentre) > Math.PI) return Say($"Lobe centre {LobeCentre / Degree:0.#} degrees: it lies within 180 degrees of top dead centre, 100 to 120 for most.");
        var durations = Durations();
        for (var i = 0; i < durations.Length; i++)
        {
            var (lift, duration) = durations[i];
            if (!(duration > 0 && duration < 3.5 * Math.PI)) return Say($"Duration at {lift * 1e3:0.###} mm is {duration / Degree:0.#} degrees: it lies above 0 and below 630 degrees of crank.");
            if (!(lift >= 0 && lift < LobeLift)) return Say($"A duration is given at {lift * 1e3:0.###} mm, but the lobe lifts {LobeLift * 1e3:0.##} mm. Check both.");
            if (i == 0) continue;
            if (!(lift < durations[i - 1].LobeLift)) return Say($"Two durations are given at {lift * 1e3:0.###} mm of lobe lift. Keep one.");
            if (!(duration > durations[i - 1].Duration))
                return Say($"Duration at {lift * 1e3:0.###} mm is {duration / Degree:0.#} degrees, at {durations[i - 1].LobeLift * 1e3:0.###} mm {durations[i - 1].Duration / Degree:0.#}: it must be longer at the lower lift. Are they swapped?");
        }

        return null;
    }

    /// <summary>What is wrong where the figures are in order but no smooth lobe passes through them.</summary>
    internal string NoLobe() =>
        Say($"No smooth lobe lifts {LobeLift * 1e3:0.##} mm with {SeatDuration / Degree:0.#} degrees at {SeatLift * 1e3:0.###} mm and {DurationAt050 / Degree:0.#} at 1.27 mm. Check the lift at which the seat duration is counted, and both durations.");

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
