using Portwright.Engine.Gas.Lanes;

namespace Portwright.Engine.Gas;

/// <summary>One pipe full of gas, in cells. It moves only as part of a <see cref="PipeNetwork"/>.</summary>
public sealed unsafe class Pipe
{
    /// <summary>Prandtl number of air and burnt gas in the heat analogy: 0.71 (common practice).</summary>
    private const double Prandtl = 0.71;

    private readonly double? _fixedFriction;

    /// <param name="shape">Sections and cells.</param>
    /// <param name="gas">The gas, with constant specific heats.</param>
    /// <param name="wall">Friction, bends and heat; null is a smooth wall that passes no heat.</param>
    /// <param name="name">For messages.</param>
    /// <exception cref="ArgumentOutOfRangeException">A wall's figure is below zero.</exception>
    public Pipe(PipeShape shape, PerfectGas gas, PipeWall? wall = null, string name = "pipe")
    {
        wall ??= PipeWall.Smooth;
        (Shape, Gas, Wall, Name) = (shape, gas, wall, name);
        Require.NotNegative(wall.Roughness, nameof(wall.Roughness), "m");
        Require.NotNegative(wall.BendLoss, nameof(wall.BendLoss), "dynamic heads");
        _fixedFriction = wall.FrictionFactor is { } f ? Require.NotNegative(f, nameof(wall.FrictionFactor), "(no unit)") : null;
        var wallTemperature = wall.Temperature is { } t ? Require.Positive(t, nameof(wall.Temperature), "K") : 0;
        Memory = new(shape.Cells);
        // Reynolds' analogy as Chilton and Colburn give it: St Pr^(2/3) = f/8 (Ind. Eng. Chem. 26 (1934) 1183-1187).
        var heatPerFriction = wall.Temperature is null ? 0 : Math.Pow(Prandtl, -2.0 / 3);
        Numbers = new(gas.HeatCapacityRatio, gas.GasConstant, shape.CellLength, gas.HeatCapacity * wallTemperature, heatPerFriction);

        for (var i = 0; i <= Cells; i++) Memory[PipeMemory.FaceArea][i] = shape.FaceAreas[i];
        for (var i = 0; i < Cells; i++)
        {
            double volume = shape.Volumes[i], diameter = Math.Sqrt(4 / Math.PI * volume / shape.CellLength);
            Memory[PipeMemory.InverseVolume][i] = 1 / volume;
            Memory[PipeMemory.AreaSlope][i] = (shape.FaceAreas[i + 1] - shape.FaceAreas[i]) * shape.CellLength / volume;
            Memory[PipeMemory.Diameter][i] = diameter;
            Memory[PipeMemory.HalfPerDiameter][i] = 0.5 / diameter;
            Memory[PipeMemory.RoughnessTerm][i] = WallFriction<OneLane>.RoughnessTerm(wall.Roughness, diameter);
            Memory[PipeMemory.Bend][i] = 0.5 * wall.BendLoss / shape.Length;
            Memory[PipeMemory.Friction][i] = (_fixedFriction ?? 0) * 0.5 / diameter + Memory[PipeMemory.Bend][i];
            Memory[PipeMemory.Heat][i] = (_fixedFriction ?? 0) * 0.5 / diameter * heatPerFriction;
        }

        Fill(gas.State(101_325, 293.15));
    }

    public string Name { get; }

    public PipeShape Shape { get; }

    public PerfectGas Gas { get; }

    public PipeWall Wall { get; }

    public int Cells => Shape.Cells;

    /// <summary>The gas in a cell, counted from the first end.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such cell, or a density or pressure that is not above zero is put into it.</exception>
    public GasState this[int cell]
    {
        get
        {
            Check(cell);
            return new(Memory[PipeMemory.Density][cell], Memory[PipeMemory.Velocity][cell], Memory[PipeMemory.Pressure][cell], Memory[PipeMemory.Burnt][cell]);
        }

        set
        {
            Check(cell);
            Require.Positive(value.Density, nameof(value.Density), "kg/m3");
            Require.Positive(value.Pressure, nameof(value.Pressure), "Pa");
            double* u = Memory[Memory.Now] + cell;
            var stride = Memory[Memory.Now + 1] - Memory[Memory.Now];
            u[0] = value.Density;
            u[stride] = value.Density * value.Velocity;
            u[2 * stride] = value.Pressure / (Gas.HeatCapacityRatio - 1) + 0.5 * value.Density * value.Velocity * value.Velocity;
            u[3 * stride] = value.Density * value.Burnt;
            Restate(cell);
        }
    }

    /// <summary>Mass of gas in the pipe, kg.</summary>
    public double Mass => Content(0);

    /// <summary>Internal and kinetic energy in the pipe, J.</summary>
    public double Energy => Content(2);

    /// <summary>Mass of burnt gas in the pipe, kg.</summary>
    public double BurntMass => Content(3);

    internal PipeMemory Memory { get; }

    internal PipeNumbers Numbers { get; }

    /// <summary>Fastest wave in the pipe, m/s.</summary>
    internal double Fastest { get; set; }

    /// <summary>Friction follows the gas, and is worth working out anew from time to time.</summary>
    internal bool FrictionFollowsGas => _fixedFriction is null;

    /// <summary>Distance of a cell's middle from the first end, m.</summary>
    public double Position(int cell) => (cell + 0.5) * Shape.CellLength;

    /// <summary>Fills the whole pipe with gas of one state.</summary>
    public void Fill(GasState state)
    {
        for (var i = 0; i < Cells; i++) this[i] = state;
    }

    /// <summary>Works out the gas of all cells again from what is conserved, after a step was thrown away.</summary>
    internal void Restate()
    {
        for (var i = 0; i < Cells; i++) Restate(i);
    }

    private void Restate(int cell)
    {
        double density = Memory[Memory.Now][cell], momentum = Memory[Memory.Now + 1][cell], energy = Memory[Memory.Now + 2][cell];
        var velocity = momentum / density;
        var pressure = (Gas.HeatCapacityRatio - 1) * (energy - 0.5 * momentum * velocity);
        var sound = Math.Sqrt(Gas.HeatCapacityRatio * pressure / density);
        Memory[PipeMemory.Density][cell] = density;
        Memory[PipeMemory.Velocity][cell] = velocity;
        Memory[PipeMemory.Pressure][cell] = pressure;
        Memory[PipeMemory.Burnt][cell] = Memory[Memory.Now + 3][cell] / density;
        Memory[PipeMemory.Sound][cell] = sound;
        Fastest = Math.Max(cell == 0 ? 0 : Fastest, Math.Abs(velocity) + sound);
    }

    private double Content(int quantity)
    {
        var sum = 0.0;
        for (var i = 0; i < Cells; i++) sum += Memory[Memory.Now + quantity][i] * Shape.Volumes[i];
        return sum;
    }

    private void Check(int cell)
    {
        if ((uint)cell >= (uint)Cells) throw new ArgumentOutOfRangeException(nameof(cell), cell, $"{nameof(cell)} must be 0 to {Cells - 1}.");
    }
}
