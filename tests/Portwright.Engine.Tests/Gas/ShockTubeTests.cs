using Portwright.Engine.Gas;
using Portwright.Reference.Gas;

namespace Portwright.Engine.Tests.Gas;

/// <summary>Toro's five problems (Toro 2009, section 4.3.3) against their exact solutions, 100 to 3,200 cells.</summary>
public sealed class ShockTubeTests(ITestOutputHelper output)
{
    private static readonly (GasState Left, GasState Right, double Time)[] Problems =
    [
        (new(1, 0, 1), new(0.125, 0, 0.1), 0.25),
        (new(1, -2, 0.4), new(1, 2, 0.4), 0.15),
        (new(1, 0, 1000), new(1, 0, 0.01), 0.012),
        (new(1, 0, 0.01), new(1, 0, 100), 0.035),
        (new(5.99924, 19.5975, 460.894), new(5.99242, -6.19633, 46.095), 0.035),
    ];

    /// <summary>A scheme of second order brings shocks in with order 1 and contacts with 2/3; the near-vacuum of problem 2 is the slowest.</summary>
    [Theory]
    [InlineData(1, 3e-4, 0.80)]
    [InlineData(2, 8e-4, 0.58)]
    [InlineData(3, 7e-3, 0.75)]
    [InlineData(4, 8e-3, 0.72)]
    [InlineData(5, 3e-2, 0.64)]
    public void Grids_run_to_the_exact_solution(int problem, double finest, double order)
    {
        int[] grids = [100, 200, 400, 800, 1600, 3200];
        var errors = grids.Select(cells => Error(Problems[problem - 1], cells)).ToArray();
        for (var i = 0; i < grids.Length; i++)
            output.WriteLine($"{grids[i]} cells: mean error of density {errors[i]:E3}" + (i > 0 ? $", order {Math.Log2(errors[i - 1] / errors[i]):F2}" : ""));
        Assert.All(errors.Zip(errors.Skip(1)), pair => Assert.True(pair.Second < pair.First));
        Assert.True(errors[^1] < finest, $"{errors[^1]:E3}");
        Assert.True(Math.Log2(errors[0] / errors[^1]) / 5 > order);
    }

    /// <summary>Two streams part: between them pressure falls to a two-hundredth, and further still where they part faster. Toro problem 2 and beyond.</summary>
    [Theory]
    [InlineData(2.0)]
    [InlineData(3.5)]
    [InlineData(3.7)]
    public void Streams_that_part_leave_a_near_vacuum_that_stays_above_zero(double speed)
    {
        GasState left = new(1, -speed, 0.4), right = left with { Velocity = speed };
        var (network, pipe) = Tubes.Endless(200, x => x < 0.5 ? left : right);
        var exact = new ExactRiemann(left, right, 1.4);
        for (var time = 0.0; time < 0.1;)
        {
            time += network.Step();
            for (var i = 0; i < pipe.Cells; i++) Assert.True(pipe[i].Density > 0 && pipe[i].Pressure > 0);
        }

        output.WriteLine($"exact star pressure {exact.StarPressure:E2}, least met {Enumerable.Range(0, 200).Min(i => pipe[i].Pressure):E2}, flat steps {network.FlatSteps}");
    }

    private static double Error((GasState Left, GasState Right, double Time) problem, int cells)
    {
        var (left, right, time) = problem;
        var (network, pipe) = Tubes.Endless(cells, x => x < 0.5 ? left : right);
        network.Run(time);
        var exact = new ExactRiemann(left, right, 1.4);
        // A cell holds a mean: the exact solution over it by nine points.
        return Tubes.Sum(cells, i => Math.Abs(pipe[i].Density
            - Tubes.Sum(9, k => exact.At((pipe.Position(i) + (k - 4) / 9.0 / cells - 0.5) / time).Density) / 9)) / cells;
    }
}
