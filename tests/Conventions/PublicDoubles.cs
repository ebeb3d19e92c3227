using System.Reflection;

namespace Portwright.Conventions;

/// <summary>One double a caller gives or gets, with the text that should name its unit.</summary>
/// <param name="Key">The member by its type, name and parameters.</param>
/// <param name="Slot">A parameter's name, <c>returns</c>, or <c>value</c> of a property or field.</param>
/// <param name="Text">Null where the tag is missing.</param>
public sealed record PublicDouble(string Key, string Slot, string? Text);

/// <summary>Every double, or list, span or pair of doubles, that stands in a room's public face.</summary>
public static class PublicDoubles
{
    public static IEnumerable<PublicDouble> Of(RoomDocs docs) => docs.Types.SelectMany(type => RoomDocs.MembersOf(type).SelectMany(m => Of(docs, type, m)));

    private static IEnumerable<PublicDouble> Of(RoomDocs docs, Type type, MemberInfo member)
    {
        if (member.IsDefined(typeof(System.Runtime.CompilerServices.CompilerGeneratedAttribute)) && !RoomDocs.IsPrimary(member) && member is not PropertyInfo) yield break;
        var comment = docs.Of(member);
        var key = Key(member);
        switch (member)
        {
            case FieldInfo field when Holds(field.FieldType):
                yield return new(key, "value", RoomDocs.Text(comment, "summary"));
                break;
            case PropertyInfo property when Holds(property.PropertyType):
                yield return new(key, "value", comment is null
                    ? RoomDocs.Text(docs.OfType(type), "param", property.Name)
                    : RoomDocs.Text(comment, "value") ?? RoomDocs.Text(comment, "summary"));
                break;
            case MethodBase method:
                var described = RoomDocs.IsPrimary(method) ? docs.OfType(type) : comment;
                foreach (var p in method.GetParameters().Where(p => Holds(p.ParameterType))) yield return new(key, p.Name!, RoomDocs.Text(described, "param", p.Name));
                if (method is MethodInfo { ReturnType: var result } && Holds(result)) yield return new(key, "returns", RoomDocs.Text(comment, "returns") ?? RoomDocs.Text(comment, "summary"));
                break;
        }
    }

    /// <summary>A member as a person looks for it.</summary>
    public static string Key(MemberInfo member) =>
        $"{member.DeclaringType!.FullName![(member.DeclaringType.Namespace!.Length + 1)..]}.{member.Name}" + member switch
        {
            MethodBase m => $"({string.Join(", ", m.GetParameters().Select(p => p.Name))})",
            PropertyInfo p when p.GetIndexParameters() is { Length: > 0 } index => $"({string.Join(", ", index.Select(i => i.Name))})",
            _ => "",
        };

    /// <summary>A double, or something of the framework's that holds doubles: a nullable, list, span, pair or function of them.</summary>
    private static bool Holds(Type type) =>
        type == typeof(double)
        || (type.HasElementType && Holds(type.GetElementType()!))
        || (type.IsConstructedGenericType && type.Namespace!.StartsWith("System", StringComparison.Ordinal) && type.GetGenericArguments().Any(Holds));
}
