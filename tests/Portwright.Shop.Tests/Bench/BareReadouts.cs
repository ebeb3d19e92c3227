using Portwright.Physics.Air;
using Portwright.Physics.Metering;
using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Budgets;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Bench;

/// <summary>Numbers in cfm off a readout, in a shop that has written nothing down of its bench.</summary>
public sealed class BareReadouts
{
    private static readonly DateTimeOffset Evening = new(2026, 3, 2, 19, 0, 0, TimeSpan.Zero);

    private readonly Guid _bench = Guid.NewGuid(), _job = Guid.NewGuid(), _sweep = Guid.NewGuid();
    private readonly List<Entry> _entries = [];

    [Fact]
    public void Until_somebody_says_the_number_stands_as_typed_and_the_other_meaning_lies_in_its_doubt()
    {
        Read(194.9, 28, FlowDirection.Draw);
        var (unsaid, restated, atMeter) = (Flow(), Flow(ReadoutMeaning.Restated), Flow(ReadoutMeaning.AtMeter));
        Assert.Equal(194.9, Cfm(unsaid.Value), 1e-9);
        Assert.Equal(194.9, Cfm(restated.Value), 1e-9);
        Assert.Equal(181.5, Cfm(atMeter.Value), 0.05);
        Assert.InRange(atMeter.Value, unsaid.Value - unsaid.Expanded(), unsaid.Value);
        // What it costs is the whole way between the two over the root of three, and nothing else changes.
        var cost = unsaid.StandardUncertainty * unsaid.StandardUncertainty - restated.StandardUncertainty * restated.StandardUncertainty;
        Assert.Equal((unsaid.Value - atMeter.Value) / Math.Sqrt(3), Math.Sqrt(cost), unsaid.Value * 1e-6);
    }

    [Theory]
    [InlineData(FlowDirection.Draw, -1)]
    [InlineData(FlowDirection.Blow, 1)]
    public void At_another_test_pressure_a_readout_that_is_restated_stays_what_it_shows_and_what_passes_the_meter_is_brought_to_28(FlowDirection direction, int over)
    {
        Read(88.0, 10, direction);
        Assert.Equal(88.0, Cfm(Flow().Value), 1e-9);
        Assert.Equal(88.0, Cfm(Flow(ReadoutMeaning.Restated).Value), 1e-9);
        // The plenum's air is thinner or thicker than the room's by the test pressure; its volume holds so much standard air.
        var standard = 88.0 * CubicFoot * (1 + over * 10 * UnitFactors.InchOfWater / 101_325);
        var brought = RestatedFlow.VolumeFlow(RestatedFlow.EffectiveAreaFrom(standard, 10 * UnitFactors.InchOfWater, StandardAir.Default, direction), StandInBench.Trade, StandardAir.Default, direction);
        Assert.Equal(brought, Flow(ReadoutMeaning.AtMeter).Value, brought * 1e-4);
        Assert.InRange(Flow(ReadoutMeaning.AtMeter).Value, 0, Flow().Value + Flow().Expanded());
        foreach (var meaning in new[] { ReadoutMeaning.Restated, ReadoutMeaning.AtMeter })
        {
            Assert.Equal(Flow(meaning).Value, StandInBench.Restated(meaning, 88.0 * CubicFoot, 10 * UnitFactors.InchOfWater, StandInBench.Trade, direction), 1e-12);
        }
    }

    [Fact]
    public void It_is_asked_until_it_is_answered_and_a_changed_answer_is_told_with_what_it_was_before()
    {
        Read(194.9, 28, FlowDirection.Draw);
        Assert.Contains(Remarks(), r => r.StartsWith("Nobody has said whether the readout of range readout is already at 28", StringComparison.Ordinal));
        Answer(ReadoutMeaning.Restated, 5);
        Assert.DoesNotContain(Remarks(), r => r.Contains("readout of range", StringComparison.Ordinal));
        Answer(ReadoutMeaning.AtMeter, 9);
        Assert.Contains("Until 2026-03-02 19:09 the readout of range readout was taken to show the flow already at 28; now it shows what passes the meter, and every reading on it is worked out anew, the earlier ones too.", Remarks());
        Assert.Equal(181.5, Cfm(Flow().Value), 0.05);
        Answer(ReadoutMeaning.Restated, 12);
        Assert.Contains("Until 2026-03-02 19:12 the readout of range readout was taken to show what passes the meter; now it shows the flow already at 28, and every reading on it is worked out anew, the earlier ones too.", Remarks());
    }

