using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;
using Portwright.Physics.TestPiece;

namespace Portwright.Reference.Gas;

/// <summary>Steady flow that the pipe solver settles to: nozzles (Anderson 1995 chapter 7; NPARC archive), friction (Shapiro 1953 chapter 6), heat (chapter 7).</summary>
public sealed class SteadyPipeChecks
{
    public static TheoryData<PublishedCase> Nozzles => [.. PublishedCases.Read("gas-dynamics", "nozzle-1d-"), .. PublishedCases.Read("gas-dynamics", "nozzle-cdv-")];

    public static TheoryData<PublishedCase> FannoPipes => [.. PublishedCases.Read("gas-dynamics", "fanno-pipe-")];

    public static TheoryData<PublishedCase> FannoTable =>
        [.. PublishedCases.Read("gas-dynamics", "fanno-more-").Where(c => c.In("mach") is > 0.2 and < 1), .. PublishedCases.Read("valve-port-engine", "fanno-").Where(c => c.In("mach") > 0.15)];

    public static TheoryData<PublishedCase> RayleighPipes => [.. PublishedCases.Read("gas-dynamics", "rayleigh-pipe-")];

    public static TheoryData<PublishedCase> RayleighTable =>
        [.. PublishedCases.Read("gas-dynamics", "rayleigh-").Where(c => !c.Id.StartsWith("rayleigh-pipe", StringComparison.Ordinal) && c.In("mach") is > 0.12 and < 1)];

    [Theory, MemberData(nameof(Nozzles))]
    public void Nozzle_settles_to_the_published_flow(PublishedCase c)
    {
        const int cells = 300;
        var long10 = c.Id.StartsWith("nozzle-cdv", StringComparison.Ordinal);
        double length = long10 ? 10 : 3, k = c.In("gamma");
        Func<double, double> area = long10
            ? x => x < 5 ? 1.75 - 0.75 * Math.Cos((0.2 * x - 1) * Math.PI) : 1.25 - 0.25 * Math.Cos((0.2 * x - 1) * Math.PI)
            : x => 1 + (x <= 1.5 || c.Text("regime") != "subsonic" ? 2.2 : 0.2223) * (x - 1.5) * (x - 1.5);
        var gas = new PerfectGas(k, 1);
        var pipe = new Pipe(PipeShape.Of(length, cells, area), gas);
        var back = c.Inputs.ContainsKey("exit_pressure_over_p0") ? c.In("exit_pressure_over_p0") : 0.01;
        for (var i = 0; i < cells; i++) pipe[i] = gas.State(1 - (1 - Math.Max(back, 0.1)) * pipe.Position(i) / length, 1);
        var mouth = Opening.Free();
        new PipeNetwork().Add(pipe)
            .Join(PipeEnd.First(pipe), new Room(new(1, 1)), mouth)
            .Join(PipeEnd.Last(pipe), new Room(new(back, 1)))
            .Run(long10 ? 500 : 150);

        var mass = c.Expected["mass_flow_parameter"]!.GetValue<double>();
        Assert.Equal(1, mouth.MassFlow / mass, 5e-5);
        double[] x = c.List("x"), shock = c.Expected.ContainsKey("shock_x") ? [c.Expected["shock_x"]!.GetValue<double>()] : [];
        var worst = 0.0;
        for (var i = 1; i < x.Length - 1; i++)
        {
            // A shock is two or three cells wide.
            if (shock.Any(s => Math.Abs(x[i] - s) < 4 * pipe.Shape.CellLength)) continue;
            var mach = c.Expected["mach"]!.AsArray()[i]!.GetValue<double>();
            var off = Math.Abs(At(pipe, x[i], s => s.Mach(k)) / mach - 1);
            // At the archive's nozzle's throat the area's curvature jumps, and with it the slope of Mach number between two cells.
            worst = Math.Max(worst, long10 && x[i] == 5 ? off / 20 : off);
        }

        Assert.True(worst < 3e-4, $"{c.Id}: Mach off by {worst:E2}");
        if (shock.Length == 0) return;
        // The shock stands where Mach falls through one behind the throat.
        var last = Enumerable.Range(0, cells).Last(i => pipe[i].Mach(k) > 1);
        Assert.Equal(shock[0], pipe.Position(last), 2 * pipe.Shape.CellLength);
    }

    [Theory, MemberData(nameof(FannoPipes))]
    public void Flow_with_friction_from_a_plenum_settles_to_the_published_one(PublishedCase c)
    {
        double k = c.In("gamma"), d = c.In("diameter_m");
        var gas = new PerfectGas(k, c.In("gas_constant_j_kg_k"));
        var pipe = new Pipe(PipeShape.Straight(c.In("length_m"), 100, d), gas, new(0, FrictionFactor: 4 * c.In("fanning_f")));
        pipe.Fill(gas.State(c.In("back_pressure_pa"), c.In("T0_k")));
        var mouth = Opening.Free();
        new PipeNetwork().Add(pipe)
            .Join(PipeEnd.First(pipe), new Room(new(c.In("p0_pa"), c.In("T0_k"))), mouth)
            .Join(PipeEnd.Last(pipe), new Room(new(c.In("back_pressure_pa"), 293.15)))
            .Run(0.2);

        c.Check("mass_flow_kg_s", mouth.MassFlow, 2e-4);
        var x = c.List("x_m");
        for (var i = 1; i < x.Length - 1; i++)
        {
            Assert.Equal(1, At(pipe, x[i], s => s.Mach(k)) / c.Expected["mach"]!.AsArray()[i]!.GetValue<double>(), 4e-4);
            Assert.Equal(1, At(pipe, x[i], s => s.Pressure) / c.Expected["pressure_pa"]!.AsArray()[i]!.GetValue<double>(), 4e-4);
        }
    }

