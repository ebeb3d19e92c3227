using CsCheck;
using Portwright.Engine.Cam;
using Portwright.Physics.Crank;

namespace Portwright.Engine.Tests.Cam;

public sealed class LiftTableTests
{
    private const double Degree = Math.PI / 180;

    /// <summary>Rows of a hump with uneven spacing and rounded lifts.</summary>
    private static readonly Gen<(double[] Crank, double[] Lift)> AnyTable = Gen.Select(
        Gen.Double[0.5, 12].Array[12, 60], Gen.Double[0.006, 0.016], Gen.Double[0.8, 3]).Select((steps, top, power) =>
        {
            double[] crank = new double[steps.Length], lift = new double[steps.Length];
            for (var i = 1; i < steps.Length; i++) crank[i] = crank[i - 1] + steps[i] * Degree;
            for (var i = 1; i + 1 < steps.Length; i++) lift[i] = Math.Round(top * Math.Pow(Math.Sin(Math.PI * crank[i] / crank[^1]), power), 5);
            return (crank, lift);
        }).Where(t => t.Item2.Skip(1).SkipLast(1).All(l => l > 0));

    private static ValveLift From((double[] Crank, double[] Lift) table)
    {
        var lift = ValveLift.FromTable(table.Crank, table.Lift, out var problem);
        Assert.Null(problem);
        return lift!;
    }

    [Fact]
    public void Curve_passes_every_row_and_never_its_neighbours() => Gen.Select(AnyTable, Gen.Double[0, 1]).Sample((table, share) =>
    {
        var lift = From(table);
        for (var i = 0; i < table.Crank.Length; i++)
        {
            Assert.Equal(table.Lift[i], lift.At(table.Crank[i]), 1e-15);
            if (i == 0) continue;
            var between = lift.At(table.Crank[i - 1] + share * (table.Crank[i] - table.Crank[i - 1]));
            Assert.InRange(between, Math.Min(table.Lift[i - 1], table.Lift[i]) - 1e-15, Math.Max(table.Lift[i - 1], table.Lift[i]) + 1e-15);
        }
    });

    [Fact]
    public void Acceleration_has_no_step_at_any_row() => AnyTable.Sample(table =>
    {
        var lift = From(table);
        foreach (var at in table.Crank)
        {
            Assert.Equal(lift.Speed(at - 1e-9), lift.Speed(at + 1e-9), 1e-7);
            // Over 2e-9 rad the steepest acceleration of a table changes by a few 1e-5 m/rad2; a step would be a thousand times that.
            Assert.Equal(lift.Acceleration(at - 1e-9), lift.Acceleration(at + 1e-9), 1e-4 * (1 + Math.Abs(lift.Acceleration(at))));
        }
    });

    [Fact]
    public void Table_read_off_a_lobe_gives_the_lobe_back()
    {
        var lobe = ValveLift.OfIntake(new CamCard(9e-3, 280 * Degree, 230 * Degree, 110 * Degree) { RockerRatio = 1.5 }, out _)!;
        double Off(double step)
        {
            List<double> crank = [], rows = [];
            for (var at = -80.0; at <= 300; at += step) (crank, rows) = ([.. crank, at * Degree], [.. rows, lobe.At(at * Degree)]);
            var again = From(([.. crank], [.. rows]));
            return Enumerable.Range(0, 3000).Max(i => Math.Abs(again.At((-80 + i * 0.1266) * Degree) - lobe.At((-80 + i * 0.1266) * Degree)));
        }

        double coarse = Off(4), fine = Off(2);
        Assert.True(fine < 2e-6, $"{fine}");
        Assert.True(fine < coarse / 4, $"{coarse} {fine}");
    }

    [Fact]
    public void Lash_and_ratio_turn_a_lobe_table_into_the_valve()
    {
        double[] crank = [0, 0.5, 1, 1.5, 2, 2.5, 3], lobe = [0, 0.001, 0.004, 0.007, 0.004, 0.001, 0];
        var lift = ValveLift.FromTable(crank, lobe, out _, 1.6, 0.0004)!;
        Assert.Equal(0.007 * 1.6 - 0.0004, lift.Highest, 1e-15);
        Assert.Equal(0.004 * 1.6 - 0.0004, lift.At(1), 1e-15);
        Assert.True(lift.Opens > 0 && lift.Closes < 3);
        Assert.Equal(3 - lift.Opens, lift.Closes, 1e-9);
        Assert.Equal(0, lift.At(lift.Opens), 1e-15);
    }

    [Fact]
    public void Table_that_cannot_be_is_refused_with_the_cure()
    {
        static void Refused(double[] crank, double[] lift, string says)
        {
            Assert.Null(ValveLift.FromTable(crank, lift, out var problem));
            Assert.Contains(says, problem, StringComparison.Ordinal);
        }

        double[] five = [0, 1, 2, 3, 4];
        Refused([0, 1, 2], [0, 1e-3, 0], "five or more");
        Refused(five, [0, 1e-3, 2e-3, 1e-3], "Each row needs both");
        Refused([0, 1, 3, 2, 4], [0, 1e-3, 2e-3, 1e-3, 0], "Sort the rows");
        Refused(five, [0, 1e-3, 0.4, 1e-3, 0], "unit");
        Refused(five, [0, 0, 0, 0, 0], "never lifts");
        Refused(five, [0, 1e-3, 2e-3, 1e-3, 1e-4], "begin and end");
        Refused([0, 1, 2, 3, 4, 5], [0, 1e-3, 0, 1e-3, 1e-3, 0], "opens it again");
        Refused([0, 1, 2, 3, 13], [0, 1e-3, 2e-3, 1e-3, 0], "a cycle has 720");
    }

    [Fact]
    public void Closeness_to_the_piston_is_the_least_of_all_angles()
    {
        var lift = ValveLift.OfIntake(new CamCard(9e-3, 280 * Degree, 230 * Degree, 104 * Degree) { RockerRatio = 1.5 }, out _)!;
        var crank = new SliderCrank(0.088, 0.145);
        var gap = PistonGap.Least(lift, crank, 0.006, 15 * Degree);
        Assert.InRange(gap.Crank, 0, 30 * Degree);
        for (var at = -90.0; at <= 90; at += 0.37)
            Assert.True(0.006 + crank.FromTop(at * Degree) - lift.At(at * Degree) * Math.Cos(15 * Degree) >= gap.Gap - 1e-12);
        Assert.Equal(gap.Gap - 0.001, PistonGap.Least(lift, crank, 0.005, 15 * Degree).Gap, 1e-12);
        // The same lobe opened earlier comes closer.
        var early = ValveLift.OfIntake(new CamCard(9e-3, 280 * Degree, 230 * Degree, 98 * Degree) { RockerRatio = 1.5 }, out _)!;
        Assert.True(PistonGap.Least(early, crank, 0.006, 15 * Degree).Gap < gap.Gap);
    }
}
