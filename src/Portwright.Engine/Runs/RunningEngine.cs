using Portwright.Engine.Charge;
using Portwright.Engine.Cylinder;
using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Engine.Runs;

/// <summary>A design put together at one engine speed: cylinders, pipes and what they open to, all moving with one time step.</summary>
internal sealed class RunningEngine
{
    private const double Cycle = 4 * Math.PI;

    /// <summary>The crank turns no further than this in a step, rad: a degree.</summary>
    private const double LongestTurn = Math.PI / 180;

    private const int FewestCells = 8;

    /// <summary>No valve passes more than this share of its cylinder's gas in a step.</summary>
    private const double MostShare = 0.1;

    /// <summary>Steps between two looks at whether the run was cancelled.</summary>
    private const int LookEvery = 512;

    private readonly PipeNetwork _network;
    private readonly double _speed;
    private readonly int _cylinders;
    private SteadyPlenum? _steady;

    /// <param name="turnsASecond">1/s, above zero.</param>
    /// <exception cref="ArgumentException">The design cannot be put together; the message names the part.</exception>
    public RunningEngine(EngineDesign design, double turnsASecond)
    {
        ArgumentNullException.ThrowIfNull(design);
        _speed = 2 * Math.PI * Require.Positive(turnsASecond, nameof(turnsASecond), "1/s");
        _network = new() { Courant = design.Courant };
        _cylinders = design.Cylinders;
        Charge = design.PlainGas is { } plain ? ChargeGas.Constant(plain.HeatCapacityRatio, plain.GasConstant) : ChargeGas.Of(design.Fuel, design.Richness);
        var fired = design.Combustion.ShareBurnt > 0;
        var air = design.Air;
        var behind = new GasAtRest(air.Pressure + design.BackPressure, fired ? UsualExhaustTemperature : air.Temperature, fired ? 1 : 0);
        PerfectGas fresh = PipeGas(air.Temperature, 0), spent = PipeGas(behind.Temperature, behind.Burnt);

        var intake = new ValveOpening(ValveOpening.LiftOf(design.Intake.Timing, true), design.Intake.Areas);
        var exhaust = new ValveOpening(ValveOpening.LiftOf(design.Exhaust.Timing, false), design.Exhaust.Areas);
        Plan = PlanOf(design, intake, exhaust, Charge);
        var order = design.FiringOrder is { Count: > 0 } given ? given : [1];
        Cylinders = new RunningCylinder[order.Count];
        (IntakePipes, ExhaustPipes) = (new Pipe[order.Count], new Pipe[order.Count]);
        foreach (var number in order)
        {
            if (number < 1 || number > order.Count || Cylinders[number - 1] is not null)
                throw new ArgumentException($"The firing order {string.Join('-', order)} must hold each cylinder from 1 to {order.Count} once.", nameof(design));
            var place = 0;
            while (order[place] != number) place++;
            var i = number - 1;
            IntakePipes[i] = PipeOf(design.Intake.Tract, fresh, air, $"intake {number}");
            ExhaustPipes[i] = PipeOf(design.Exhaust.Tract, spent, behind, $"exhaust {number}");
            var cylinder = Cylinders[i] = new(Plan, intake, exhaust, turnsASecond, -place * Cycle / order.Count, air, fresh, spent);
            _network.Add(IntakePipes[i], ExhaustPipes[i]);
            _network.Join(PipeEnd.First(IntakePipes[i]), cylinder.IntakeMouth, cylinder.IntakeValve);
            _network.Join(PipeEnd.First(ExhaustPipes[i]), cylinder.ExhaustMouth, cylinder.ExhaustValve);
        }

        JoinIntakes(design, new Room(air), fresh);
        JoinExhausts(design, order, new Room(behind), spent, behind);
    }

    /// <summary>K: where the constant heat capacity of exhaust pipes is taken, and what they hold at first.</summary>
    private const double UsualExhaustTemperature = 1000;

    public ChargeGas Charge { get; }

    public CylinderPlan Plan { get; }

    /// <summary>By number.</summary>
    public RunningCylinder[] Cylinders { get; }

    public Pipe[] IntakePipes { get; }

    public Pipe[] ExhaustPipes { get; }

    /// <summary>Crank angle of cylinder 1 since the cycle began, rad.</summary>
    public double Turned { get; private set; }

    /// <summary>Steps taken so far.</summary>
    public int Steps { get; private set; }

    /// <summary>One cycle, two turns of the crank.</summary>
    /// <param name="after">Called after every step with its length in s; null for none.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public void TurnACycle(Action<double>? after = null, CancellationToken cancel = default)
    {
        _network.LookAtWalls();
        for (Turned = 0; Turned < Cycle;)
        {
            if (Steps % LookEvery == 0) cancel.ThrowIfCancellationRequested();
            var longest = Math.Min(_network.LongestStep, LongestTurn / _speed);
            foreach (var cylinder in Cylinders) longest = Math.Min(longest, MostShare * cylinder.TimeToEmpty);
            var rest = (Cycle - Turned) / _speed;
            // Two equal steps rather than a long one and a crumb.
            var step = rest <= longest ? rest : rest < 2 * longest ? 0.5 * rest : longest;
            foreach (var cylinder in Cylinders) cylinder.SetValves(step);
            _network.Step(step);
            foreach (var cylinder in Cylinders) cylinder.Step(step);
            Turned = rest <= longest ? Cycle : Turned + _speed * step;
            Steps++;
            after?.Invoke(step);
        }

        _steady?.EndCycle(_cylinders, Cycle / _speed);
    }

