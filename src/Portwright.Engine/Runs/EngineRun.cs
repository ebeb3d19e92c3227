using Portwright.Engine.Cylinder;

namespace Portwright.Engine.Runs;

/// <summary>When cycles count as repeating.</summary>
/// <param name="Tolerance">Largest relative change of any cylinder's charge and work from cycle to cycle, no unit.</param>
/// <param name="MostCycles">After which it is given up and said.</param>
public sealed record Settling(double Tolerance = 2e-4, int MostCycles = 60)
{
    public static readonly Settling Usual = new();
}

/// <summary>Runs a design at one speed until its cycles repeat.</summary>
public static class EngineRun
{
    /// <param name="turnsASecond">1/s, above zero.</param>
    /// <param name="cancel">Looked at after each cycle.</param>
    /// <exception cref="ArgumentException">The design cannot be put together, or its gas found no solution.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public static OperatingPoint At(EngineDesign design, double turnsASecond, Settling? settling = null, CancellationToken cancel = default) =>
        Settle(new(design, turnsASecond), design, turnsASecond, settling ?? Settling.Usual, cancel);

    internal static OperatingPoint Settle(RunningEngine engine, EngineDesign design, double turnsASecond, Settling settling, CancellationToken cancel)
    {
        var before = new CycleOf[engine.Cylinders.Length];
        var now = new CycleOf[engine.Cylinders.Length];
        for (var cycles = 1; ; cycles++)
        {
            cancel.ThrowIfCancellationRequested();
            foreach (var cylinder in engine.Cylinders) cylinder.BeginCycle();
            try
            {
                engine.TurnACycle(cancel: cancel);
            }
            catch (Exception broke) when (broke is InvalidOperationException or ArithmeticException)
            {
                throw new ArgumentException(FormattableString.Invariant($"At {60 * turnsASecond:0} rpm the run broke off in cycle {cycles}. Check lengths, sections and areas for a slip; {broke.Message}"), nameof(design), broke);
            }

            var change = 0.0;
            for (var i = 0; i < now.Length; i++)
            {
                now[i] = CycleOf.Ended(engine.Cylinders[i]);
                change = Math.Max(change, now[i].ChangeFrom(before[i]));
                before[i] = now[i];
            }

            if (cycles > 2 && change <= settling.Tolerance || cycles >= settling.MostCycles)
                return Result(engine, design, turnsASecond, now) with { Cycles = cycles, LastChange = change, IsSettled = change <= settling.Tolerance };
        }
    }

    private static OperatingPoint Result(RunningEngine engine, EngineDesign design, double turnsASecond, CycleOf[] cycles)
    {
        double Mean(Func<CycleOf, double> of) => cycles.Average(of);
        var space = engine.Plan.Space;
        double swept = space.Displacement, work = Mean(c => c.Work), peak = Mean(c => c.PeakPressure);
        var outside = design.Air.Pressure / (engine.Charge.GasConstant(0) * design.Air.Temperature);
        var friction = design.Friction?.Pressure(peak, 2 * space.Crank.Stroke * turnsASecond) ?? 0;
        double indicated = MeanPressure.Of(work, swept), whole = design.Cylinders * swept;
        return new()
        {
            TurnsASecond = turnsASecond,
            VolumetricEfficiency = Mean(c => c.FreshIn) / (outside * swept),
            TrappedMass = Mean(c => c.Trapped),
            Residual = Mean(c => c.Residual),
            Reversion = Mean(c => c.Back) / Mean(c => c.In),
            FreshLost = Mean(c => c.FreshLost) / Mean(c => c.FreshIn),
            PeakPressure = peak,
            IndicatedPressure = indicated,
            PumpingPressure = MeanPressure.Of(Mean(c => c.Pumping), swept),
            FrictionPressure = friction,
            Torque = MeanPressure.Torque(indicated - friction, whole),
            Power = MeanPressure.Power(indicated - friction, whole, turnsASecond),
            Cycles = 0,
            LastChange = 0,
            IsSettled = false,
            Steps = engine.Steps,
        };
    }
}

/// <summary>What one cylinder did in one cycle.</summary>
internal readonly record struct CycleOf(
    double Work, double Pumping, double In, double Back, double FreshIn, double FreshLost, double Trapped, double Residual, double PeakPressure)
{
    public static CycleOf Ended(RunningCylinder cylinder)
    {
        CylinderMouth intake = cylinder.IntakeMouth, exhaust = cylinder.ExhaustMouth;
        var totals = cylinder.Gas.Totals;
        return new(
            totals.Work, totals.PumpingWork, intake.MassIn, intake.MassOut,
            intake.MassIn - intake.MassOut - (intake.Burnt.In - intake.Burnt.Out),
            exhaust.MassOut - exhaust.Burnt.Out - (exhaust.MassIn - exhaust.Burnt.In),
            cylinder.Gas.Trapped.Mass, cylinder.Gas.Trapped.State.Burnt, totals.PeakPressure);
    }

    /// <summary>Largest relative change of what counts.</summary>
    public double ChangeFrom(in CycleOf before) =>
        Math.Max(Math.Abs(In - Back - before.In + before.Back) / In, Math.Abs(Work - before.Work) / Math.Max(Math.Abs(Work), 1e-9));
}
