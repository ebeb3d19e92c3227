using Portwright.Engine.Runs;
using Portwright.Shop.Plan;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;

namespace Portwright.Figures.Tests;

/// <summary>An engine run with invented results: quick to have, and not what an engine does.</summary>
internal static class InventedEngine
{
    public static EngineAnswer Answer()
    {
        var shop = new InventedShop();
        var reductions = new Reductions(shop.Bench.Ledger);
        var plan = new EnginePlan(Bore: 0.1016, Stroke: 0.0889, Cylinders: 8, LowestSpeed: 2500, HighestSpeed: 6500, IntakeCam: new CamLift(0.0087, 1.5, 0), ExhaustCam: new CamLift(0.0083, 1.5, 0));
        var question = EngineQuestion.Of(PlanInFull.Of(plan, EnginePorts.Of(reductions, shop.Bench.JobId)), EngineChoice.Of(reductions, shop.Bench.JobId).Pair(reductions), out _)!;
        return question.Answer([.. question.Tasks().Select((t, i) => Invented(t.TurnsASecond, i))]);
    }

    private static OperatingPoint Invented(double turns, int i)
    {
        var torque = 520 - 0.06 * (turns - 80) * (turns - 80) + i % 7 + 0.3 * (i % 24);
        return new()
        {
            TurnsASecond = turns,
            VolumetricEfficiency = torque / 500,
            TrappedMass = 5e-4,
            Residual = 0.02 + 0.0001 * i % 0.03,
            Reversion = 4 / turns,
            FreshLost = 0.01,
            PeakPressure = 7e6,
            IndicatedPressure = 1.2e6,
            PumpingPressure = -3e4,
            FrictionPressure = 1e5,
            Torque = torque,
            Power = torque * 2 * Math.PI * turns,
            Cycles = 5,
            LastChange = 1e-5,
            Steps = 1000,
            IsSettled = true,
        };
    }
}
