using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Reduction;

public sealed class ValveCheckTests
{
    private const double Degree = Math.PI / 180;

    private static readonly ValveData Sound = new(0.0504, 45 * Degree, 0.0015, 0.0440, 0.0080);

    [Fact]
    public void A_sound_valve_is_left_in_peace()
    {
        Assert.Null(ValveCheck.Of(Sound));
        Assert.Null(ValveCheck.Of(Sound with { StemDiameter = 0, SeatWidth = 0 }));
        Assert.Null(ValveCheck.Of(Sound with { ThroatDiameter = Sound.HeadDiameter }));
        Assert.Null(ValveCheck.Of(Sound with { SeatAngle = 20 * Degree }));
        Assert.Null(ValveCheck.Of(Sound with { SeatAngle = 70 * Degree }));
    }

    [Fact]
    public void What_no_valve_can_be_is_named_with_its_value_and_the_cure()
    {
        Wrong(Sound with { ThroatDiameter = 0.0505 }, "throat", "The throat, 1.988 in, is wider than its valve, 1.984 in");
        Wrong(Sound with { SeatAngle = 19.9 * Degree }, "angle", "The seat angle, 19.9°, is outside 20 to 70 degrees");
        Wrong(Sound with { SeatAngle = 70.1 * Degree }, "angle", "The seat angle, 70.1°, is outside 20 to 70 degrees");
        Wrong(Sound with { StemDiameter = 0.0440 }, "stem", "The stem, 1.732 in, is no thinner than the throat it stands in, 1.732 in");
        Wrong(Sound with { SeatWidth = 0.0252 }, "width", "The seat width, .992 in, leaves nothing of a valve of 1.984 in");
        Wrong(Sound with { HeadDiameter = 0 }, "head", "The valve head, .000 in, is no diameter");
        Wrong(Sound with { ThroatDiameter = 0 }, "throat", "The throat, .000 in, is no diameter");

        static void Wrong(ValveData valve, string field, string words)
        {
            var problem = ValveCheck.Of(valve)!;
            Assert.Equal(field, problem.Field);
            Assert.StartsWith(words, problem.Words.Us(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_record_that_has_such_a_valve_keeps_its_sheet_and_is_told()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        bench.Read(bench.Sweep(bench.Cut(0)), 0.005, 0.0004);
        var port = bench.Ledger.Get<Port>(bench.PortId);
        foreach (var wrong in new[] { Sound with { ThroatDiameter = 0.055 }, Sound with { StemDiameter = 0.05 }, Sound with { SeatAngle = 1.5 } })
        {
            bench.Put(Amend.Correct(port, port.Fact with { Valve = wrong }, SimulatedBench.Morning, ""));
            var sheet = PortSheet.Of(bench.Ledger, bench.PortId);
            Assert.Empty(sheet.Windows);
            Assert.Null(sheet.ThroatTakesOver);
            Assert.Single(sheet.Remarks, r => r.Us().StartsWith(ValveCheck.Of(wrong)!.Words.Us(), StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_stem_that_stands_in_no_throat_costs_no_sheet()
    {
        var bench = new SimulatedBench(Ranges.OfEachKind[1]);
        bench.Read(bench.Sweep(bench.Cut(0)), 0.005, 0.0004);
        var port = bench.Ledger.Get<Port>(bench.PortId);
        bench.Put(Amend.Correct(port, port.Fact with { Valve = Sound with { StemDiameter = 0 } }, SimulatedBench.Morning, ""));
        var window = Assert.Single(PortSheet.Of(bench.Ledger, bench.PortId).Windows);
        Assert.True(double.IsFinite(window.OfWindow.StandardUncertainty));
    }
}
