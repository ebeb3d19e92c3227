using Portwright.Engine.Cylinder;
using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Runs;

/// <summary>One cylinder with its valves between its two pipes.</summary>
internal sealed class RunningCylinder
{
    private readonly ValveOpening _intake, _exhaust;
    private readonly double _turnsASecond;
    private double _askedFor = double.NaN;
    private CylinderState _midway;

    public RunningCylinder(CylinderPlan plan, ValveOpening intake, ValveOpening exhaust, double turnsASecond, double crank, GasAtRest start, PerfectGas intakeGas, PerfectGas exhaustGas)
    {
        (this._intake, this._exhaust, this._turnsASecond) = (intake, exhaust, turnsASecond);
        Gas = new(plan, turnsASecond, crank, start.Pressure, start.Temperature, start.Burnt);
        IntakeMouth = new(this, plan.Gas, intakeGas);
        ExhaustMouth = new(this, plan.Gas, exhaustGas);
    }

    public CylinderGas Gas { get; }

    public Opening IntakeValve { get; } = new();

    public Opening ExhaustValve { get; } = new();

    public CylinderMouth IntakeMouth { get; }

    public CylinderMouth ExhaustMouth { get; }

    public CylinderState Midway(double step)
    {
        if (step != _askedFor) (_askedFor, _midway) = (step, Gas.Midway(step));
        return _midway;
    }

    /// <summary>In which the open valves would pass all its gas at the speed of sound, s; endless where they are shut.</summary>
    public double TimeToEmpty
    {
        get
        {
            var area = IntakeValve.AreaOutOfPipe + ExhaustValve.AreaIntoPipe;
            var gas = Gas.State;
            // 1.4 R = 400 J/(kg K): near enough for a bound.
            return area > 0 ? gas.Volume / (area * Math.Sqrt(400 * gas.Temperature)) : double.PositiveInfinity;
        }
    }

    /// <summary>Sets the valves to where they stand in the middle of a step.</summary>
    public void SetValves(double step)
    {
        var crank = Gas.Crank + Math.PI * _turnsASecond * step;
        (IntakeValve.AreaOutOfPipe, IntakeValve.AreaIntoPipe) = _intake.At(crank);
        (ExhaustValve.AreaIntoPipe, ExhaustValve.AreaOutOfPipe) = _exhaust.At(crank);
    }

    public void BeginCycle()
    {
        Gas.ClearTotals();
        IntakeMouth.ClearCycle();
        ExhaustMouth.ClearCycle();
    }

    /// <summary>Moves the cylinder on by what its mouths have taken.</summary>
    public void Step(double step)
    {
        Gas.Step(step, IntakeMouth.Flow + ExhaustMouth.Flow);
        IntakeMouth.Clear();
        ExhaustMouth.Clear();
        _askedFor = double.NaN;
    }
}
