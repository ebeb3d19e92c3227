using Portwright.Engine.Gas.Ends;

namespace Portwright.Reference.Gas;

/// <summary>What a plain open end does with sound: Levine, Schwinger, Phys. Rev. 73 (1948) 383-406.</summary>
public sealed class OpenEndSoundChecks
{
    public static TheoryData<PublishedCase> Pitches => [.. PublishedCases.Read("gas-dynamics", "open-reflection-")];

    [Theory, MemberData(nameof(Pitches))]
    public void Sound_of_each_pitch_comes_back_as_published(PublishedCase c)
    {
        var end = PlainEndSound.At(c.In("ka"));
        c.Check("reflection", end.Reflection);
        c.Check("end_correction_over_radius", end.CorrectionOverRadius);
        c.Check("power_radiated", end.Radiated);
    }

    [Fact]
    public void Long_waves_find_the_published_length_and_the_printed_one_within_a_thousandth()
    {
        var c = PublishedCases.Read("gas-dynamics", "open-end-correction-limit").Single();
        c.Check("end_correction_over_radius", PlainEndSound.At(0).CorrectionOverRadius);
        c.Check("end_correction_over_radius", EndCorrection.Plain(1), 1e-3);
    }

    /// <summary>A 50 mm pipe at 343 m/s up to 400 Hz: what the pipes' own open end leaves out.</summary>
    [Fact]
    public void Constant_length_and_full_reflection_hold_for_an_engine_s_lower_orders()
    {
        var end = PlainEndSound.At(2 * Math.PI * 400 * 0.025 / 343);
        Assert.InRange(end.Reflection, 0.98, 1);
        Assert.InRange(EndCorrection.Plain(1) / end.CorrectionOverRadius, 1, 1.03);
    }
}
