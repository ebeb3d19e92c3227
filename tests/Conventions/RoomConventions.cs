using System.Reflection;

namespace Portwright.Conventions;

/// <summary>What a room's public face owes its readers. Each room's tests inherit these; there is no list of exceptions.</summary>
public abstract class RoomConventions(Assembly room)
{
    private readonly RoomDocs _docs = new(room);

    [Fact]
    public void Every_public_double_names_its_unit()
    {
        var doubles = PublicDoubles.Of(_docs).ToList();
        Assert.True(doubles.Count > 200, "The documentation file does not match the room.");
        Nothing(doubles.Where(d => d.Text is null || !StatedUnit.In(d.Text)).Select(d => $"{d.Key}, {d.Slot}: {d.Text ?? "no comment"}"));
    }

    /// <summary>A missing argument is left out: the compiler warns of null already.</summary>
    [Fact]
    public void Every_member_that_throws_says_what_and_when()
    {
        var thrown = _docs.Types.SelectMany(type => RoomDocs.MembersOf(type).SelectMany(m => ThrownExceptions.By(m).Select(e => (Type: type, Member: m, Exception: e))))
            .Where(t => t.Exception != typeof(ArgumentNullException)).ToList();
        Assert.True(thrown.Count > 10, "No instruction that throws was found.");
        Nothing(thrown.Where(t => !Says(t.Type, t.Member, t.Exception)).Select(t => $"{PublicDoubles.Key(t.Member)}: {t.Exception.Name}"));
    }

    private bool Says(Type type, MemberInfo member, Type exception) =>
        (RoomDocs.IsPrimary(member) ? _docs.OfType(type) : _docs.Of(member))?.Elements("exception")
            .Any(e => e.Attribute("cref")?.Value == "T:" + exception.FullName && e.Value.Trim().Length > 0) ?? false;

    private static void Nothing(IEnumerable<string> wrong)
    {
        var lines = wrong.Distinct().ToList();
        Assert.True(lines.Count == 0, $"{lines.Count}:\n{string.Join('\n', lines)}");
    }
}
