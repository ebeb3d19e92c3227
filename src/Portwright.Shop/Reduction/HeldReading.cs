using Portwright.Physics.TestPiece;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Reduction;

/// <summary>What the bench meters while a ball or a probe is held in the port: one setting, reading after reading.</summary>
public sealed class HeldReading
{
    private readonly ReadingInputs _inputs;
    private readonly BenchSetting _setting;

    /// <param name="reductions">The record, reduced.</param>
    /// <param name="cut">The cut tested: the leak is taken from its latest sweep on the same bench in the same direction.</param>
    /// <param name="air">The room's air; null: standard air.</param>
    /// <param name="when">When it was read, which says which calibration holds.</param>
    /// <exception cref="ArgumentException">The bench card has no such range, or the air cannot be.</exception>
    public HeldReading(Reductions reductions, Guid cut, BenchSetting setting, RoomAir? air, BenchMoment when)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        ArgumentNullException.ThrowIfNull(setting);
        var ledger = reductions.Ledger;
        var bench = ledger.Get<BenchCard>(setting.Bench);
        var range = bench.Fact.RangeNamed(setting.Range)
            ?? throw new ArgumentException($"The bench card has no range named '{setting.Range}'. Add it to the card, or choose another.");
        var room = air is null ? RoomState.Assumed(bench.Fact) : RoomState.Of(air, bench);
        var leak = ledger.SweepsOf(cut).Where(s => s.Fact.Bench == bench.Id && s.Fact.Direction == setting.Direction)
            .Select(s => reductions.Of(s).LeakArea).LastOrDefault(l => l is not null);
        _setting = setting;
        _inputs = new ReadingInputs(bench, range, room, MeterFactor.At(when, bench, range, ledger).Factor, leak);
        TestPressure = setting.TestPressure.Si(Units.Dimension.Pressure);
        Conditions = new TestConditions(room.Air, TestPressure, setting.Direction);
        Remarks = room.Remarks;
    }

    /// <summary>Pa.</summary>
    public double TestPressure { get; }

    public TestConditions Conditions { get; }

    public IReadOnlyList<string> Remarks { get; }

    /// <summary>Standard uncertainty of one reading's scatter, as a share.</summary>
    public double RepeatScatter => _inputs.Bench.Fact.Doubt.RepeatScatter;

    public double RepeatDegrees => _inputs.Bench.Fact.Doubt.RepeatDegrees ?? double.PositiveInfinity;

    /// <summary>Effective area (m2) of port with what is held in it, with the doubt of this one reading's scatter.</summary>
    /// <param name="name">Identity of the reading.</param>
    public Estimate EffectiveArea(Typed reading, string name)
    {
        var area = _inputs.Reduce(reading, _setting.TestPressure, _setting.Direction, null, null, name).EffectiveArea;
        return area.With(new Contribution(Sources.RepeatOf(name), area.Value * RepeatScatter, RepeatDegrees, ContributionKind.Repeat));
    }

    /// <summary>Mass flow (kg/s) an effective area passes at this setting.</summary>
    public double MassFlux => Nozzle.MassFlux(Conditions.TestPieceUpstream, Conditions.TestPieceDownstreamPressure);

    /// <summary>The mean stream in a section while the port passes that effective area; null where it would be sonic.</summary>
    public SectionStream? StreamIn(double sectionArea, double effectiveArea) =>
        SectionStream.Of(Math.Max(0, effectiveArea) * MassFlux, sectionArea, Conditions.TestPieceUpstream);
}
