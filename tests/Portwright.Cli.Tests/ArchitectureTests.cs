using Portwright.Architecture;

namespace Portwright.Cli.Tests;

/// <summary>The pictures of the rooms are drawn from the code, and are those of this code.</summary>
public sealed class ArchitectureTests
{
    [Fact]
    public void Pictures_and_lists_of_the_rooms_are_current() =>
        Assert.All(Pages.Of(SourceTree.Above(AppContext.BaseDirectory)), p => Assert.True(p.IsCurrent(Repository.Root), $"{p.Name} is not current. Run: dotnet run --project tools/Portwright.Architecture"));

    [Fact]
    public void A_use_that_follows_from_others_has_no_arrow()
    {
        var uses = new UseGraph();
        uses.Add("sheet", "result");
        uses.Add("result", "reading");
        uses.Add("sheet", "reading");
        Assert.Equal([("reading", "result"), ("result", "sheet")], uses.Plain().Order());
        Assert.Equal([0, 1, 2], new[] { "reading", "result", "sheet" }.Select(r => uses.Levels()[r]));
        Assert.Empty(uses.Ties());
    }

    [Fact]
    public void Rooms_that_use_one_another_stand_side_by_side_and_are_named()
    {
        var uses = new UseGraph();
        uses.Add("sheet", "result");
        uses.Add("result", "sheet");
        uses.Add("result", "reading");
        Assert.Equal([("result", "sheet")], uses.Ties());
        Assert.Equal(uses.Levels()["sheet"], uses.Levels()["result"]);
        Assert.Equal([("reading", "result")], uses.Plain());
    }

    [Fact]
    public void A_type_on_the_way_of_a_reading_that_is_gone_is_named() =>
        Assert.Contains("Nobody", Assert.Throws<InvalidOperationException>(() => SourceTree.Above(AppContext.BaseDirectory).PlaceOf("Nobody")).Message, StringComparison.Ordinal);
}
