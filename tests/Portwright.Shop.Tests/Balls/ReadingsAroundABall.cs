using Portwright.Physics.TestPiece;
using Portwright.Shop.Balls;
using Portwright.Shop.Record;
using Portwright.Shop.Survey;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Balls;

/// <summary>What a ball takes is counted from the readings without it around its own, the bench's drift between them taken out.</summary>
public sealed class ReadingsAroundABall
{
    /// <summary>Flow without the ball rises from 1000 to 1030 mm2 over three readings: at the first ball it is 1010, at the second 1020.</summary>
    [Fact]
    public void Between_two_readings_without_it_the_drift_is_taken_out_by_their_order()
    {
        var places = Reduced((null, 1000), (12, 1000), (6, 1000), (null, 1030)).Places;
        Assert.Equal(0.010 / 1.010, places[0].Fall.Value, 1e-6);
        Assert.Equal(0.020 / 1.020, places[1].Fall.Value, 1e-6);
    }

    /// <summary>1005 mm2 on the mean half a reading after the first, 1030 at the fourth: 1020 at the ball; or 1010 at the first, 1030 half a reading after the third: 1018. Nothing read without the ball is thrown away.</summary>
    [Fact]
    public void Readings_without_it_in_a_row_count_together()
    {
        Assert.Equal(0.020 / 1.020, Reduced((null, 1000), (null, 1010), (12, 1000), (null, 1030)).Places[0].Fall.Value, 1e-6);
        Assert.Equal(0.018 / 1.018, Reduced((null, 1010), (12, 1000), (null, 1025), (null, 1035)).Places[0].Fall.Value, 1e-6);
        Assert.True(Reduced((null, 1000), (null, 1000), (12, 980), (null, 1000), (null, 1000)).Places[0].Fall.StandardUncertainty
            < 0.95 * Reduced((null, 1000), (12, 980), (null, 1000)).Places[0].Fall.StandardUncertainty);
    }

    [Fact]
    public void With_one_reading_without_it_before_or_after_that_one_counts()
    {
        Assert.Equal(0.02, Reduced((null, 1000), (12, 980)).Places[0].Fall.Value, 1e-6);
        Assert.Equal(0.02, Reduced((12, 980), (null, 1000)).Places[0].Fall.Value, 1e-6);
        Assert.Equal(0.03, Reduced((null, 1000), (12, 990), (null, 1000), (6, 970)).Places[1].Fall.Value, 1e-6);
    }

    [Fact]
    public void One_reading_without_it_is_asked_to_be_two()
    {
        Assert.Contains(Reduced((null, 1000), (12, 980)).Remarks, r => r.Contains("Read once more without it", StringComparison.Ordinal));
        Assert.DoesNotContain(Reduced((null, 1000), (12, 980), (null, 1000)).Remarks, r => r.Contains("Read once more without it", StringComparison.Ordinal));
        Assert.Null(Reduced((null, 1000), (12, 980)).Drift);
        Assert.Equal(30e-6, Reduced((null, 1000), (12, 980), (null, 1030)).Drift!.Of.Value, 1e-9);
    }

    [Fact]
    public void Without_a_reading_without_it_nothing_is_said_of_the_ball()
    {
        Assert.Empty(Reduced((12, 980)).Places);
        Assert.Contains(Reduced((12, 980)).Remarks, r => r.StartsWith("No reading without the ball", StringComparison.Ordinal));
        // A check nothing was read for yet is no mistake.
        Assert.DoesNotContain(Reduced().Remarks, r => r.StartsWith("No reading without the ball", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_without_the_ball_that_is_no_flow_does_not_count()
    {
        Assert.Contains(Reduced((null, -5), (12, 980), (null, 1000)).Remarks, r => r.Contains("is no flow and does not count", StringComparison.Ordinal));
        Assert.Equal(0.02, Reduced((null, -5), (12, 980), (null, 1000)).Places[0].Fall.Value, 1e-6);
    }

    /// <summary>A ball bought to size is doubted by two in a thousand of its diameter; drag goes with the square of it, so its due by twice that, and half as much again where it fills a good part of the section.</summary>
    [Fact]
    public void A_ball_is_doubted_by_two_thousandths_of_its_diameter()
    {
        var due = Reduced((null, 1000), (12, 980), (null, 1000)).Places[0].Response!.Expected.Fall;
        Assert.InRange(Math.Abs(due.Contributions.Single(c => c.Source == "ball 0.012700").Amount) / due.Value, 0.0046, 0.0054);
    }

    private static ReducedBallCheck Reduced(params (double? Bearing, double SquareMillimetres)[] read)
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[7]) { LeakArea = 2e-5 };
        var cut = bench.Cut(0);
        var sweep = bench.Sweep(cut);
        bench.ReadLeak(sweep);
        bench.Read(sweep, 0.005, 0.0008);
        bench.Read(sweep, 0.010, 0.0010);
        var station = bench.Add(new Station(bench.PortId, "C", 0.045));
        bench.Add(new Section(cut, station, SectionForm.Rectangle, [Typed.Of(32, "mm"), Typed.Of(46, "mm"), Typed.Of(10, "mm")]));
        var check = bench.Add(new BallCheck(cut, new BenchSetting(bench.BenchId, FlowDirection.Draw, Typed.Of(0.010, "m"), Typed.Of(28, "inH2O"), bench.Range.Name), Typed.Of(0.5, "in"), bench.Air()));
        foreach (var (bearing, area) in read)
        {
            bench.Add(new BallReading(check, bearing is null ? null : station, bearing, bench.Shows(area / 1e6, FlowDirection.Draw)));
        }

        return PortSurvey.Of(bench.Ledger, bench.PortId).BallChecks.Single();
    }
}
