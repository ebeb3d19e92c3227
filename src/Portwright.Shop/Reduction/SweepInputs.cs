using Portwright.Physics.Uncertainty;
using Portwright.Shop.Bench;
using Portwright.Shop.Record;

namespace Portwright.Shop.Reduction;

/// <summary>The factor of one range as a sweep used it.</summary>
public sealed record RangeFactor(string Range, MeterFactor Factor);

/// <summary>The bench as one sweep used it: each range with the factor that held, and the air as it was read before each reading.</summary>
internal sealed class SweepInputs(Ledger ledger, Kept<Sweep> sweep, Kept<BenchCard> bench, BenchMoment when)
{
    private readonly IReadOnlyList<Kept<WeatherReading>> _weather = ledger.WeatherOf(sweep.Id);
    private readonly Dictionary<Guid, RoomState> _rooms = [];
    private readonly Dictionary<(string Range, RoomState Room, Estimate? Leak), ReadingInputs> _inputs = [];
    private readonly Dictionary<string, MeterFactor> _factors = new(StringComparer.OrdinalIgnoreCase);

    public Kept<BenchCard> Bench => bench;

    /// <summary>What had to be assumed, in sentences.</summary>
    public List<string> Remarks { get; } = [];

    /// <summary>Inputs of a range for a reading at this place in the record.</summary>
    /// <exception cref="ArgumentException">The bench card has no such range, or its calibration cannot be used.</exception>
    public ReadingInputs For(string range, int sequence, Estimate? leak)
    {
        var room = RoomAt(sequence);
        if (!_inputs.TryGetValue((range, room, leak), out var inputs))
        {
            var card = bench.Fact.RangeNamed(range)
                ?? throw new ArgumentException($"The bench card has no range named '{range}'. Add it to the card, or correct the sweep.");
            inputs = new ReadingInputs(bench, card, room, FactorOf(card).Factor, leak);
            _inputs[(range, room, leak)] = inputs;
        }

        return inputs;
    }

    public MeterFactor FactorOf(RangeCard range)
    {
        if (!_factors.TryGetValue(range.Name, out var factor))
        {
            factor = MeterFactor.At(when, bench, range, ledger);
            _factors[range.Name] = factor;
            Remarks.AddRange(factor.Remarks);
            Remarks.AddRange(ReadoutSaid.Of(ledger, bench, range));
        }

        return factor;
    }

    private RoomState RoomAt(int sequence)
    {
        var holds = _weather.LastOrDefault(w => w.Sequence <= sequence) ?? (_weather.Count > 0 ? _weather[0] : null);
        var key = holds?.Id ?? Guid.Empty;
        if (!_rooms.TryGetValue(key, out var room))
        {
            room = holds is null ? RoomState.Assumed(bench.Fact) : Read(holds);
            _rooms[key] = room;
            Remarks.AddRange(room.Remarks);
        }

        return room;
    }

    private RoomState Read(Kept<WeatherReading> weather)
    {
        try
        {
            return RoomState.Of(weather.Fact, bench);
        }
        catch (ArgumentException trouble)
        {
            return RoomState.Assumed(bench.Fact) with { Remarks = [$"The weather was left out and standard air assumed: {Refusal.Sentence(trouble)}"] };
        }
    }
}
