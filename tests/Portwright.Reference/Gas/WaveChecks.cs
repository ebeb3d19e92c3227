using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;

namespace Portwright.Reference.Gas;

/// <summary>Waves: finite pulses (Whitham 1974), resonance and echoes with end corrections (Levine, Schwinger 1948; Kinsler 2000), Shu and Osher (1989).</summary>
public sealed class WaveChecks
{
    private static readonly PerfectGas Gas = PerfectGas.Air;

    public static TheoryData<PublishedCase> Pulses => [.. PublishedCases.Read("gas-dynamics", "simple-wave-")];

    public static TheoryData<PublishedCase> Quarters => [.. PublishedCases.Read("valve-port-engine", "quarter-")];

    public static TheoryData<PublishedCase> Echoes => [.. PublishedCases.Read("gas-dynamics", "pulse-echo-")];

    public static TheoryData<PublishedCase> Resonators => [.. PublishedCases.Read("gas-dynamics", "helmholtz-")];

    public static TheoryData<PublishedCase> Steps => [.. PublishedCases.Read("gas-dynamics", "acoustic-step-")];

    [Theory, MemberData(nameof(Pulses))]
    public void Finite_pulse_steepens_as_published(PublishedCase c)
    {
        const int cells = 600;
        double height = c.In("velocity_amplitude_m_s"), sound = c.Expected["sound_speed_m_s"]!.GetValue<double>();
        var pipe = new Pipe(PipeShape.Straight(1.2, cells, 0.04), Gas);
        for (var i = 0; i < cells; i++)
        {
            var u = height * Math.Exp(-Math.Pow((pipe.Position(i) - c.In("centre_m")) / c.In("width_m"), 2));
            var ratio = 1 + 0.2 * u / sound;
            var p = c.In("pressure_pa") * Math.Pow(ratio, 7);
            pipe[i] = Gas.State(p, c.In("temperature_k") * ratio * ratio, u);
        }

        new PipeNetwork().Add(pipe).Run(c.In("time_s"));
        var x = c.List("x_m");
        for (var i = 0; i < x.Length; i++)
        {
            Assert.Equal(c.Expected["velocity_m_s"]!.AsArray()[i]!.GetValue<double>(), At(pipe, x[i], s => s.Velocity), 4e-3 * Math.Abs(height));
            Assert.Equal(c.Expected["pressure_pa"]!.AsArray()[i]!.GetValue<double>(), At(pipe, x[i], s => s.Pressure), 4e-3 * 16_000);
        }
    }

    [Theory, MemberData(nameof(Quarters))]
    public void Pipe_closed_at_one_end_rings_at_the_published_note(PublishedCase c)
    {
        double length = c.In("length_m"), radius = c.In("radius_m"), sound = c.In("sound_m_s"), temperature = sound * sound / (1.4 * 287.05);
        var pipe = new Pipe(PipeShape.Straight(length + EndCorrection.Plain(radius), 60, 2 * radius), Gas);
        for (var i = 0; i < 60; i++) pipe[i] = Gas.State(101_325 + 20 * Math.Cos(Math.PI / 2 * pipe.Position(i) / pipe.Shape.Length), temperature);
        var network = new PipeNetwork().Add(pipe).Join(PipeEnd.Last(pipe), new Room(new(101_325, temperature)));
        var got = Frequency(network, () => pipe[0].Pressure - 101_325, 20);
        c.Check("frequency_hz", got, 1e-3);
    }

    [Theory, MemberData(nameof(Resonators))]
    public void Vessel_with_a_neck_rings_at_the_published_note(PublishedCase c)
    {
        double radius = c.In("neck_diameter_m") / 2, sound = c.In("sound_m_s"), temperature = sound * sound / (1.4 * 287.05);
        var length = c.In("neck_length_m") + radius * (c.In("end_correction_inside_over_r") + c.In("end_correction_outside_over_r"));
        c.Check("effective_length_m", length);
        var pipe = new Pipe(PipeShape.Straight(length, 24, 2 * radius), Gas);
        pipe.Fill(Gas.State(101_325, temperature));
        var vessel = new Plenum(c.In("volume_m3"), Gas, new(101_345, temperature));
        var network = new PipeNetwork().Add(pipe)
            .Join(PipeEnd.First(pipe), vessel)
            .Join(PipeEnd.Last(pipe), new Room(new(101_325, temperature)));
        c.Check("pipe_hz", Frequency(network, () => vessel.Gas.Pressure - 101_325, 12), 5e-3);
    }

