using Portwright.Engine.Cam;
using Portwright.Physics.Curves;

namespace Portwright.Engine.Runs;

/// <summary>Effective area of one side's valves over the crank angle, ready to be read at every step.</summary>
internal sealed class ValveOpening
{
    /// <summary>Parts of the cycle between which areas are read along a straight line: a quarter of a degree.</summary>
    private const int Parts = 2880;

    private const double Cycle = 4 * Math.PI;

    private readonly double[] _with, _against;

    public ValveOpening(ValveLift lift, MeasuredAreas areas)
    {
        Lift = lift;
        var stream = Curve(areas.Lifts, areas.WithTheStream);
        var back = areas.Backwards is { } b ? Curve(areas.Lifts, b) : stream;
        (_with, _against) = (Table(lift, stream), areas.Backwards is null ? [] : Table(lift, back));
        if (_against.Length == 0) _against = _with;
    }

    public ValveLift Lift { get; }

    /// <summary>Effective areas with the stream and against it at a crank angle (rad, 0 to 4 pi or a little above), m2.</summary>
    public (double With, double Against) At(double crank)
    {
        var at = crank * (Parts / Cycle);
        if (at >= Parts) at -= Parts;
        var i = (int)at;
        var share = at - i;
        return (_with[i] + share * (_with[i + 1] - _with[i]), _against[i] + share * (_against[i + 1] - _against[i]));
    }

    /// <summary>Lift curve of one side.</summary>
    /// <exception cref="ArgumentException">The card or table makes no lift curve; the message says why and the cure.</exception>
    public static ValveLift LiftOf(ValveTiming timing, bool intake)
    {
        var later = timing.Later;
        string? problem;
        ValveLift? lift;
        if (timing.Card is { } card)
        {
            // An exhaust's lobe centre is counted backwards.
            var turned = card with { LobeCentre = card.LobeCentre + (intake ? later : -later) };
            lift = intake ? ValveLift.OfIntake(turned, out problem) : ValveLift.OfExhaust(turned, out problem);
        }
        else
        {
            lift = ValveLift.FromTable([.. timing.TableCrank.Select(c => c + later)], [.. timing.TableLift], out problem);
        }

        return lift ?? throw new ArgumentException(problem, nameof(timing));
    }

    private static MonotoneCubic Curve(IReadOnlyList<double> lifts, IReadOnlyList<double> areas)
    {
        foreach (var area in areas) Require.NotNegative(area, nameof(areas), "m2");
        return new([0, .. lifts], [0, .. areas]);
    }

    private static double[] Table(ValveLift lift, MonotoneCubic area)
    {
        var table = new double[Parts + 1];
        for (var i = 0; i < Parts; i++) table[i] = area.At(Math.Min(lift.At(i * Cycle / Parts), area.To)).Value;
        table[Parts] = table[0];
        return table;
    }
}
