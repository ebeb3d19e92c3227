using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;

namespace Portwright.Conventions;

/// <summary>The documentation file beside an assembly, asked by member as the compiler names it (C# specification, annex D).</summary>
public sealed class RoomDocs
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private readonly Dictionary<string, XElement> _members;

    public RoomDocs(Assembly room)
    {
        Types = [.. room.GetExportedTypes().Where(t => !typeof(Delegate).IsAssignableFrom(t)).OrderBy(t => t.FullName, StringComparer.Ordinal)];
        _members = XDocument.Load(Path.ChangeExtension(room.Location, ".xml")).Descendants("member").ToDictionary(m => m.Attribute("name")!.Value);
    }

    /// <summary>Every type a caller outside the room can name.</summary>
    public IReadOnlyList<Type> Types { get; }

    /// <summary>Members a person wrote: not what the compiler adds to a record, nor the halves of a property.</summary>
    public static IEnumerable<MemberInfo> MembersOf(Type type) => type.GetMembers(Declared)
        .Where(m => m is FieldInfo or PropertyInfo or MethodBase && IsPublic(m))
        .Where(m => m is PropertyInfo || !m.IsDefined(typeof(CompilerGeneratedAttribute)) || IsPrimary(m))
        .Where(m => m is not MethodInfo { IsSpecialName: true } method || method.Name.StartsWith("op_", StringComparison.Ordinal))
        .Where(m => m is not FieldInfo { IsSpecialName: true } && (!type.IsEnum || m is FieldInfo { IsStatic: true }))
        .Where(m => m.Name is not ("EqualityContract" or "Deconstruct" or "PrintMembers"));

    /// <summary>A member's own comment; of one that carries out an interface's promise without a word of its own, the interface's.</summary>
    public XElement? Of(MemberInfo member)
    {
        if (Promised(member) is { } promise && (!_members.TryGetValue(Name(member), out var own) || own.Element("inheritdoc") is not null)) member = promise;
        return _members.GetValueOrDefault(Name(member));
    }

    /// <summary>The comment of a type, where the parameters of a record stand.</summary>
    public XElement? OfType(Type type) => _members.GetValueOrDefault("T:" + TypeName(type));

    /// <summary>The text of one tag, its references read as their names; null where there is no such tag.</summary>
    public static string? Text(XElement? comment, string tag, string? name = null)
    {
        var found = comment?.Elements(tag).Where(e => name is null || e.Attribute("name")?.Value == name).ToList();
        return found is null or [] ? null : string.Join(' ', string.Join(' ', found.Select(Plain)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>As the compiler writes it into the documentation file.</summary>
    public static string Name(MemberInfo member)
    {
        var type = TypeName(member.DeclaringType!);
        return member switch
        {
            FieldInfo => $"F:{type}.{member.Name}",
            PropertyInfo p => $"P:{type}.{member.Name.Replace('.', '#')}{Parameters(p.GetIndexParameters())}",
            MethodInfo m => $"M:{type}.{m.Name.Replace('.', '#')}{(m.IsGenericMethod ? "``" + m.GetGenericArguments().Length : "")}{Parameters(m.GetParameters())}"
                + (m.Name is "op_Implicit" or "op_Explicit" ? "~" + TypeName(m.ReturnType) : ""),
            ConstructorInfo c => $"M:{type}.{(c.IsStatic ? "#cctor" : "#ctor")}{Parameters(c.GetParameters())}",
            _ => throw new ArgumentException($"{member} has no documentation name.", nameof(member)),
        };
    }

    /// <summary>True of a record's constructor with its positional parameters, which the type's comment describes.</summary>
    public static bool IsPrimary(MemberInfo member) =>
        member is ConstructorInfo c && c.GetParameters() is { Length: > 0 } parameters && c.DeclaringType!.GetMethod("Deconstruct", Declared) is { } parts
        && parts.IsDefined(typeof(CompilerGeneratedAttribute))
        && parts.GetParameters().Select(p => p.Name).SequenceEqual(parameters.Select(p => p.Name));

    private static bool IsPublic(MemberInfo member) => member switch
    {
        FieldInfo f => f.IsPublic || f.IsFamily,
        PropertyInfo p => p.GetAccessors(nonPublic: true).Any(a => a.IsPublic || a.IsFamily),
        MethodBase m => m.IsPublic || m.IsFamily,
        _ => false,
    };

    private static MemberInfo? Promised(MemberInfo member)
    {
        var own = member is PropertyInfo p ? p.GetMethod : member as MethodInfo;
        if (own is null || own.DeclaringType!.IsInterface) return null;
        var first = own.GetBaseDefinition();
        if (first.DeclaringType != own.DeclaringType) return Whole(first);
        foreach (var @interface in own.DeclaringType.GetInterfaces().Where(i => i.Assembly == own.Module.Assembly))
        {
            var map = own.DeclaringType.GetInterfaceMap(@interface);
            var at = Array.IndexOf(map.TargetMethods, own);
            if (at >= 0) return Whole(map.InterfaceMethods[at]);
        }
        return null;

        MemberInfo? Whole(MethodInfo promise) => member is PropertyInfo
            ? promise.DeclaringType!.GetProperties(Declared).FirstOrDefault(q => q.GetMethod == promise)
            : promise;
    }

    private static string Plain(XElement element) => string.Concat(element.Nodes().Select(node => node switch
    {
        XText text => text.Value,
        XElement { Name.LocalName: "see" or "paramref" or "seealso" } reference => (reference.Attribute("cref") ?? reference.Attribute("name") ?? reference.Attribute("langword"))?.Value.Split('.')[^1],
        XElement inner => Plain(inner),
        _ => "",
    }));

    private static string Parameters(ParameterInfo[] parameters) =>
        parameters.Length == 0 ? "" : $"({string.Join(',', parameters.Select(p => TypeName(p.ParameterType)))})";

    private static string TypeName(Type type)
    {
        if (type.IsByRef) return TypeName(type.GetElementType()!) + "@";
        if (type.IsPointer) return TypeName(type.GetElementType()!) + "*";
        if (type.IsArray) return TypeName(type.GetElementType()!) + (type.GetArrayRank() == 1 ? "[]" : $"[{string.Join(',', Enumerable.Repeat("0:", type.GetArrayRank()))}]");
        if (type.IsGenericParameter) return (type.DeclaringMethod is null ? "`" : "``") + type.GenericParameterPosition;
        var outer = type.DeclaringType is { } d ? TypeName(d) : type.Namespace;
        if (!type.IsConstructedGenericType) return $"{outer}.{type.Name}";
        return $"{outer}.{type.Name.Split('`')[0]}{{{string.Join(',', type.GetGenericArguments().Select(TypeName))}}}";
    }
}