    private static CylinderPlan PlanOf(EngineDesign design, ValveOpening intake, ValveOpening exhaust, ChargeGas charge)
    {
        static double InCycle(double crank) => crank - Cycle * Math.Floor(crank / Cycle);
        var space = design.Size.Space();
        var (closes, opens) = (InCycle(intake.Lift.Closes), InCycle(exhaust.Lift.Opens));
        if (!(closes < opens)) throw new ArgumentException("The intake shuts after the exhaust has opened: nothing would be compressed. Check lobe centres and durations.", nameof(design));
        var burns = design.Combustion;
        return new(space, charge, closes, opens)
        {
            Burn = burns.ShareBurnt > 0 ? WiebeBurn.About(2 * Math.PI + burns.HalfBurntAfterTop, burns.TenthToNineTenths) : null,
            HeatOfFresh = design.DryShare * burns.ShareBurnt * design.Fuel.HeatPerAir(design.Richness),
            FuelPerFresh = burns.ShareBurnt > 0 && design.PlainGas is null ? design.DryShare * design.Richness / design.Fuel.AirForFuel : 0,
            Walls = design.Walls,
        };
    }

    private PerfectGas PipeGas(double temperature, double burnt) => new(Charge.HeatCapacityRatio(temperature, burnt), Charge.GasConstant(burnt));

    private static Pipe PipeOf(Tract tract, PerfectGas gas, GasAtRest start, string name)
    {
        var length = tract.Length + tract.EndCorrection;
        var cells = Math.Max(FewestCells, (int)Math.Round(length / Require.Positive(tract.CellLength, nameof(tract.CellLength), "m")));
        var wall = tract is { WallTemperature: null, Roughness: 0, BendLoss: 0 } ? PipeWall.Smooth : new PipeWall(tract.Roughness, null, tract.BendLoss, tract.WallTemperature);
        var pipe = new Pipe(PipeShape.Of(length, cells, tract.AreaAt), gas, wall, name);
        pipe.Fill(gas.State(start.Pressure, start.Temperature, 0, start.Burnt));
        return pipe;
    }

    private void JoinIntakes(EngineDesign design, Room air, PerfectGas fresh)
    {
        if (design.Manifold is not { } manifold)
        {
            foreach (var pipe in IntakePipes) _network.Join(PipeEnd.Last(pipe), air);
            return;
        }

        if (design.FiringOrder is null)
        {
            _steady = new SteadyPlenum(air.Air, manifold.ThrottleArea, fresh.HeatCapacityRatio, fresh.GasConstant);
            _network.Join(PipeEnd.Last(IntakePipes[0]), _steady);
            return;
        }

        var plenum = new Plenum(manifold.Volume, fresh, air.Air);
        foreach (var pipe in IntakePipes) _network.Join(PipeEnd.Last(pipe), plenum);
        var throttle = PipeOf(Tract.Straight(manifold.ThrottleLength, Math.Sqrt(4 / Math.PI * manifold.ThrottleArea), manifold.ThrottleLength / FewestCells), fresh, air.Air, "throttle");
        _network.Add(throttle);
        _network.Join(PipeEnd.First(throttle), plenum);
        _network.Join(PipeEnd.Last(throttle), air);
    }

    private void JoinExhausts(EngineDesign design, IReadOnlyList<int> order, Room behind, PerfectGas spent, GasAtRest start)
    {
        if (design.FiringOrder is null || design.Collector is not { Primaries: > 1 } collector)
        {
            foreach (var pipe in ExhaustPipes) _network.Join(PipeEnd.Last(pipe), behind);
            return;
        }

        if (order.Count % collector.Primaries != 0)
            throw new ArgumentException($"{order.Count} exhaust pipes cannot meet {collector.Primaries} at a time.", nameof(design));
        var groups = order.Count / collector.Primaries;
        for (var g = 0; g < groups; g++)
        {
            var tract = Tract.Straight(collector.Length, collector.Diameter, design.Exhaust.Tract.CellLength) with
            {
                EndCorrection = EndCorrection.Plain(collector.Diameter / 2),
                WallTemperature = design.Exhaust.Tract.WallTemperature,
                Roughness = design.Exhaust.Tract.Roughness,
            };
            var pipe = PipeOf(tract, spent, start, $"collector {g + 1}");
            _network.Add(pipe);
            _network.JoinAtOnePoint([PipeEnd.First(pipe), .. Enumerable.Range(0, collector.Primaries).Select(k => PipeEnd.Last(ExhaustPipes[order[g + k * groups] - 1]))]);
            _network.Join(PipeEnd.Last(pipe), behind);
        }
    }
}
