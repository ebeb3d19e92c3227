namespace Portwright.Engine.Cylinder;

/// <summary>The gas in one cylinder, everywhere alike, moved on in small steps.</summary>
/// <remarks>
/// First law for mass m, internal energy U and burnt mass: dU = enthalpy in - p dV + heat set free - heat to the walls. A step is the explicit midpoint rule (second-order Runge-Kutta): pressure and
/// heat to the walls are taken half a step ahead. What flows in and what burns enter as their sums over the step, so mass and energy close to rounding whatever the step.
/// No step allocates. Crank angle: 0 is top dead centre of gas exchange, 2 pi that of firing.
/// </remarks>
public sealed class CylinderGas
{
    private const double Cycle = 4 * Math.PI;

    private readonly CylinderPlan _plan;
    private readonly double _speed, _meanPistonSpeed, _wallFactor;
    private double _wallRate, _freshAtStart, _share;
    private (double Pressure, double Volume, double Temperature) _atClosing;
    private (double Step, double Volume, double Share) _ahead;
    private ValveFlow _rate;
    private CylinderState _state;
    private bool _shut;

    /// <param name="revolutionsASecond">1/s, above zero.</param>
    /// <param name="crank">Where to start, rad. A charge that is burning there burns no further.</param>
    /// <param name="pressure">Pa, above zero.</param>
    /// <param name="temperature">K, above zero.</param>
    /// <param name="burnt">Mass fraction, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside the range given.</exception>
    public CylinderGas(CylinderPlan plan, double revolutionsASecond, double crank, double pressure, double temperature, double burnt = 0)
    {
        ArgumentNullException.ThrowIfNull(plan);
        this._plan = plan;
        var turns = Require.Positive(revolutionsASecond, nameof(revolutionsASecond), "1/s");
        (_speed, _meanPistonSpeed) = (2 * Math.PI * turns, 2 * plan.Space.Crank.Stroke * turns);
        _wallFactor = plan.WallHeatScale * Woschni.OfBore(plan.Space.Bore);
        Require.Positive(pressure, nameof(pressure), "Pa");
        Require.Positive(temperature, nameof(temperature), "K");
        Require.Between(burnt, 0, 1, nameof(burnt), "(no unit)");
        if (!double.IsFinite(crank)) Require.Refuse(crank, nameof(crank), "a finite number, in rad");
        Crank = crank - Cycle * Math.Floor(crank / Cycle);
        var volume = plan.Space.Volume(Crank);
        Mass = pressure * volume / (plan.Gas.GasConstant(burnt) * temperature);
        BurntMass = burnt * Mass;
        Energy = Mass * plan.Gas.InternalEnergy(temperature, burnt);
        _state = new(pressure, temperature, burnt, volume);
        _share = plan.Burn?.At(Crank) ?? 0;
        Close();
        _shut = plan.IsShut(Crank);
        _wallRate = HeatToWalls(_state);
        Totals = new() { PeakPressure = pressure };
    }

    /// <summary>rad, 0 to 4 pi.</summary>
    public double Crank { get; private set; }

    /// <summary>kg.</summary>
    public double Mass { get; private set; }

    /// <summary>kg.</summary>
    public double BurntMass { get; private set; }

    /// <summary>Internal energy, J, zero of enthalpy at 298.15 K.</summary>
    public double Energy { get; private set; }

    /// <summary>At <see cref="Crank"/>.</summary>
    public CylinderState State => _state;

    /// <summary>At the end of the step in which the intake last closed; before that, the state the cylinder started from.</summary>
    public TrappedCharge Trapped { get; private set; }

    /// <summary>Sums since the start or since <see cref="ClearTotals"/>.</summary>
    public CylinderTotals Totals { get; private set; }

    public void ClearTotals() => Totals = new() { PeakPressure = _state.Pressure };

    /// <summary>Half a step ahead, by the flow of the last step: what a valve sees in the middle of the step.</summary>
    /// <param name="step">s, above zero. A <see cref="Step"/> of the same length uses part of what was found here.</param>
    public CylinderState Midway(double step)
    {
        var half = 0.5 * step;
        return Half(step, new(_rate.Mass * half, _rate.Enthalpy * half, _rate.BurntMass * half), _state.Temperature);
    }