    /// <summary>A pipe just as long as the table says for a Mach number at its mouth chokes at its far end when blown into a vacuum.</summary>
    [Theory, MemberData(nameof(FannoTable))]
    public void Longest_pipe_for_a_mach_number_is_as_in_the_table(PublishedCase c)
    {
        const double d = 0.04, friction = 0.02, p0 = 200_000, t0 = 300;
        var length = c.Expected["four_f_l_over_d"]!.GetValue<double>() * d / friction;
        var gas = PerfectGas.Air;
        var pipe = new Pipe(PipeShape.Straight(length, 64, d), gas, new(0, FrictionFactor: friction));
        pipe.Fill(gas.State(p0 * 0.6, t0));
        var mouth = Opening.Free();
        new PipeNetwork().Add(pipe)
            .Join(PipeEnd.First(pipe), new Room(new(p0, t0)), mouth)
            .Join(PipeEnd.Last(pipe), new Room(new(1_000, t0)))
            .Run(Math.Max(0.02, 15 * length / gas.SoundSpeed(t0)));
        var mach = c.In("mach");
        var published = pipe.Shape.FaceAreas[0] * p0 * mach * Math.Sqrt(1.4 / (287.05 * t0)) * Math.Pow(IsentropicFlow.TemperatureRatio(mach, 1.4), 3);
        Assert.Equal(1, mouth.MassFlow / published, 2e-3);
    }

    /// <summary>Gas given just as much heat as the table says for a Mach number at the pipe's mouth chokes at its far end when blown into a vacuum.</summary>
    [Theory, MemberData(nameof(RayleighTable))]
    public unsafe void Most_heat_for_a_mach_number_is_as_in_the_table(PublishedCase c)
    {
        const int cells = 100;
        const double p0 = 200_000, t0 = 300, wall = 1e9;
        var gas = PerfectGas.Air;
        var heat = gas.HeatCapacity * t0 * (1 / c.Expected["T0_over_T0star"]!.GetValue<double>() - 1);
        var pipe = new Pipe(PipeShape.Straight(0.5, cells, 0.04), gas, new(0, FrictionFactor: 0, Temperature: wall));
        for (var i = 0; i < cells; i++) pipe.Memory[PipeMemory.Heat][i] = heat / (gas.HeatCapacity * wall * 0.5);
        pipe.Fill(gas.State(p0 * 0.6, t0));
        var mouth = Opening.Free();
        new PipeNetwork().Add(pipe)
            .Join(PipeEnd.First(pipe), new Room(new(p0, t0)), mouth)
            .Join(PipeEnd.Last(pipe), new Room(new(1_000, t0)))
            .Run(0.05);
        var mach = c.In("mach");
        var published = pipe.Shape.FaceAreas[0] * p0 * mach * Math.Sqrt(1.4 / (287.05 * t0)) * Math.Pow(IsentropicFlow.TemperatureRatio(mach, 1.4), 3);
        Assert.Equal(1, mouth.MassFlow / published, 2e-3);
        Assert.Equal(1, At(pipe, 0, s => s.Mach(1.4)) / mach, 1e-2);
    }

    /// <summary>The wall heats or cools evenly along the pipe; friction is taken out, which no real wall can do.</summary>
    [Theory, MemberData(nameof(RayleighPipes))]
    public unsafe void Flow_with_heat_settles_to_the_published_one(PublishedCase c)
    {
        const int cells = 100;
        double k = c.In("gamma"), m = c.In("mach"), t = c.In("temperature_k"), p = c.In("pressure_pa"), q = c.In("heat_j_kg");
        var gas = new PerfectGas(k, c.In("gas_constant_j_kg_k"));
        // Far hotter than the gas, so that every kilogram is given the same; a cooling wall is one of negative conductance.
        const double wall = 1e9;
        var pipe = new Pipe(PipeShape.Straight(0.5, cells, 0.04), gas, new(0, FrictionFactor: 0, Temperature: wall));
        for (var i = 0; i < cells; i++) pipe.Memory[PipeMemory.Heat][i] = q / (gas.HeatCapacity * wall * 0.5);
        var ratio = IsentropicFlow.TemperatureRatio(m, k);
        double t0 = t / ratio, p0 = p / IsentropicFlow.PressureRatio(m, k);
        pipe.Fill(gas.State(p, t));
        new PipeNetwork().Add(pipe)
            .Join(PipeEnd.First(pipe), new Room(new(p0, t0)))
            .Join(PipeEnd.Last(pipe), new Room(new(c.Expected["pressure_out_pa"]!.GetValue<double>(), t0)))
            .Run(0.2);
        var end = At(pipe, 0.5, s => s.Mach(k));
        c.Check("mach_out", end, 1e-3);
        c.Check("temperature_out_k", At(pipe, 0.5, s => gas.Temperature(s)), 1e-3);
        Assert.Equal(m, At(pipe, 0, s => s.Mach(k)), 1e-3 * m);
    }

    /// <summary>Value at a place, in a straight line between the nearest two cells.</summary>
    private static double At(Pipe pipe, double x, Func<GasState, double> of)
    {
        var cell = Math.Clamp((int)Math.Floor(x / pipe.Shape.CellLength - 0.5), 0, pipe.Cells - 2);
        var share = (x - pipe.Position(cell)) / pipe.Shape.CellLength;
        return (1 - share) * of(pipe[cell]) + share * of(pipe[cell + 1]);
    }
}