    [Fact]
    public void The_cause_stands_in_the_budget_in_one_sentence_and_two_lifts_share_it()
    {
        Read(194.9, 28, FlowDirection.Draw);
        Read(150.2, 28, FlowDirection.Draw, 0.3);
        var points = SweepReduction.Reduce(Ledger, Ledger.Get<Sweep>(_sweep)).Curve.Points;
        string[] Causes(Estimate of) => [.. of.Contributions.Where(c => c.Source.StartsWith("assumed ", StringComparison.Ordinal)).Select(c => c.Source)];
        Assert.Equal(Causes(points[0].EffectiveArea), Causes(points[1].EffectiveArea));
        var said = new SourceWords(Ledger, Guid.Empty).Of(Assert.Single(Causes(points[0].EffectiveArea)))!;
        Assert.Equal("whether the readout is already at 28 or shows what passes the meter, which nobody has said", said.Words.In(UnitSystem.UsCustomary));
        Assert.True(Estimate.Ratio(points[1].Flow, points[0].Flow) is var ratio && ratio.StandardUncertainty / ratio.Value < 0.02);
    }

    [Fact]
    public void Only_a_readout_in_question_is_asked_about()
    {
        var card = StandInBench.Card();
        Assert.Equal(ReadoutMeaning.Unsaid, StandInBench.MeaningOf(StandInBench.Asked(card)!));
        Assert.Equal(ReadoutMeaning.AtMeter, StandInBench.MeaningOf(StandInBench.Answered(card, "READOUT", ReadoutMeaning.AtMeter).Ranges[0]));
        Assert.Null(StandInBench.Asked(card with { Ranges = [.. Ranges.OfEachKind.Where(r => r.Meter is not DirectCard), new("c", new DirectCard(ReadoutBasis.AssumedDensity, new AirCard()), "cfm", 0.1, 0.01)] }));
        Assert.Equal(["that its readout is already at 28"], AssumedScale.Words(card.Ranges[0]));
        Assert.Empty(AssumedScale.Words(StandInBench.Answered(card, "readout", ReadoutMeaning.Restated).Ranges[0]));
    }

    private const double CubicFoot = 0.3048 * 0.3048 * 0.3048 / 60;

    private static double Cfm(double si) => si / CubicFoot;

    private Ledger Ledger => Ledger.Of(_entries);

    private Estimate Flow(ReadoutMeaning? meaning = null)
    {
        var ledger = Ledger;
        var cut = Assert.Single(ledger.All<Cut>());
        return meaning is { } said ? ReadoutChoice.Flow(ledger, ledger.Get<BenchCard>(_bench), "readout", said, cut)! : new Reductions(ledger).Of(cut)!.Curve.Points[^1].Flow;
    }

    private IReadOnlyList<string> Remarks() => SweepReduction.Reduce(Ledger, Ledger.Get<Sweep>(_sweep)).Remarks;

    private void Answer(ReadoutMeaning meaning, int minute)
    {
        var bench = Ledger.Get<BenchCard>(_bench);
        _entries.Add(Amend.Correct(bench, StandInBench.Answered(bench.Fact, "readout", meaning), Evening.AddMinutes(minute), "t"));
    }

    private void Read(double cfm, double pressure, FlowDirection direction, double lift = 0.5)
    {
        if (_entries.Count == 0)
        {
            var (head, port, cut) = (Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid());
            _entries.AddRange(
            [
                Entry.About(_bench, null, StandInBench.Card(), Evening), Entry.About(_job, _job, new Job("a job", "", new EnginePlan()), Evening),
                Entry.About(head, _job, new Head("head A"), Evening), Entry.About(port, _job, new Port(head, PortKind.Intake, 1, false), Evening),
                Entry.About(cut, _job, new Cut(port, 0, "", new DateOnly(2026, 3, 2)), Evening),
                Entry.About(_sweep, _job, new Sweep(cut, _bench, direction, "readout", Portwright.Shop.Units.Typed.Of(pressure, "inH2O"), []), Evening),
            ]);
        }

        _entries.Add(Entry.About(Guid.NewGuid(), _job, new FlowReading(_sweep, Portwright.Shop.Units.Typed.Of(lift, "in"), Portwright.Shop.Units.Typed.Of(cfm, "cfm")), Evening));
    }
}
