using CsCheck;
using Portwright.Engine.Gas.Ends;
using Portwright.Engine.Gas.Lanes;
using Portwright.Physics.TestPiece;

namespace Portwright.Engine.Tests.Gas;

public sealed unsafe class OpeningTests
{
    /// <summary>Shut, just off its seat, or any share of the pipe's section.</summary>
    private static readonly Gen<double> Share = Gen.OneOf(Gen.Const(0.0), Gen.Double[-8, 0].Select(e => Math.Pow(10, e)), Gen.Double[0, 1], Gen.Double[0.9, 1], Gen.Const(1.0));

    private static readonly Gen<double[]> Case = Gen.Select(
        Gen.Double[0.2, 3], Gen.Double[-300, 300], Gen.Double[4e4, 5e5], Gen.Double[1.25, 1.42],
        Gen.Select(Gen.Double[4e4, 8e5], Gen.Double[0.2, 3], Share, Share)).Select((r, u, p, k, rest) =>
            new[] { r, u, p, k, rest.Item1, rest.Item2, rest.Item3, rest.Item4 });

    [Fact]
    public void Eight_ends_side_by_side_are_each_solved_as_if_alone() => Case.Array[8].Sample(cases =>
    {
        var together = Rows(cases);
        Openings<EightLanes>.Solve(together);
        for (var i = 0; i < 8; i++)
        {
            var alone = Rows([cases[i]]);
            Openings<OneLane>.Solve(alone);
            // The search ends when all of a vector's ends stand still: one alone may end a move earlier. A hair short of the whole section the balance all but touches zero, and a move there counts for more.
            Assert.Equal(alone[OpeningRows.Mass][0], together[OpeningRows.Mass][i], 1e-7 * cases[i][2] / 300);
            Assert.Equal(alone[OpeningRows.Momentum][0], together[OpeningRows.Momentum][i], 1e-7 * cases[i][2]);
        }
    }, iter: 2_000);

    /// <summary>The nozzle of the flow bench and the valve of the engine are one formula.</summary>
    [Fact]
    public void A_choked_valve_passes_what_the_nozzle_of_its_effective_area_passes() =>
        Gen.Select(Gen.Double[4e5, 9e5], Gen.Double[400, 1500], Gen.Double[0.01, 0.1]).Sample((p0, t0, share) =>
        {
            var rest = p0 / (287.05 * t0);
            var rows = Rows([[1.1, 0, 1e5, 1.4, p0, rest, share, 0]]);
            Openings<OneLane>.Solve(rows);
            Assert.Equal(1, -rows[OpeningRows.Mass][0] / (share * Nozzle.MassFlux(p0, rest, 1.4, 0)), 1e-9);
        });

    [Fact]
    public void A_shut_opening_passes_nothing_either_way() => Case.Sample(c =>
    {
        c[6] = c[7] = 0;
        var rows = Rows([c]);
        Openings<OneLane>.Solve(rows);
        Assert.Equal(0, rows[OpeningRows.Mass][0]);
        Assert.Equal(1, rows[OpeningRows.Momentum][0] / ClosedEnd.Pressure(c[0], c[1], c[2], c[3]), 1e-9);
    });

    /// <summary>Gas runs from the higher pressure, a closed end's against the reservoir's, and never more of it than through the free end.</summary>
    [Fact]
    public void More_area_passes_more_gas_the_way_pressure_says() => Case.Sample(c =>
    {
        double Flow(double share)
        {
            var d = (double[])c.Clone();
            d[6] = d[7] = share;
            var rows = Rows([d]);
            Openings<OneLane>.Solve(rows);
            return rows[OpeningRows.Mass][0];
        }

        double[] flows = [Flow(0.1), Flow(0.4), Flow(0.7), Flow(1)];
        var outward = ClosedEnd.Pressure(c[0], c[1], c[2], c[3]) > c[4];
        Assert.All(flows, f => Assert.True(outward ? f >= 0 : f <= 0));
        Assert.All(flows.Zip(flows.Skip(1)), pair => Assert.True(Math.Abs(pair.First) <= Math.Abs(pair.Second) * (1 + 1e-9) + 1e-9));
    });

    private static OpeningRows Rows(double[][] cases)
    {
        var rows = new OpeningRows(cases.Length);
        for (var i = 0; i < cases.Length; i++)
            for (var row = 0; row < 8; row++) rows[row][i] = cases[i][row];
        return rows;
    }
}
