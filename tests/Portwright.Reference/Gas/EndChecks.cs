using Portwright.Engine.Gas;
using Portwright.Engine.Gas.Ends;
using Portwright.Engine.Gas.Lanes;

namespace Portwright.Reference.Gas;

/// <summary>Pipe ends against exact solutions: closed (Liepmann, Roshko 1957), open and valve (Benson 1982; Winterbone, Pearson 2000), junction.</summary>
public sealed class EndChecks
{
    public static TheoryData<PublishedCase> Reflections => [.. PublishedCases.Read("gas-dynamics", "shock-reflection-")];

    public static TheoryData<PublishedCase> OpenEnds => [.. PublishedCases.Read("gas-dynamics", "open-end-").Where(c => c.Inputs.ContainsKey("pressure_ratio"))];

    public static TheoryData<PublishedCase> Valves => [.. PublishedCases.Read("gas-dynamics", "valve-pipe-")];

    public static TheoryData<PublishedCase> Junctions => [.. PublishedCases.Read("gas-dynamics", "junction-")];

    [Theory, MemberData(nameof(Reflections))]
    public void Shock_is_reflected_by_a_closed_end_as_published(PublishedCase c)
    {
        double k = c.In("gamma"), before = 1, sound = Math.Sqrt(k);
        var p2 = c.Expected["p2_over_p1"]!.GetValue<double>();
        var gas = WaveCurve<OneLane>.Across(1, before, sound, k, p2);
        c.Check("gas_speed_over_c1", gas.Change / sound);
        c.Check("p5_over_p1", ClosedEnd.Pressure(gas.Density, gas.Change, p2, k));
    }

    [Theory, MemberData(nameof(OpenEnds))]
    public void Pipe_opened_to_the_room_blows_as_published(PublishedCase c)
    {
        double k = c.In("gamma"), room = c.In("room_pressure_pa"), rt = c.In("gas_constant_j_kg_k") * c.In("temperature_k"), p = room * c.In("pressure_ratio");
        var (mass, momentum, _) = Solve<OneLane>(p / rt, 0, p, k, room, room / rt, 1, 1);
        c.Check("mass_flux_kg_m2_s", mass);
        // Momentum and mass flow together give velocity once the pressure is known.
        var exit = c.Expected["exit_pressure_pa"]!.GetValue<double>();
        c.Check("exit_velocity_m_s", (momentum - exit) / mass, 1e-8);
    }

    [Theory, MemberData(nameof(Valves))]
    public void Valve_fills_a_still_pipe_as_published(PublishedCase c)
    {
        double k = c.In("gamma"), r = c.In("gas_constant_j_kg_k"), p = c.In("pipe_pressure_pa"), p0 = c.In("cylinder_pressure_pa");
        var rest = p0 / (r * c.In("cylinder_temperature_k"));
        var share = c.In("effective_area_over_pipe_area");
        var (mass, momentum, energy) = Solve<OneLane>(p / (r * c.In("pipe_temperature_k")), 0, p, k, p0, rest, share, 0);
        c.Check("mass_flux_on_pipe_area_kg_m2_s", -mass);
        var end = c.Expected["pipe_pressure_pa"]!.GetValue<double>();
        c.Check("velocity_m_s", (momentum - end) / -mass, 1e-6);
        Assert.Equal(k / (k - 1) * r * c.In("cylinder_temperature_k"), energy / mass, 1e-6);
    }

    /// <summary>Simple waves come in: each pipe's gas just before the junction carries one, and the junction sends another back.</summary>
    [Theory, MemberData(nameof(Junctions))]
    public void Junction_at_one_pressure_is_as_published(PublishedCase c)
    {
        double k = c.In("gamma"), p0 = c.In("reference_pressure_pa"), c0 = c.In("reference_sound_m_s");
        double[] areas = c.List("area_mm2"), waves = c.List("x_in");
        var flows = new EndFlow[areas.Length];

        double WaveAtJunction(double size)
        {
            var branches = areas.Select((area, i) =>
            {
                var x = 1 + size * (waves[i] - 1);
                var density = k * p0 / (c0 * c0) * Math.Pow(x, 2 / (k - 1));
                return new Junction.Branch(new(density, 2 * c0 / (k - 1) * (x - 1), p0 * Math.Pow(x, 2 * k / (k - 1))), area * 1e-6, k);
            }).ToArray();
            return Math.Pow(Junction.Solve(branches, flows) / p0, (k - 1) / (2 * k)) - 1;
        }

        // The published model gives every pipe gas of one entropy back; a mixture that keeps its energy is warmer, and the junction's wave stronger, by the
        // square of the waves: up to a tenth at Mach 0.7, nothing for small ones.
        var published = c.Expected["x_junction"]!.GetValue<double>() - 1;
        Assert.Equal(1, WaveAtJunction(1e-4) / (1e-4 * published), 2e-4);
        Assert.Equal(1, WaveAtJunction(1e-3) / (1e-3 * published), 2e-3);
        Assert.InRange(WaveAtJunction(1) / published, 1, 1.15);
        Assert.Equal(0, flows.Select((f, i) => f.Mass * areas[i]).Sum(), 1e-13 * flows.Max(f => Math.Abs(f.Mass)) * areas.Max());
        Assert.Equal(0, flows.Select((f, i) => f.Energy * areas[i]).Sum(), 1e-13 * flows.Max(f => Math.Abs(f.Energy)) * areas.Max());
    }

    private static unsafe (double Mass, double Momentum, double Energy) Solve<T>(
        double density, double velocity, double pressure, double k, double restPressure, double restDensity, double shareIn, double shareOut)
        where T : struct, ILanes<T>
    {
        var rows = new OpeningRows(1);
        rows[OpeningRows.Density][0] = density;
        rows[OpeningRows.Velocity][0] = velocity;
        rows[OpeningRows.Pressure][0] = pressure;
        rows[OpeningRows.K][0] = k;
        rows[OpeningRows.RestPressure][0] = restPressure;
        rows[OpeningRows.RestDensity][0] = restDensity;
        rows[OpeningRows.ShareIn][0] = shareIn;
        rows[OpeningRows.ShareOut][0] = shareOut;
        Openings<T>.Solve(rows);
        return (rows[OpeningRows.Mass][0], rows[OpeningRows.Momentum][0], rows[OpeningRows.Energy][0]);
    }
}
