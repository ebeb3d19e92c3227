using Portwright.Engine.Gas;

namespace Portwright.Engine.Runs;

/// <summary>One steady cycle of cylinder 1, a row a degree of crank from 0 to 719; 0 is top dead centre of gas exchange.</summary>
/// <param name="Point">The operating point it belongs to.</param>
/// <param name="CylinderPressure">Pa.</param>
/// <param name="CylinderTemperature">K.</param>
/// <param name="IntakeFlow">kg/s into the cylinder; below zero where gas is pushed back.</param>
/// <param name="ExhaustFlow">kg/s out of it.</param>
/// <param name="IntakeLift">m.</param>
/// <param name="ExhaustLift">m.</param>
public sealed record CycleTrace(
    OperatingPoint Point,
    IReadOnlyList<double> CylinderPressure,
    IReadOnlyList<double> CylinderTemperature,
    IReadOnlyList<double> IntakeFlow,
    IReadOnlyList<double> ExhaustFlow,
    IReadOnlyList<double> IntakeLift,
    IReadOnlyList<double> ExhaustLift,
    PipeTrace Intake,
    PipeTrace Exhaust)
{
    public const int Rows = 720;

    /// <summary>Runs a design until it settles, then one cycle more that is written down.</summary>
    /// <param name="turnsASecond">1/s, above zero.</param>
    /// <param name="frameEvery">Degrees between two pictures of the whole pipes; it divides 720.</param>
    /// <inheritdoc cref="EngineRun.At"/>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    /// <exception cref="ArgumentException">The run broke off: the message says at which speed and why.</exception>
    public static CycleTrace At(EngineDesign design, double turnsASecond, int frameEvery = 4, Settling? settling = null, CancellationToken cancel = default)
    {
        if (frameEvery < 1 || Rows % frameEvery != 0) throw new ArgumentOutOfRangeException(nameof(frameEvery), frameEvery, "It must divide 720.");
        var engine = new RunningEngine(design, turnsASecond);
        var point = EngineRun.Settle(engine, design, turnsASecond, settling ?? Settling.Usual, cancel);
        var cylinder = engine.Cylinders[0];
        double[] pressure = new double[Rows], temperature = new double[Rows], into = new double[Rows], outOf = new double[Rows];
        PipeTrace intake = new(engine.IntakePipes[0], -1, frameEvery), exhaust = new(engine.ExhaustPipes[0], 1, frameEvery);
        var row = 0;
        engine.TurnACycle(_ =>
        {
            // A step turns the crank by half a degree or so: the state at its end stands for the degrees it passed.
            for (; row < Rows && row * Degree <= engine.Turned; row++)
            {
                (pressure[row], temperature[row]) = (cylinder.Gas.State.Pressure, cylinder.Gas.State.Temperature);
                (into[row], outOf[row]) = (-cylinder.IntakeValve.MassFlow, cylinder.ExhaustValve.MassFlow);
                intake.Write(row);
                exhaust.Write(row);
            }
        }, cancel);
        double[] Lifts(ValveSide side, bool isIntake)
        {
            var lift = ValveOpening.LiftOf(side.Timing, isIntake);
            return [.. Enumerable.Range(0, Rows).Select(i => lift.At(i * Degree))];
        }

        return new(point, pressure, temperature, into, outOf, Lifts(design.Intake, true), Lifts(design.Exhaust, false), intake, exhaust);
    }

    private const double Degree = Math.PI / 180;
}

/// <summary>What the gas in one pipe did over the cycle.</summary>
public sealed class PipeTrace
{
    private readonly Pipe _pipe;
    private readonly int _sign;

    /// <param name="sign">1 where the stream of this side goes from the valve outwards, -1 where it goes to the valve.</param>
    internal PipeTrace(Pipe pipe, int sign, int frameEvery)
    {
        (this._pipe, this._sign, FrameEvery) = (pipe, sign, frameEvery);
        Distances = [.. Enumerable.Range(0, pipe.Cells).Select(pipe.Position)];
        Sections = [.. Distances.Select((_, i) => pipe.Shape.Volumes[i] / pipe.Shape.CellLength)];
        Frames = new PipeFrame[CycleTrace.Rows / frameEvery];
        (ValvePressure, ValveMach, HighestMach) = (new double[CycleTrace.Rows], new double[CycleTrace.Rows], new double[pipe.Cells]);
    }

    /// <summary>Middle of each cell, m from the valve seat.</summary>
    public IReadOnlyList<double> Distances { get; }

    /// <summary>Mean section of each cell, m2.</summary>
    public IReadOnlyList<double> Sections { get; }

    /// <summary>Degrees of crank between two frames.</summary>
    public int FrameEvery { get; }

    /// <summary>The whole pipe from crank angle 0 on.</summary>
    public IReadOnlyList<PipeFrame> AllFrames => Frames;

    /// <summary>Pressure behind the valve, Pa, a row a degree.</summary>
    public double[] ValvePressure { get; }

    /// <summary>Mach number behind the valve, positive with the stream, a row a degree.</summary>
    public double[] ValveMach { get; }

    /// <summary>Highest Mach number of each cell with the stream.</summary>
    public double[] HighestMach { get; }

    private PipeFrame[] Frames { get; }

    internal void Write(int row)
    {
        var k = _pipe.Gas.HeatCapacityRatio;
        for (var i = 0; i < _pipe.Cells; i++) HighestMach[i] = Math.Max(HighestMach[i], _sign * _pipe[i].Mach(k));
        (ValvePressure[row], ValveMach[row]) = (_pipe[0].Pressure, _sign * _pipe[0].Mach(k));
        if (row % FrameEvery != 0) return;
        Frames[row / FrameEvery] = new(
            [.. Enumerable.Range(0, _pipe.Cells).Select(i => (float)_pipe[i].Pressure)],
            [.. Enumerable.Range(0, _pipe.Cells).Select(i => (float)(_sign * _pipe[i].Velocity))],
            [.. Enumerable.Range(0, _pipe.Cells).Select(i => (float)_pipe[i].Burnt)]);
    }
}

/// <summary>The whole pipe at one moment, from the valve outwards.</summary>
/// <param name="Pressure">Pa.</param>
/// <param name="Velocity">m/s, positive with the stream.</param>
/// <param name="Burnt">Mass fraction.</param>
public sealed record PipeFrame(IReadOnlyList<float> Pressure, IReadOnlyList<float> Velocity, IReadOnlyList<float> Burnt);
