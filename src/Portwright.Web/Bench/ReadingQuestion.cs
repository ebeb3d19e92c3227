using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Trials;
using Portwright.Shop.Units;

namespace Portwright.Web.Bench;

/// <summary>What is asked about a reading just saved that stands far off the curve.</summary>
internal static class ReadingQuestion
{
    /// <summary>The sentence; null where the reading fits.</summary>
    /// <param name="before">The job without the reading.</param>
    /// <param name="after">The job with it.</param>
    public static string? Of(Reductions before, Reductions after, Guid sweepId, Guid reading, UnitSystem units)
    {
        var sofar = before.Of(before.Ledger.Get<Sweep>(sweepId)).Curve;
        var sweep = after.Ledger.Get<Sweep>(sweepId);
        var curve = after.Of(sweep).Curve;
        if (curve.Points.SelectMany(p => p.Readings).FirstOrDefault(r => r.Reading.Id == reading) is not { } one)
        {
            return null;
        }

        if (UnderTheLeak.Words(one.Reading.Fact, one.Lift, one.EffectiveArea) is { } under)
        {
            return under;
        }

        var flow = RestatedFlow.VolumeFlow(one.EffectiveArea.Value, curve.RestatedAt, curve.Air, curve.Direction);
        var earlier = SweepStanding.Earlier(after, sweep)?.Curve;
        return TypingSlip.Ask(sofar, earlier, one.Lift, flow) is { } slip
            ? $"{Print.Number(slip.Flow, Dimension.VolumeFlow, units, 0)} is far off the curve (expected about {Print.Bare(slip.Expected, Dimension.VolumeFlow, units, 0)}). Keep it, or type it again."
            : null;
    }
}
