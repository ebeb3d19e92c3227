using System.Collections.Immutable;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Portwright.Mutants;

/// <summary>A method's body: its instructions, where they stand in the file, and what kind of value each leaves behind.</summary>
internal sealed class Body
{
    private static readonly Kinds Reads = new();
    private readonly MetadataReader _reader;
    private readonly ImmutableArray<Kind> _locals;
    private readonly MethodSignature<Kind> _signature;

    public Body(PEReader file, MetadataReader reader, MethodDefinition method)
    {
        _reader = reader;
        var block = file.GetMethodBody(method.RelativeVirtualAddress);
        Il = block.GetILContent();
        Instructions = Code.Of(Il);
        _locals = block.LocalSignature.IsNil ? [] : reader.GetStandaloneSignature(block.LocalSignature).DecodeLocalSignature(Reads, null);
        _signature = method.DecodeSignature(Reads, null);
        var headers = file.PEHeaders;
        var section = headers.SectionHeaders[headers.GetContainingSectionIndex(method.RelativeVirtualAddress)];
        var start = method.RelativeVirtualAddress - section.VirtualAddress + section.PointerToRawData;
        // A tiny header is one byte, a fat one twelve (ECMA-335, II.25.4).
        First = start + ((file.GetEntireImage().GetContent(start, 1)[0] & 3) == 2 ? 1 : 12);
    }

    public ImmutableArray<byte> Il { get; }

    public IReadOnlyList<Instruction> Instructions { get; }

    /// <summary>Offset in the file of the first instruction.</summary>
    public int First { get; }

    public OpCode? CodeAt(int at) => at >= 0 && at < Instructions.Count ? Instructions[at].Code : null;

    public bool JumpsBack(int at) => Instructions[at].Code.OperandType switch
    {
        OperandType.ShortInlineBrTarget => (sbyte)Il[Instructions[at].Operand] < 0,
        OperandType.InlineBrTarget => BitConverter.ToInt32(Il.AsSpan(Instructions[at].Operand, 4)) < 0,
        _ => false,
    };

    /// <summary>The operand of a <c>ldc.r8</c>.</summary>
    public double Real(int at) => BitConverter.ToDouble(Il.AsSpan(Instructions[at].Operand, 8));

    /// <summary>The whole number an instruction loads; null where it loads none.</summary>
    public int? Whole(int at) => CodeAt(at) is not { } code ? null
        : code.Value >= OpCodes.Ldc_I4_M1.Value && code.Value <= OpCodes.Ldc_I4_8.Value ? code.Value - OpCodes.Ldc_I4_0.Value
        : code == OpCodes.Ldc_I4_S ? (sbyte)Il[Instructions[at].Operand]
        : null;

    /// <summary>The member an instruction calls or reads; empty where it does neither.</summary>
    public string Member(int at) => CodeAt(at) is { OperandType: OperandType.InlineMethod } ? Code.Token(Il, Instructions[at]) switch
    {
        { Kind: HandleKind.MethodDefinition } h => _reader.GetString(_reader.GetMethodDefinition((MethodDefinitionHandle)h).Name),
        { Kind: HandleKind.MemberReference } h => _reader.GetString(_reader.GetMemberReference((MemberReferenceHandle)h).Name),
        { Kind: HandleKind.MethodSpecification } h when _reader.GetMethodSpecification((MethodSpecificationHandle)h).Method is { Kind: HandleKind.MemberReference } m =>
            _reader.GetString(_reader.GetMemberReference((MemberReferenceHandle)m).Name),
        _ => "",
    } : "";

    /// <summary>True where an instruction makes one of a type of this room.</summary>
    public bool Makes(int at, string type) => CodeAt(at) == OpCodes.Newobj && Code.Token(Il, Instructions[at]) is { Kind: HandleKind.MethodDefinition } made
        && _reader.GetString(_reader.GetTypeDefinition(_reader.GetMethodDefinition((MethodDefinitionHandle)made).GetDeclaringType()).Name) == type;

    /// <summary>Kind of the value an instruction leaves on the stack.</summary>
    public Kind KindAt(int at)
    {
        if (CodeAt(at) is not { } code)
        {
            return Kind.Other;
        }

        var i = Instructions[at];
        var name = code.Name!;
        return name switch
        {
            "ldc.r8" or "conv.r8" or "ldelem.r8" or "ldind.r8" => Kind.Real,
            "ldlen" or "conv.i4" or "ldelem.i4" => Kind.Whole,
            "ldfld" or "ldsfld" => Field(Code.Token(Il, i)),
            "call" or "callvirt" => Returned(Code.Token(Il, i)),
            "add" or "sub" or "mul" or "div" or "neg" or "rem" => KindAt(at - 1),
            _ when name.StartsWith("ldc.i4", StringComparison.Ordinal) => Kind.Whole,
            _ when name.StartsWith("ldloc", StringComparison.Ordinal) && name != "ldloca.s" => _locals[Index(code, i)],
            _ when name.StartsWith("ldarg", StringComparison.Ordinal) && name != "ldarga.s" => Argument(Index(code, i)),
            _ => Kind.Other,
        };
    }

    private Kind Argument(int index)
    {
        var at = index - (_signature.Header.IsInstance ? 1 : 0);
        return at < 0 ? Kind.Other : _signature.ParameterTypes[at];
    }

    private int Index(OpCode code, Instruction i) => code.OperandType == OperandType.ShortInlineVar ? Il[i.Operand] : code.OperandType == OperandType.InlineVar
        ? BitConverter.ToUInt16(Il.AsSpan(i.Operand, 2)) : code.Name![^1] - '0';

    private Kind Field(EntityHandle field) => field.Kind switch
    {
        HandleKind.FieldDefinition => _reader.GetFieldDefinition((FieldDefinitionHandle)field).DecodeSignature(Reads, null),
        HandleKind.MemberReference => _reader.GetMemberReference((MemberReferenceHandle)field).DecodeFieldSignature(Reads, null),
        _ => Kind.Other,
    };

    private Kind Returned(EntityHandle method)
    {
        switch (method.Kind)
        {
            case HandleKind.MethodDefinition:
                return _reader.GetMethodDefinition((MethodDefinitionHandle)method).DecodeSignature(Reads, null).ReturnType;
            case HandleKind.MemberReference:
                var member = _reader.GetMemberReference((MemberReferenceHandle)method);
                var returned = member.DecodeMethodSignature(Reads, null).ReturnType;
                return returned == Kind.Other && member.Parent.Kind == HandleKind.TypeSpecification
                    ? _reader.GetTypeSpecification((TypeSpecificationHandle)member.Parent).DecodeSignature(Reads, null) : returned;
            case HandleKind.MethodSpecification:
                return Returned(_reader.GetMethodSpecification((MethodSpecificationHandle)method).Method);
            default:
                return Kind.Other;
        }
    }
}
