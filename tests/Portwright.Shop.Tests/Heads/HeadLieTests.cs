using Portwright.Shop.Heads;
using Portwright.Shop.Record;

namespace Portwright.Shop.Tests.Heads;

/// <summary>Which ports are mirror images, and how a head then looks from above.</summary>
public sealed class HeadLieTests
{
    // From left to right, seen from the intakes' flange; drawn by hand from the engine's own firing deck, letters as porters call such heads.
    [Theory]
    [InlineData(MirrorPattern.None, ExhaustSide.WithIntakes, "I1 E1 I2 E2 I3 E3 I4 E4")]
    [InlineData(MirrorPattern.EverySecond, ExhaustSide.WithIntakes, "I1 E1 E2 I2 I3 E3 E4 I4")]
    [InlineData(MirrorPattern.FirstOfTwo, ExhaustSide.WithIntakes, "E1 I1 I2 E2 E3 I3 I4 E4")]
    [InlineData(MirrorPattern.FromTheMiddle, ExhaustSide.WithIntakes, "I1 E1 I2 E2 E3 I3 E4 I4")]
    [InlineData(MirrorPattern.None, ExhaustSide.Across, "I1 E1 I2 E2 I3 E3 I4 E4")]
    [InlineData(MirrorPattern.FirstOfTwo, ExhaustSide.Across, "E1 I1 I2 E2 E3 I3 I4 E4")]
    public void The_valves_stand_along_the_head_as_the_pattern_casts_them(MirrorPattern pattern, ExhaustSide exhausts, string row)
    {
        var lay = new HeadLay(exhausts);
        var along = PortLie.Along(Ports(pattern, exhausts), lay);
        Assert.Equal(row, string.Join(' ', along.Select(l => $"{(l.Port.Kind == PortKind.Intake ? 'I' : 'E')}{l.Port.Cylinder}")));
        Assert.Null(PortLie.Clash(along, lay));
    }

    [Fact]
    public void An_exhaust_across_is_turned_as_its_intake_is_and_one_beside_it_the_other_way()
    {
        Assert.True(MirrorPatterns.IsMirrored(MirrorPattern.EverySecond, PortKind.Exhaust, 2, 4, ExhaustSide.Across));
        Assert.False(MirrorPatterns.IsMirrored(MirrorPattern.EverySecond, PortKind.Exhaust, 2, 4, ExhaustSide.WithIntakes));
        Assert.True(MirrorPatterns.IsMirrored(MirrorPattern.None, PortKind.Exhaust, 1, 4, ExhaustSide.WithIntakes));
    }

    [Theory]
    [InlineData(1, "None")]
    [InlineData(2, "None EverySecond FirstOfTwo")]
    [InlineData(3, "None EverySecond FirstOfTwo")]
    [InlineData(4, "None EverySecond FirstOfTwo FromTheMiddle")]
    public void Only_patterns_a_head_of_so_many_cylinders_can_have_are_offered(int cylinders, string offered) =>
        Assert.Equal(offered, string.Join(' ', MirrorPatterns.For(cylinders)));

    [Fact]
    public void The_row_runs_the_other_way_where_cylinder_1_is_at_the_right()
    {
        var along = PortLie.Along(Ports(MirrorPattern.None, ExhaustSide.WithIntakes), new HeadLay(ExhaustSide.WithIntakes, FromRight: true));
        Assert.Equal(["intake 4", "exhaust 4", "intake 3"], along.Take(3).Select(l => l.Port.Name));
    }

    [Fact]
    public void A_port_is_said_by_the_first_of_its_kind()
    {
        var along = PortLie.Along(Ports(MirrorPattern.EverySecond, ExhaustSide.Across), new HeadLay());
        Assert.Equal("intake 1: centre side right seen from its flange", along.Single(l => l.Port.Name == "intake 1").Said);
        Assert.Equal("intake 2: mirror image of intake 1, centre side left seen from its flange", along.Single(l => l.Port.Name == "intake 2").Said);
        Assert.Equal("intake 3: as intake 1, centre side right seen from its flange", along.Single(l => l.Port.Name == "intake 3").Said);
    }

    [Fact]
    public void Intake_and_exhaust_in_one_half_of_their_cylinder_are_asked_about()
    {
        var ports = Ports(MirrorPattern.None, ExhaustSide.Across).Select(p => p.Port is { Kind: PortKind.Intake, Cylinder: 2 } ? (p.Id, p.Port with { Mirrored = true }) : p);
        var clash = PortLie.Clash(PortLie.Along(ports, new HeadLay()), new HeadLay());
        Assert.StartsWith("In cylinder 2 intake and exhaust now lie in the same half", clash, StringComparison.Ordinal);
    }

    [Fact]
    public void A_head_written_before_its_lay_was_asked_is_read_as_one_nobody_said_it_of()
    {
        const string old = """{"type":"head","name":"head A","material":"","notes":"","place":0}""";
        var head = Assert.IsType<Head>(System.Text.Json.JsonSerializer.Deserialize(old, RecordJson.Default.Fact));
        Assert.Null(head.Lay);
        Assert.False(PortLie.IsTold(head, [new Port(Guid.Empty, PortKind.Intake, 1, Mirrored: false)]));
        Assert.True(PortLie.IsTold(head, [new Port(Guid.Empty, PortKind.Intake, 1, Mirrored: true)]));
        Assert.True(PortLie.IsTold(head with { Lay = new() }, []));
    }

    private static IEnumerable<(Guid Id, Port Port)> Ports(MirrorPattern pattern, ExhaustSide exhausts) =>
        Enumerable.Range(1, 4).SelectMany(c => Enum.GetValues<PortKind>().Select(k => (Guid.NewGuid(), new Port(Guid.Empty, k, c, MirrorPatterns.IsMirrored(pattern, k, c, 4, exhausts)))));
}
