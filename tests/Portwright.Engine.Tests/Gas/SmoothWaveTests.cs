using Portwright.Engine.Gas;

namespace Portwright.Engine.Tests.Gas;

/// <summary>A pulse of finite height before it breaks: exact by its characteristics (Whitham 1974, chapter 6).</summary>
public sealed class SmoothWaveTests(ITestOutputHelper output)
{
    private const double Sound0 = 343.23197767690584, Height = 40, Width = 0.08, Centre = 0.3, Time = 0.0012;

    [Fact]
    public void Order_is_at_least_1_9()
    {
        int[] grids = [100, 200, 400, 800, 1600];
        var errors = grids.Select(Error).ToArray();
        for (var i = 0; i < grids.Length; i++)
            output.WriteLine($"{grids[i]} cells: {errors[i]:E3} Pa" + (i > 0 ? $" order {Math.Log2(errors[i - 1] / errors[i]):F2}" : ""));
        // From 200 cells on the pulse is resolved: at 100 its steep front is three cells long.
        Assert.True(Math.Log2(errors[1] / errors[^1]) / 3 >= 1.9);
        Assert.True(errors[^1] < 0.15, $"{errors[^1]}");
    }

    private static double Error(int cells)
    {
        var (network, pipe) = Tubes.Endless(cells, x => At(x, 0), PerfectGas.Air);
        network.Run(Time);
        return Tubes.Sum(cells, i => Math.Abs(pipe[i].Pressure - At(pipe.Position(i), Time).Pressure)) / cells;
    }

    private static GasState At(double x, double time)
    {
        double Start(double xi) => Height * Math.Exp(-Math.Pow((xi - Centre) / Width, 2));
        double low = x - 600 * time - 1e-12, high = x - 300 * time + 1e-12;
        for (var i = 0; i < 100; i++)
        {
            var middle = 0.5 * (low + high);
            if (middle + (Sound0 + 1.2 * Start(middle)) * time > x) high = middle;
            else low = middle;
        }

        var u = Start(0.5 * (low + high));
        var ratio = 1 + 0.2 * u / Sound0;
        return new(101_325 / (287.05 * 293.15) * Math.Pow(ratio, 5), u, 101_325 * Math.Pow(ratio, 7));
    }
}
