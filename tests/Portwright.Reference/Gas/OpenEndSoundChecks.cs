using Portwright.Engine.Gas.Ends;

namespace Portwright.Reference.Gas;

/// <summary>What a plain open end does with sound: Levine, Schwinger, Phys. Rev. 73 (1948) 383-406. The pipes' own open end sends all back, from one length out.</summary>
public sealed class OpenEndSoundChecks
{
    [Fact]
    public void Long_waves_find_the_printed_length_within_a_thousandth_of_the_published_one() =>
        PublishedCases.Read("gas-dynamics", "open-end-correction-limit").Single().Check("end_correction_over_radius", EndCorrection.Plain(1), 1e-3);

    /// <summary>Up to ka = 2 pi f r/c of 0.2: a 50 mm pipe at 343 m/s to 440 Hz.</summary>
    [Fact]
    public void Constant_length_and_full_reflection_hold_for_an_engine_s_lower_orders()
    {
        foreach (var c in PublishedCases.Read("gas-dynamics", "open-reflection-").Where(c => c.In("ka") <= 0.2))
        {
            c.Check("reflection", 1, 0.02);
            c.Check("end_correction_over_radius", EndCorrection.Plain(1), 0.012);
        }
    }
}
