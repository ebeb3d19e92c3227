using Portwright.Engine.Gas.Ends;
using Portwright.Physics.Crank;
using Portwright.Physics.Targets;
using Portwright.Physics.Valves;

namespace Portwright.Reference.Engines;

/// <summary>What an engine asks of its ports: Heywood (1988), equations 2.5 and 2.11; Levine, Schwinger (1948); Kinsler et al. (2000), ch. 10; facts of the trade.</summary>
public sealed class TargetChecks
{
    public static TheoryData<PublishedCase> Cranks => [.. PublishedCases.Read("valve-port-engine", "crank-")];

    public static TheoryData<PublishedCase> Quarters => [.. PublishedCases.Read("valve-port-engine", "quarter-")];

    public static TheoryData<PublishedCase> Vessels => [.. PublishedCases.Read("gas-dynamics", "helmholtz-")];

    [Theory, MemberData(nameof(Cranks))]
    public void Piston_is_where_and_as_fast_as_published(PublishedCase c)
    {
        var crank = new SliderCrank(c.In("stroke_mm") * 1e-3, c.In("rod_mm") * 1e-3);
        var angle = c.In("crank_deg") * Math.PI / 180;
        c.Check("piston_from_tdc_mm", crank.FromTop(angle) * 1e3);
        c.Check("speed_ratio", crank.SpeedOverMean(angle));
    }

    [Theory, MemberData(nameof(Quarters))]
    public void Shut_runner_sounds_at_the_published_note(PublishedCase c) =>
        c.Check("frequency_hz", RunnerTuning.QuarterWave(c.In("length_m") + EndCorrection.Plain(c.In("radius_m")), c.In("sound_m_s")));

    [Theory, MemberData(nameof(Vessels))]
    public void Vessel_with_a_neck_sounds_at_the_published_notes(PublishedCase c)
    {
        var d = c.In("neck_diameter_m");
        var length = c.In("neck_length_m") + d / 2 * (c.In("end_correction_inside_over_r") + c.In("end_correction_outside_over_r"));
        c.Check("effective_length_m", length);
        c.Check("lumped_hz", VesselResonance.Lumped(c.In("volume_m3"), Math.PI / 4 * d * d, length, c.In("sound_m_s")));
        c.Check("pipe_hz", VesselResonance.WithPipe(c.In("volume_m3"), Math.PI / 4 * d * d, length, c.In("sound_m_s")));
    }

    /// <summary>The figures of the trade stand in the table as words; what the program says must be in them.</summary>
    [Fact]
    public void Facts_of_the_trade_are_those_of_the_table()
    {
        static string Words(string id) => PublishedCases.Read("valve-port-engine", "practice-" + id).Single().Quantity;
        static string Number(double value) => value.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains(NamedLimits.ThroatOverValve.Said, Words("throat_share"), StringComparison.Ordinal);
        Assert.Contains(NamedLimits.ExhaustOverIntake.Said, Words("exhaust_intake"), StringComparison.Ordinal);
        Assert.Contains($"lift/diameter {NamedLimits.CurtainEqualsHead.Said}", Words("curtain_equals_throat"), StringComparison.Ordinal);
        Assert.Contains(NamedLimits.InletMachKnee.Said, Words("mach_knee"), StringComparison.Ordinal);
        double hp = 745.69987158227022, cfm = 4.719474432e-4;
        Assert.Contains($"{Number(FlowBalance.PowerPerFlow.Low * cfm / hp)} to {Number(FlowBalance.PowerPerFlow.High * cfm / hp)} hp", Words("power_per_cfm"), StringComparison.Ordinal);
    }
}
