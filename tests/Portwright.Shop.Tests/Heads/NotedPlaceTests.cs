using Portwright.Physics.TestPiece;
using Portwright.Shop.Heads;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Tests.Heads;

/// <summary>Places noted on a drawing that lay the other way round: found, named, and moved only by an entry with its reason.</summary>
public sealed class NotedPlaceTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);
    private readonly Guid _job = Guid.NewGuid(), _port = Guid.NewGuid(), _cut = Guid.NewGuid(), _station = Guid.NewGuid();
    private Ledger _ledger;

    public NotedPlaceTests() => _ledger = Ledger.Of(
    [
        Entry.About(_port, _job, new Port(Guid.NewGuid(), PortKind.Intake, 4, Mirrored: false), Now),
        Entry.About(_cut, _job, new Cut(_port, 0, "as received", new DateOnly(2026, 3, 2)), Now),
        Entry.About(_station, _job, new Station(_port, "C", 0.05), Now),
    ]);

    [Fact]
    public void Every_kind_of_place_beside_the_middle_is_found_and_what_the_mirror_leaves_is_not()
    {
        var ring = Add(new Ring(_cut, _station, Setting));
        var check = Add(new BallCheck(_cut, Setting, Typed.Of(0.5, "in")));
        var probe = Add(new ProbeReading(ring, 2, Typed.Of(0.1, "in"), Typed.Of(14, "inH2O")));
        var ball = Add(new BallReading(check, _station, 9, Typed.Of(80, "%")));
        var flag = Add(new FlagReading(_cut, _station, 12, Typed.Of(0.3, "in"), Typed.Of(28, "inH2O"), Steadiness.Swings, Lean: 3));
        var wall = Add(Wall(4));
        Add(new ProbeReading(ring, null, null, Typed.Of(15, "inH2O")));
        Add(new BallReading(check, null, null, Typed.Of(82, "%")));
        Add(new BallReading(check, _station, 6, Typed.Of(79, "%")));
        Add(Wall(12));
        var across = NotedPlace.Across(_ledger, _port, mirrored: true);
        Assert.Equal([probe, ball, flag, wall], across.Select(p => p.Reading.Id));
        Assert.Equal("9 o'clock (cylinder-wall side)", across[1].Where);
        Assert.Equal("3 o'clock (centre side)", across[1].WhereAcross);
        Assert.Equal("12 o'clock (roof), leaning to 9 o'clock (cylinder-wall side)", across[2].WhereAcross);
        Assert.Equal("ball, 80 %", across[1].What);
        Assert.Empty(NotedPlace.Across(_ledger, _port, mirrored: false));
    }

    [Fact]
    public void A_place_turned_over_is_a_correction_with_its_reason_and_the_first_stays_in_the_record()
    {
        var wall = Add(Wall(2));
        Turn(true);
        var place = Assert.Single(NotedPlace.Across(_ledger, _port, mirrored: true));
        _ledger = _ledger.With([place.TurnedOver(Now, "kd")]);
        Assert.Equal(10, _ledger.Get<WallPoint>(wall).Fact.Bearing);
        Assert.Equal(2, ((WallPoint)_ledger.History(wall)[0].Fact).Bearing);
        Assert.Equal(NotedPlace.Reason, _ledger.History(wall)[^1].Reason);
        Assert.Empty(NotedPlace.Across(_ledger, _port, mirrored: true));
        // Drawn as at first again, it is where it was seen at first that is asked about.
        Assert.Equal("2 o'clock (between roof and centre side)", Assert.Single(NotedPlace.Across(_ledger, _port, mirrored: false)).WhereAcross);
    }

    [Fact]
    public void A_place_left_where_it_was_named_is_not_asked_about_when_the_drawing_goes_back()
    {
        Add(Wall(2));
        Turn(true);
        Assert.Empty(NotedPlace.Across(_ledger, _port, mirrored: false));
    }

    [Fact]
    public void A_number_corrected_later_leaves_the_place_noted_on_the_drawing_it_was_noted_on()
    {
        var wall = Add(Wall(2));
        Turn(true);
        var kept = _ledger.Get<WallPoint>(wall);
        _ledger = _ledger.With([Amend.Correct(kept, kept.Fact with { Thickness = Typed.Of(0.16, "in") }, Now, "", "misread")]);
        Assert.Empty(NotedPlace.Across(_ledger, _port, mirrored: false));
        Assert.Single(NotedPlace.Across(_ledger, _port, mirrored: true));
    }

    [Fact]
    public void A_place_taken_back_is_named_too_since_it_can_be_put_back()
    {
        var wall = Add(Wall(2));
        _ledger = _ledger.With([Amend.Hide(_ledger.Get<WallPoint>(wall), Now, "", "taken back")]);
        Assert.True(Assert.Single(NotedPlace.Across(_ledger, _port, mirrored: true)).TakenBack);
    }

    [Fact]
    public void Sections_with_named_sides_are_said_to_stay()
    {
        Add(new Section(_cut, _station, SectionForm.Rectangle, [.. new[] { 1.2, 1.9, 0.3 }.Select(v => Typed.Of(v, "in"))]));
        Assert.Empty(NamedSides.Of(_ledger, new HashSet<Guid> { _port }));
        Add(new Section(_cut, _station, SectionForm.Rectangle, [.. new[] { 1.2, 1.9, 0.3, 0.3, 0.2, 0.2 }.Select(v => Typed.Of(v, "in"))]));
        Assert.Contains("intake 4 C", NamedSides.Of(_ledger, new HashSet<Guid> { _port }), StringComparison.Ordinal);
        Assert.Empty(NamedSides.Of(_ledger, new HashSet<Guid> { Guid.NewGuid() }));
    }

    private static BenchSetting Setting => new(Guid.NewGuid(), FlowDirection.Draw, Typed.Of(0.3, "in"), Typed.Of(28, "inH2O"), "large");

    private WallPoint Wall(double hours) => new(_cut, _station, hours, Typed.Of(0.17, "in"));

    private Guid Add(Fact fact)
    {
        var entry = Entry.About(Guid.CreateVersion7(), _job, fact, Now);
        _ledger = _ledger.With([entry]);
        return entry.Subject;
    }

    private void Turn(bool mirrored)
    {
        var port = _ledger.Get<Port>(_port);
        _ledger = _ledger.With([Amend.Correct(port, port.Fact with { Mirrored = mirrored }, Now, "", "how the head lies")]);
    }
}
