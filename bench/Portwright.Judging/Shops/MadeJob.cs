using Portwright.Judging.Chance;
using Portwright.Judging.Ports;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Judging.Shops;

/// <summary>A job before anything of it is typed: engine, heads of sister ports, the bench, and what will be looked at. Faults are planted here.</summary>
public sealed class MadeJob
{
    public MadeJob(Draw draw)
    {
        Draw = draw;
        Pencil = new Pencil(draw.Chance(0.3));
        Engine = MadeEngine.Drawn(draw);
        Heads = draw.Chance(0.3) ? 2 : 1;
        Ports = [.. Cast()];
        Bench = MadeBench.Drawn(Engine.Intake.Law.At(Engine.Intake.Top), Pencil, draw);
        Looks = UsualLooks.Drawn(this);
    }

    public Draw Draw { get; }

    public Pencil Pencil { get; }

    public MadeEngine Engine { get; }

    /// <summary>One head of four cylinders, or the two of an eight.</summary>
    public int Heads { get; }

    public IReadOnlyList<MadePort> Ports { get; }

    public MadeBench Bench { get; }

    public Looks Looks { get; }

    /// <summary>The day's work is stopped here and the bench changes: share of the sweeps done by then.</summary>
    public double Noon { get; set; } = 0.5;

    /// <summary>What happens to the bench at noon.</summary>
    public Action<MadeBench>? AtNoon { get; set; }

    /// <summary>What the bench reads over from the first day of the work on, as a share.</summary>
    public double BenchOff { get; set; }

    /// <summary>Factor on what the probe reads in a port, beside the probe's own.</summary>
    public Dictionary<MadePort, double> ProbeOff { get; } = [];

    /// <summary>The ball taken for all checks of the job; null until the first.</summary>
    public Typed? Ball { get; set; }

    /// <summary>True diameter of the ball over what is typed.</summary>
    public Dictionary<MadePort, double> BallTyped { get; } = [];

    /// <summary>Factor on the speed one instrument sees at one place.</summary>
    public List<PlaceOff> PlacesOff { get; } = [];

    /// <summary>Places where the ball mends the flow instead of hindering it: share of the flow.</summary>
    public List<PlaceOff> Mended { get; } = [];

    /// <summary>Flags that do not stand as in healthy air.</summary>
    public List<FlagAt> FlagsAt { get; } = [];

    /// <summary>Lifts (m) from and to where a port's air is unsteady, and how many times the bench's scatter it scatters.</summary>
    public List<UnsteadyBand> Unsteady { get; } = [];

    /// <summary>Exhausts that were drawn.</summary>
    public HashSet<MadePort> Drawn { get; } = [];

    /// <summary>Burette over what the port holds.</summary>
    public Dictionary<MadePort, double> BuretteOff { get; } = [];

    /// <summary>Lift at which a number was typed wrong.</summary>
    public Typed? SlippedAt { get; set; }

    /// <summary>What was read of the air, as the best judge sees it.</summary>
    public KnownAir KnownAir { get; } = new();

    public IReadOnlyList<MadePort> Of(PortKind kind) => [.. Ports.Where(p => p.Kind == kind)];

    /// <summary>Ports of the same kind, itself left out.</summary>
    public IReadOnlyList<MadePort> SistersOf(MadePort port) => [.. Ports.Where(p => p.Kind == port.Kind && p != port)];

    private IEnumerable<MadePort> Cast()
    {
        var pairs = Draw.Chance(0.5);
        for (var head = 0; head < Heads; head++)
        {
            for (var cylinder = 1; cylinder <= 4; cylinder++)
            {
                var mirrored = pairs && cylinder % 2 == 0;
                yield return Engine.Intake.Cast(head, cylinder, mirrored);
                yield return Engine.Exhaust.Cast(head, cylinder, mirrored);
            }
        }
    }
}

/// <summary>Something amiss at one place, for the ball or for the probe.</summary>
public sealed record PlaceOff(MadePort Port, StationRole Station, double? Bearing, bool Ball, double Factor);

public sealed record FlagAt(MadePort Port, StationRole Station, double? Bearing, Steadiness Steadiness);

public sealed record UnsteadyBand(MadePort Port, double From, double To, double Times);
