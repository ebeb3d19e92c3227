using System.Reflection;
using System.Reflection.Emit;
using System.Runtime.CompilerServices;

namespace Portwright.Conventions;

/// <summary>What a member throws by itself: found in its instructions, not in its comment.</summary>
/// <remarks>
/// Counted are the <c>throw</c> instructions and the framework's <c>ThrowIf...</c> of the member, of its lambdas and local functions, and of every member of its
/// room it calls that no outsider can name. What a public member it calls throws stands in that member's own comment.
/// </remarks>
public static class ThrownExceptions
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields().Select(f => (OpCode)f.GetValue(null)!).ToDictionary(c => c.Value);

    /// <summary>The types thrown. Of an accessor's property both accessors are asked.</summary>
    public static IReadOnlySet<Type> By(MemberInfo member)
    {
        var thrown = new HashSet<Type>();
        var seen = new HashSet<MethodBase>();
        IEnumerable<MethodBase> bodies = member switch
        {
            PropertyInfo property => property.GetAccessors(nonPublic: true),
            MethodBase method => [method],
            _ => [],
        };
        foreach (var body in bodies) Walk(body, seen, thrown);
        return thrown;
    }

    private static void Walk(MethodBase method, HashSet<MethodBase> seen, HashSet<Type> thrown)
    {
        if (!seen.Add(method)) return;
        MethodBase? before = null;
        foreach (var (code, target) in Instructions(method))
        {
            if (code == OpCodes.Throw) thrown.Add(Made(before) ?? throw new InvalidOperationException($"{method.DeclaringType}.{method.Name} throws what its last instruction did not make."));
            if (target is not null && ByFramework(target) is { } type) thrown.Add(type);
            if (target is not null && IsInner(target, method)) Walk(Body(target), seen, thrown);
            foreach (var part in target is ConstructorInfo made ? StateMachine(made) : []) Walk(part, seen, thrown);
            before = target;
        }
    }

    private static Type? Made(MethodBase? before) => before switch
    {
        ConstructorInfo made when typeof(Exception).IsAssignableFrom(made.DeclaringType) => made.DeclaringType,
        MethodInfo made when typeof(Exception).IsAssignableFrom(made.ReturnType) => made.ReturnType,
        _ => null,
    };

    private static Type? ByFramework(MethodBase target) =>
        target.Name.StartsWith("ThrowIf", StringComparison.Ordinal) && typeof(Exception).IsAssignableFrom(target.DeclaringType) ? target.DeclaringType : null;

    /// <summary>A member of the same room that no outsider can name. The guard the compiler puts behind a switch over an enum is none of the room's.</summary>
    private static bool IsInner(MethodBase target, MethodBase caller) =>
        target.DeclaringType is { } type && target.Module == caller.Module && !type.Name.StartsWith("<PrivateImplementationDetails>", StringComparison.Ordinal)
        && (!type.IsVisible || target is { IsPublic: false, IsFamily: false, IsFamilyOrAssembly: false });

    private static IEnumerable<MethodBase> StateMachine(ConstructorInfo made) =>
        made.DeclaringType is { } type && type.IsDefined(typeof(CompilerGeneratedAttribute)) && type.GetMethod("MoveNext", All) is { } next ? [next] : [];

    /// <summary>The instructions of a method with the method each names, if any.</summary>
    private static IEnumerable<(OpCode Code, MethodBase? Target)> Instructions(MethodBase method)
    {
        if (method.GetMethodBody()?.GetILAsByteArray() is not { } il) yield break;
        var ofType = method.DeclaringType is { IsGenericType: true } type ? type.GetGenericArguments() : null;
        var ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : null;
        for (var at = 0; at < il.Length;)
        {
            short value = il[at++];
            if (value == 0xfe) value = (short)(0xfe00 | il[at++]);
            var code = Codes[value];
            yield return (code, code.OperandType is OperandType.InlineMethod ? method.Module.ResolveMethod(BitConverter.ToInt32(il, at), ofType, ofMethod) : null);
            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(il, at),
                _ => 4,
            };
        }
    }

    /// <summary>The method as written, for one of a generic type or method.</summary>
    private static MethodBase Body(MethodBase method) => method.Module.ResolveMethod(method.MetadataToken)!;
}
