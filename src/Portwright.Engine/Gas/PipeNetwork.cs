using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Gas;

/// <summary>Pipes and what stands at their ends, stepped together with one time step.</summary>
/// <remarks>
/// What flows out of one part flows into another as one and the same number, so that mass and energy are kept to rounding over the whole. A step
/// allocates nothing. An end that is joined to nothing is closed.
/// </remarks>
public sealed unsafe partial class PipeNetwork
{
    private readonly PipeKernel _kernel;
    private readonly List<Pipe> _pipes = [];
    private readonly HashSet<PipeEnd> _taken = [];
    private readonly List<JoinedEnd> _openings = [];
    private readonly List<PipeEnd[]> _junctions = [];
    private readonly List<(PipeEnd End, GasState Beyond)> _endless = [];
    private PipeEnd[] _walls = [];
    private Reservoir[] _reservoirs = [];
    private JoinedEnd[] _joined = [];
    private double[] _taking = [];
    private OpeningRows _rows = new(0);
    private Junction.Branch[] _branches = [];
    private EndFlow[] _flows = [];
    private bool _ready;
    private int _stepsToWall;

    /// <param name="lanes">Cells worked on at once: 1, 4 or 8; zero takes the widest this machine has.</param>
    /// <exception cref="ArgumentOutOfRangeException">Lanes that are not 0, 1, 4 or 8.</exception>
    public PipeNetwork(int lanes = 0) => _kernel = lanes switch
    {
        0 => PipeKernel.Widest,
        1 => PipeKernel.One,
        4 => PipeKernel.Four,
        8 => PipeKernel.Eight,
        _ => throw new ArgumentOutOfRangeException(nameof(lanes), lanes, $"{nameof(lanes)} must be 0, 1, 4 or 8."),
    };

    /// <summary>Steps between two looks at friction and heat where they follow the gas.</summary>
    public const int WallEvery = 16;

    /// <summary>Share of the longest stable step that is taken (Courant number), above 0 and below 1.</summary>
    public double Courant { get; init; } = 0.85;

    /// <summary>Cells worked on at once.</summary>
    public int Lanes => _kernel.Lanes;

    public IReadOnlyList<Pipe> Pipes => _pipes;

    /// <summary>Steps taken with flat cells because second order would have left a cell without gas or pressure.</summary>
    public int FlatSteps { get; private set; }

    /// <exception cref="ArgumentException">A pipe is in the network already.</exception>
    public PipeNetwork Add(params ReadOnlySpan<Pipe> pipes)
    {
        foreach (var pipe in pipes)
        {
            if (_pipes.Contains(pipe)) throw new ArgumentException($"{pipe.Name} is in the network already.", nameof(pipes));
            _pipes.Add(pipe);
        }

        _ready = false;
        return this;
    }

    /// <summary>Joins a pipe's end to gas at rest through an opening; without one the end is open over its full section.</summary>
    /// <exception cref="ArgumentException">The pipe is not in the network, or something is joined to that end already.</exception>
    public PipeNetwork Join(PipeEnd end, Reservoir beyond, Opening? opening = null)
    {
        Take(end);
        _openings.Add(new(end, beyond, opening ?? Opening.Free()));
        _ready = false;
        return this;
    }

    /// <summary>Joins two or more pipes' ends at one point.</summary>
    /// <exception cref="ArgumentException">Fewer than two ends, a pipe is not in the network, or something is joined to an end already.</exception>
    public PipeNetwork JoinAtOnePoint(params ReadOnlySpan<PipeEnd> ends)
    {
        if (ends.Length < 2) throw new ArgumentException("A junction joins two ends or more.", nameof(ends));
        foreach (var end in ends) Take(end);
        _junctions.Add(ends.ToArray());
        _ready = false;
        return this;
    }

    /// <summary>Lets waves leave through an end with hardly an echo, as if the pipe went on for ever with the gas now in its last cell.</summary>
    /// <exception cref="ArgumentException">The pipe is not in the network, or something is joined to that end already.</exception>
    public PipeNetwork LeaveEndless(PipeEnd end)
    {
        Take(end);
        var gas = end.Pipe[end.IsLast ? end.Pipe.Cells - 1 : 0];
        _endless.Add((end, end.IsLast ? gas : gas with { Velocity = -gas.Velocity }));
        _ready = false;
        return this;
    }

    /// <summary>The longest step now allowed by the fastest wave, s.</summary>
    public double LongestStep
    {
        get
        {
            var longest = double.PositiveInfinity;
            foreach (var pipe in _pipes) longest = Math.Min(longest, Courant * pipe.Shape.CellLength / pipe.Fastest);
            return longest;
        }
    }

    /// <summary>Takes one step of <see cref="LongestStep"/>, not longer than <paramref name="most"/>, and returns its length in s.</summary>
    /// <param name="most">s, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The longest step is not above zero.</exception>
    /// <exception cref="InvalidOperationException">The gas in the pipes has no solution that stays above a vacuum, however short the step.</exception>
    public double Step(double most = double.PositiveInfinity)
    {
        var step = Math.Min(most, LongestStep);
        Require.Positive(step, nameof(most), "s");
        Advance(step, false, 0);
        return step;
    }

    /// <summary>Looks at friction and heat before the next step, and counts to the next look from there: cycles that begin alike then go on alike.</summary>
    public void LookAtWalls() => _stepsToWall = 0;

    /// <summary>Steps until a time has passed, s.</summary>
    /// <param name="time">s, above zero.</param>
    public void Run(double time)
    {
        for (var passed = 0.0; passed < time;)
        {
            // Two equal steps rather than a long one and a crumb.
            var longest = LongestStep;
            var rest = time - passed;
            passed = rest <= longest ? Finish(rest, time) : passed + Step(rest < 2 * longest ? 0.5 * rest : longest);
        }
    }

    private double Finish(double rest, double time)
    {
        Step(rest);
        return time;
    }

    private void Take(PipeEnd end)
    {
        if (!_pipes.Contains(end.Pipe)) throw new ArgumentException($"{end.Pipe.Name} is not in the network.", nameof(end));
        if (!_taken.Add(end)) throw new ArgumentException($"Something is joined to the {end} already.", nameof(end));
    }

    private void MakeReady()
    {
        _walls = [.. _pipes.SelectMany(p => new[] { PipeEnd.First(p), PipeEnd.Last(p) }).Where(e => !_taken.Contains(e))];
        _reservoirs = [.. _openings.Select(o => o.Beyond).Distinct()];
        foreach (var joined in _openings) joined.Place = Array.IndexOf(_reservoirs, joined.Beyond);
        _joined = [.. _openings];
        _taking = new double[3 * _reservoirs.Length];
        _rows = new(_openings.Count);
        var widest = _junctions.Count == 0 ? 0 : _junctions.Max(j => j.Length);
        _branches = new Junction.Branch[widest];
        _flows = new EndFlow[widest];
        _ready = true;
    }
}