    [Theory, MemberData(nameof(Echoes))]
    public void Echoes_pass_a_point_at_the_published_times_with_the_published_signs(PublishedCase c)
    {
        double radius = c.In("radius_m"), t = c.In("temperature_k"), correction = EndCorrection.Plain(radius) * (0.6127010359298056 / 0.6133);
        var bothOpen = c.Text("left_end") == "open";
        // The pulse starts at the left end itself, not at the place where an open end is heard.
        var before = bothOpen ? correction : 0;
        var pipe = new Pipe(PipeShape.Straight(c.In("length_m") + correction + before, 600, 2 * radius), Gas);
        var width = 0.025;
        // A pulse that runs to the right: pressure and speed together.
        for (var i = 0; i < 600; i++)
        {
            var pulse = 100 * Math.Exp(-Math.Pow((pipe.Position(i) - before - 3 * width) / width, 2));
            pipe[i] = Gas.State(101_325 + pulse, t * Math.Pow(1 + pulse / 101_325, 2.0 / 7), pulse / (Gas.Density(101_325, t) * Gas.SoundSpeed(t)));
        }

        var room = new Room(new(101_325, t));
        var network = new PipeNetwork().Add(pipe).Join(PipeEnd.Last(pipe), room);
        if (bothOpen) network.Join(PipeEnd.First(pipe), room);
        double time = 3 * width / Gas.SoundSpeed(t), point = c.In("point_m") + before, last = c.Expected["passage_s"]!.AsArray()[3]!.GetValue<double>();
        List<(double Time, double Pressure)> trace = [];
        while (time < last * 1.05)
        {
            time += network.Step();
            trace.Add((time, At(pipe, point, s => s.Pressure) - 101_325));
        }

        for (var i = 0; i < 4; i++)
        {
            double at = c.Expected["passage_s"]!.AsArray()[i]!.GetValue<double>(), sign = c.Expected["sign"]!.AsArray()[i]!.GetValue<double>();
            var near = trace.Where(p => Math.Abs(p.Time - at) < 1.5e-4).MaxBy(p => sign * p.Pressure);
            Assert.True(sign * near.Pressure > 70, $"{c.Id}: passage {i} has {near.Pressure:F1} Pa");
            Assert.Equal(at, near.Time, 1e-5);
        }
    }

    [Theory, MemberData(nameof(Steps))]
    public void Small_pulse_is_split_by_a_step_of_section_as_published(PublishedCase c)
    {
        static double Diameter(double mm2) => Math.Sqrt(4 / Math.PI * mm2 * 1e-6);
        const int cells = 400;
        Pipe into = new(PipeShape.Straight(1, cells, Diameter(c.In("area_in_mm2"))), Gas), beyond = new(PipeShape.Straight(1, cells, Diameter(c.In("area_out_mm2"))), Gas);
        into.Fill(Gas.State(101_325, 293.15));
        beyond.Fill(Gas.State(101_325, 293.15));
        double sound = Gas.SoundSpeed(293.15), density = Gas.Density(101_325, 293.15), whole = 0;
        for (var i = 0; i < cells; i++)
        {
            var pulse = 20 * Math.Exp(-Math.Pow((into.Position(i) - 0.5) / 0.06, 2));
            into[i] = new(density * Math.Pow(1 + pulse / 101_325, 1 / 1.4), pulse / (density * sound), 101_325 + pulse);
            whole += pulse;
        }

        new PipeNetwork().Add(into, beyond).JoinAtOnePoint(PipeEnd.Last(into), PipeEnd.First(beyond)).Run(1.0 / sound);
        // By the pulses' sums: their peaks are rounded a little on the way.
        double Sum(Pipe pipe) => Enumerable.Range(0, cells).Sum(i => pipe[i].Pressure - 101_325);
        Assert.Equal(c.Expected["reflected"]!.GetValue<double>(), Sum(into) / whole, 1e-3);
        Assert.Equal(c.Expected["transmitted"]!.GetValue<double>(), Sum(beyond) / whole, 1e-3);
    }

    [Fact]
    public void Shock_through_a_sine_of_density_keeps_its_waves()
    {
        var c = PublishedCases.Read("gas-dynamics", "shu-osher").Single();
        const int cells = 3200;
        var gas = new PerfectGas(1.4, 1);
        var pipe = new Pipe(PipeShape.Of(10, cells, _ => 1), gas);
        for (var i = 0; i < cells; i++)
        {
            var x = pipe.Position(i) - 5;
            pipe[i] = x < -4 ? new(3.857143, 2.629369, 10.33333) : new(1 + 0.2 * Math.Sin(5 * x), 0, 1);
        }

        new PipeNetwork().Add(pipe).LeaveEndless(PipeEnd.First(pipe)).LeaveEndless(PipeEnd.Last(pipe)).Run(1.8);
        var place = c.List("x");
        for (var i = 0; i < place.Length; i++)
            Assert.Equal(1, At(pipe, place[i] + 5, s => s.Density) / c.Expected["density"]!.AsArray()[i]!.GetValue<double>(), 0.02);
    }

    /// <summary>From a number of falling passages through zero; the first four are left to the higher notes.</summary>
    private static double Frequency(PipeNetwork network, Func<double> signal, int periods)
    {
        double time = 0, before = signal();
        List<double> passages = [];
        while (passages.Count <= periods + 4)
        {
            var step = network.Step();
            time += step;
            var now = signal();
            if (before > 0 && now <= 0) passages.Add(time - step * now / (now - before));
            before = now;
        }

        return periods / (passages[^1] - passages[4]);
    }

    private static double At(Pipe pipe, double x, Func<GasState, double> of)
    {
        var cell = Math.Clamp((int)Math.Floor(x / pipe.Shape.CellLength - 0.5), 0, pipe.Cells - 2);
        var share = (x - pipe.Position(cell)) / pipe.Shape.CellLength;
        return (1 - share) * of(pipe[cell]) + share * of(pipe[cell + 1]);
    }
}
