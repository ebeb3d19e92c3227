using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Shop.Record;

namespace Portwright.Shop.Bench;

/// <summary>What a readout in cfm shows.</summary>
public enum ReadoutMeaning
{
    /// <summary>Nobody said: shown as typed, the other meaning in the doubt.</summary>
    Unsaid,

    /// <summary>Already at 28: test pressure and standard air are taken in.</summary>
    Restated,

    /// <summary>The volume of the air as it passes the meter.</summary>
    AtMeter,
}

/// <summary>The bench of a shop that has written nothing down of it: a readout in cfm, whose meaning is asked once.</summary>
public static class StandInBench
{
    /// <summary>28 inches of water at 4 degC, Pa: what a flow is restated at; common practice, no source.</summary>
    public const double Trade = AssumedScale.TestPressure;

    /// <summary>
    /// What the other meaning is off stands for a rectangle that reaches as far to the other side (JCGM 100:2008, 4.3.7): its standard uncertainty is this share of it.
    /// </summary>
    public static double OtherMeaning { get; } = 1 / Math.Sqrt(3);

    /// <summary>Nothing is known of it but that it shows cfm: doubt is taken wide.</summary>
    public static BenchCard Card() => new("Bench", [new RangeCard("readout", Readout(ReadoutMeaning.Unsaid), "cfm", 0.1, 0.02)], [], new AirCard(), Trade, BenchDoubt.Unknown);

    /// <summary>A readout of that meaning. Until somebody says, it is taken as already restated: the number stays as it was typed.</summary>
    public static DirectCard Readout(ReadoutMeaning meaning) => meaning == ReadoutMeaning.AtMeter
        ? new DirectCard(ReadoutBasis.ActualAtMeter, new AirCard())
        : new DirectCard(ReadoutBasis.Restated, new AirCard(), Trade, meaning == ReadoutMeaning.Unsaid);

    /// <summary>A percent scale of which a porter's card says what flows at its full mark, and perhaps the test pressure it was set at.</summary>
    /// <param name="fullScale">m3/s.</param>
    /// <param name="setAt">Pa; null where nobody knows.</param>
    public static RangeCard Percent(double fullScale, double? setAt) => new("scale",
        new PercentCard(fullScale, setAt ?? AssumedScale.TestPressure, RangeScale.SquareRoot, AssumedScale.Differential, PressureAssumed: setAt is null, DifferentialAssumed: true), "%", 0.5, 0.02);

    /// <summary>The readout as physics has it.</summary>
    /// <param name="restatedAt">Pa: what a flow that is already restated was brought to.</param>
    public static DirectReadout Meter(ReadoutMeaning meaning, double restatedAt = Trade) =>
        meaning == ReadoutMeaning.AtMeter ? DirectReadout.ActualAtMeter : DirectReadout.Restated(StandardAir.Default, restatedAt);

    /// <summary>What a shown flow (m3/s) is at another test pressure in standard air, m3/s, read in a room of standard air.</summary>
    /// <param name="testPressure">It was read at, Pa.</param>
    /// <param name="at">Pa.</param>
    public static double Restated(ReadoutMeaning meaning, double shown, double testPressure, double at, FlowDirection direction) => RestatedFlow.VolumeFlow(
        TestPieceReduction.EffectiveArea(Meter(meaning, at), shown, 1, new TestConditions(StandardAir.Default.State, testPressure, direction)).EffectiveArea, at, StandardAir.Default, direction);

    /// <summary>What a range's readout is taken to show; null where it is another kind of meter, or says something else of its own.</summary>
    public static ReadoutMeaning? MeaningOf(RangeCard range)
    {
        ArgumentNullException.ThrowIfNull(range);
        return range.Meter switch
        {
            DirectCard { BasisAssumed: true } => ReadoutMeaning.Unsaid,
            DirectCard { Basis: ReadoutBasis.Restated } => ReadoutMeaning.Restated,
            DirectCard { Basis: ReadoutBasis.ActualAtMeter } => ReadoutMeaning.AtMeter,
            _ => null,
        };
    }

    /// <summary>The first readout of the card that can be asked about; null where it has none.</summary>
    public static RangeCard? Asked(BenchCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card.Ranges.FirstOrDefault(r => MeaningOf(r) == ReadoutMeaning.Unsaid) ?? card.Ranges.FirstOrDefault(r => MeaningOf(r) is not null);
    }

    /// <summary>The card with that range's readout meaning what was answered.</summary>
    public static BenchCard Answered(BenchCard card, string range, ReadoutMeaning meaning)
    {
        ArgumentNullException.ThrowIfNull(card);
        return card with { Ranges = [.. card.Ranges.Select(r => r.Name.Equals(range, StringComparison.OrdinalIgnoreCase) ? r with { Meter = Readout(meaning) } : r)] };
    }
}