    /// <summary>Moves on by a step.</summary>
    /// <param name="step">s, above zero.</param>
    /// <param name="flow">Through all valves, over the whole step.</param>
    /// <exception cref="ArithmeticException">More flowed out than was there.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public void Step(double step, in ValveFlow flow)
    {
        Require.Positive(step, nameof(step), "s");
        var midway = Half(step, new(0.5 * flow.Mass, 0.5 * flow.Enthalpy, 0.5 * flow.BurntMass), _state.Temperature);
        double next = Crank + _speed * step, nextVolume = _plan.Space.Volume(next), nextShare = _plan.Burn?.At(next) ?? 0;
        var burns = Burns(nextShare);
        double fuel = burns * _plan.FuelPerFresh, set = burns * _plan.HeatOfFresh;
        double work = midway.Pressure * (nextVolume - _state.Volume), toWalls = HeatToWalls(midway), lost = toWalls * step;

        Mass += flow.Mass + fuel;
        Energy += flow.Enthalpy + set - work - lost;
        if (!(Mass > 0)) throw new ArithmeticException($"The cylinder is empty at {Crank} rad: the step of {step} s is too long.");
        BurntMass = Math.Clamp(BurntMass + flow.BurntMass + burns + fuel, 0, Mass);
        _state = Of(Mass, Energy, BurntMass, nextVolume, 2 * midway.Temperature - _state.Temperature);
        var middle = 0.5 * (Crank + next);
        Add(work, middle < Math.PI || middle >= 3 * Math.PI, lost, set, burns, fuel, flow);
        (Crank, _wallRate, _share) = (next, toWalls, nextShare);
        var perTime = 1 / step;
        _rate = new(flow.Mass * perTime, flow.Enthalpy * perTime, flow.BurntMass * perTime);
        _ahead = default;
        if (Crank >= Cycle)
        {
            Crank -= Cycle;
            _share = _plan.Burn?.At(Crank) ?? 0;
        }

        var now = _plan.IsShut(Crank);
        if (now && !_shut) Close();
        _shut = now;
    }

    private CylinderState Half(double step, in ValveFlow flow, double guess)
    {
        if (_ahead.Step != step)
        {
            var crank = Crank + 0.5 * _speed * step;
            _ahead = (step, _plan.Space.Volume(crank), _plan.Burn?.At(crank) ?? 0);
        }

        var burns = Burns(_ahead.Share);
        var energy = Energy + flow.Enthalpy + burns * _plan.HeatOfFresh - _state.Pressure * (_ahead.Volume - _state.Volume) - 0.5 * step * _wallRate;
        var fuel = burns * _plan.FuelPerFresh;
        return Of(Mass + flow.Mass + fuel, energy, BurntMass + flow.BurntMass + burns + fuel, _ahead.Volume, guess);
    }

    private CylinderState Of(double mass, double energy, double burntMass, double volume, double guess)
    {
        var burnt = Math.Clamp(burntMass / mass, 0, 1);
        var temperature = _plan.Gas.Temperature(energy / mass, burnt, Math.Clamp(guess, 50, 6000));
        return new(mass * _plan.Gas.GasConstant(burnt) * temperature / volume, temperature, burnt, volume);
    }

    /// <summary>Fresh gas that burns from now until a share of it is burnt, kg.</summary>
    private double Burns(double until)
    {
        if (until <= _share) return 0;
        if (_share == 0) _freshAtStart = Mass - BurntMass;
        return Math.Min(_freshAtStart * (until - _share), Math.Max(0, Mass - BurntMass));
    }

    private void Add(double work, bool pumping, double lost, double set, double burns, double fuel, in ValveFlow flow)
    {
        var sum = Totals;
        Totals = new()
        {
            Work = sum.Work + work,
            PumpingWork = pumping ? sum.PumpingWork + work : sum.PumpingWork,
            HeatToWalls = sum.HeatToWalls + lost,
            HeatSetFree = sum.HeatSetFree + set,
            Mass = sum.Mass + flow.Mass,
            Enthalpy = sum.Enthalpy + flow.Enthalpy,
            BurntMass = sum.BurntMass + flow.BurntMass,
            FreshThatBurnt = sum.FreshThatBurnt + burns,
            FuelMass = sum.FuelMass + fuel,
            PeakPressure = Math.Max(sum.PeakPressure, _state.Pressure),
        };
    }

    private void Close()
    {
        _atClosing = (_state.Pressure, _state.Volume, _state.Temperature);
        Trapped = new(Mass, _state);
    }

    /// <summary>W.</summary>
    private double HeatToWalls(in CylinderState gas)
    {
        if (_plan.Walls is not { } walls) return 0;
        var space = _plan.Space;
        var gasSpeed = !_shut ? Woschni.GasExchange * _meanPistonSpeed
            : _plan.Burn is { } burn && Crank >= burn.Start
                ? Woschni.BurningSpeed(_meanPistonSpeed, space.Displacement, gas.Pressure, Woschni.MotoredPressure(gas.Volume, _atClosing), _atClosing)
                : Woschni.Closed * _meanPistonSpeed;
        return _wallFactor * Woschni.WithoutBore(gas.Pressure, gas.Temperature, gasSpeed)
            * (space.HeadArea * (gas.Temperature - walls.Head) + space.PistonCrownArea * (gas.Temperature - walls.Piston)
                + space.SleeveArea(gas.Volume) * (gas.Temperature - walls.Sleeve));
    }
}
