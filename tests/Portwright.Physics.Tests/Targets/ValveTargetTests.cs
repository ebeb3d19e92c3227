using CsCheck;
using Portwright.Physics.Targets;
using Portwright.Physics.Valves;

namespace Portwright.Physics.Tests.Targets;

public sealed class ValveTargetTests
{
    [Fact]
    public void Time_area_of_half_a_sine_is_its_integral()
    {
        const double from = -0.3, to = 3.9, top = 0.012, area = 0.05;
        var sum = TimeArea.AngleArea(from, to, a => top * Math.Sin(Math.PI * (a - from) / (to - from)), l => area * l);
        Assert.Equal(1, sum / (area * top * 2 / Math.PI * (to - from)), 1e-5);
        Assert.Equal(1, TimeArea.MeanArea(sum, to - from) / (area * top * 2 / Math.PI), 1e-5);
        Assert.Equal(1, TimeArea.Specific(sum, 100, 5e-4) / (sum / (200 * Math.PI) / 5e-4), 1e-14);
    }

    [Fact]
    public void More_lift_is_worth_nothing_past_the_lift_where_the_area_stands_still()
    {
        static double Area(double lift) => 0.05 * Math.Min(lift, 0.008);
        static double Of(double top) => TimeArea.AngleArea(0, 4, a => Math.Min(top, 0.008 * Math.Sin(Math.PI * a / 4) * 3), Area);
        Assert.Equal(Of(0.008), Of(0.012), 1e-15);
    }

    [Fact]
    public void Exhaust_of_three_quarters_of_the_intake_is_usual() =>
        Assert.True(NamedLimits.ExhaustOverIntake.Limits is var usual && usual.Holds(FlowBalance.Of(150, 200)) && !usual.Holds(FlowBalance.Of(120, 200)) && !usual.Holds(FlowBalance.Of(170, 200)));

    [Fact]
    public void Power_of_eight_ports_of_250_cfm_is_500_horsepower_at_the_low_end()
    {
        var power = FlowBalance.Power(250 * 4.719474432e-4, 8);
        Assert.Equal(500 * 745.69987, power.Low, 1);
        Assert.Equal(520 * 745.69987, power.High, 1);
    }

    [Fact]
    public void Curtain_equals_the_head_at_a_quarter_of_the_diameter()
    {
        var seat = new ValveSeat(0.051, Math.PI / 4, 0.0015, 0.045, 0.008);
        Assert.Equal(Math.PI / 4 * 0.051 * 0.051, ValveWindow.At(seat, NamedLimits.CurtainEqualsHead.Limits.Middle * 0.051).CurtainArea, 1e-15);
        Assert.True(NamedLimits.ThroatOverValve.Limits.Holds(ThroatShare.Of(0.045, 0.051)));
    }

    [Fact]
    public void Vessel_with_a_short_neck_sounds_as_a_lump_and_never_higher() =>
        Gen.Select(Gen.Double[1e-4, 1e-2], Gen.Double[1e-4, 3e-3], Gen.Double[0.01, 1]).Sample((volume, area, length) =>
        {
            double lump = VesselResonance.Lumped(volume, area, length, 340), pipe = VesselResonance.WithPipe(volume, area, length, 340), share = area * length / volume;
            Assert.True(pipe < lump);
            // tan x = x + x^3/3 + ...: the first correction is share/6.
            if (share < 0.05) Assert.Equal(share / 6, lump / pipe - 1, 0.3 * share * share + 1e-12);
        });

    [Fact]
    public void Runner_rules_turn_round() => Gen.Select(Gen.Double[0.1, 1], Gen.Double[20, 150]).Sample((length, speed) =>
    {
        Assert.Equal(1, RunnerTuning.EchoLength(RunnerTuning.EchoRevolutionsASecond(length, 340), 340) / length, 1e-12);
        Assert.Equal(1, RunnerTuning.VesselLength(5e-4, 10, 1.2e-3, RunnerTuning.VesselRevolutionsASecond(5e-4, 10, 1.2e-3, length, 340), 340) / length, 1e-12);
        // An echo that takes a quarter turn comes from the runner whose note swings four times in a cycle.
        Assert.Equal(4, RunnerTuning.SwingsACycle(RunnerTuning.EchoLength(speed, 340), 340, speed), 1e-12);
    });

    [Fact]
    public void Volume_of_an_even_port_is_section_times_length_and_turns_round() =>
        Gen.Select(Gen.Double[5e-4, 3e-3], Gen.Double[5e-4, 3e-3], Gen.Double[0.03, 0.2]).Sample((flange, throat, length) =>
        {
            Assert.Equal(1, PortVolume.Frustum(throat, throat, length) / (throat * length), 1e-12);
            Assert.Equal(1, PortVolume.FlangeFor(PortVolume.Frustum(flange, throat, length), throat, length) / flange, 1e-9);
        });

    [Fact]
    public void Every_target_says_what_it_rests_on()
    {
        var rules = typeof(TargetRule).Assembly.GetExportedTypes().SelectMany(t => t.GetFields()).Where(f => f.FieldType == typeof(TargetRule))
            .Select(f => (TargetRule)f.GetValue(null)!).ToList();
        Assert.Equal(14, rules.Select(r => r.Name).Distinct().Count());
        foreach (var rule in rules)
        {
            Assert.True(rule.Source.Length > 10 && rule.Caution.Length > 10, rule.Name);
            Assert.Equal(rule.Basis == TargetBasis.CommonPractice, rule.Source.Contains("common practice", StringComparison.OrdinalIgnoreCase));
            // What was put together here does not call itself published, and where a citation came from is no porter's business.
            Assert.Equal(rule.Basis == TargetBasis.WorkedOut, rule.Source.Contains("worked out here", StringComparison.Ordinal));
            Assert.DoesNotContain("memory", rule.Source + rule.Caution, StringComparison.OrdinalIgnoreCase);
        }
    }
}
