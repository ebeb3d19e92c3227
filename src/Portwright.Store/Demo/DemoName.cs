using System.Text.Json.Nodes;

namespace Portwright.Store.Demo;

/// <summary>
/// In the demo's files a thing is known by a name, <c>"#head B intake 2"</c>. The same name is the same subject in every record, so that
/// loading the demo again adds nothing. A shop whose files have changed has other numbers: in a record that holds an earlier one it stands
/// beside it, as entries never change.
/// </summary>
internal static class DemoName
{
    /// <summary>The subject of that name.</summary>
    public static Guid Subject(string name) => NamedNumber.Of($"portwright demo shop {DemoFiles.Edition}|subject|{name}");

    /// <summary>The number of the entry of that name.</summary>
    public static Guid Number(string name) => NamedNumber.Of($"portwright demo shop {DemoFiles.Edition}|entry|{name}");

    /// <summary>The same JSON with every <c>"#name"</c> as its subject.</summary>
    public static JsonNode? Resolved(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, Resolved(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Resolved)]),
        JsonValue v when v.TryGetValue<string>(out var text) && text.StartsWith('#') => JsonValue.Create(Subject(text[1..])),
        _ => node?.DeepClone(),
    };
}
