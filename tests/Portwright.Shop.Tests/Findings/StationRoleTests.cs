using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Tests.Words;

namespace Portwright.Shop.Tests.Findings;

/// <summary>A station is what it is to the port, whatever it is called: thin metal stops a cut by the place, not by a word.</summary>
public sealed class StationRoleTests
{
    [Theory]
    [InlineData("throat", StationRole.Throat)]
    [InlineData("Throat, cut round", StationRole.Throat)]
    [InlineData("short side apex", StationRole.ShortSide)]
    [InlineData("pinch by the pushrod", StationRole.Pinch)]
    [InlineData("bowl under the guide", null)]
    [InlineData("under the seat", null)]
    [InlineData("", null)]
    public void An_old_name_tells_its_role_where_it_speaks_of_one_place_alone(string name, StationRole? role) =>
        Assert.Equal(role, new Station(Guid.Empty, "F", 0.1, name).RoleRead);

    [Fact]
    public void What_was_said_of_a_station_stands_over_its_name() =>
        Assert.Equal(StationRole.Bowl, new Station(Guid.Empty, "F", 0.1, "throat", StationRole.Bowl).RoleRead);

    [Fact]
    public void A_throat_by_another_name_is_stopped_by_its_thin_wall()
    {
        var finding = SmallThroat(StationRole.Throat, thin: true);
        Assert.Null(finding.Suggestion);
        Assert.Contains("Nothing is to be cut here: .094 in of metal", finding.Sentence.Us(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_may_be_the_throat_is_counted_in_until_it_is_said()
    {
        Assert.Null(SmallThroat(null, thin: true).Suggestion);
        // The same metal where it is known to be another place, and sound metal, stop nothing.
        Assert.NotNull(SmallThroat(StationRole.Other, thin: true).Suggestion);
        Assert.NotNull(SmallThroat(null, thin: false).Suggestion);
    }

    [Fact]
    public void A_place_in_the_bend_that_nothing_names_is_asked_about()
    {
        var port = Port(null, thin: false).Survey();
        Assert.Contains(port.Remarks, r => r.Us().StartsWith("Say what F, under the seat is", StringComparison.Ordinal));
        Assert.DoesNotContain(Port(StationRole.Throat, thin: false).Survey().Remarks, r => r.Us().StartsWith("Say what", StringComparison.Ordinal));
    }

    private static Finding SmallThroat(StationRole? role, bool thin) =>
        Assert.Single(PortFindings.Of(Port(role, thin).Survey()), f => f.Rule.Key == "throat-too-small");

    /// <summary>A throat of 81 percent, its last station named by no word a program knows.</summary>
    private static MadePort Port(StationRole? role, bool thin)
    {
        var made = new MadePort(31)
        {
            RingsAt = [],
            Places = [],
            Role = s => s == "F" ? role : null,
            Wall = (s, b) => 0.0254 * (thin && s == "F" && b == 12 ? 0.094 : 0.200),
        };
        made.Valve = made.Valve with { ThroatDiameter = 0.0405 };
        var at = made.Stations.FindIndex(s => s.Letter == "F");
        made.Stations[at] = made.Stations[at] with { Mark = "under the seat", Width = 0.0405, Height = 0.0405, Corner = 0.02025 };
        return made;
    }
}
