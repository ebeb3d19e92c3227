using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace Portwright.Mutants;

/// <summary>What a value on the stack is, as far as a comparison needs it.</summary>
internal enum Kind
{
    /// <summary>A reference, a structure, or not told.</summary>
    Other,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>A floating-point number.</summary>
    Real,
}

/// <summary>Reads kinds out of signatures.</summary>
internal sealed class Kinds : ISignatureTypeProvider<Kind, object?>
{
    public Kind GetPrimitiveType(PrimitiveTypeCode typeCode) => typeCode switch
    {
        PrimitiveTypeCode.Double or PrimitiveTypeCode.Single => Kind.Real,
        PrimitiveTypeCode.Int32 or PrimitiveTypeCode.Int64 or PrimitiveTypeCode.Int16 or PrimitiveTypeCode.Byte => Kind.Whole,
        _ => Kind.Other,
    };

    public Kind GetArrayType(Kind elementType, ArrayShape shape) => Kind.Other;

    public Kind GetByReferenceType(Kind elementType) => Kind.Other;

    public Kind GetFunctionPointerType(MethodSignature<Kind> signature) => Kind.Other;

    // Of Nullable<double>.get_Value and the like the argument is what comes back.
    public Kind GetGenericInstantiation(Kind genericType, ImmutableArray<Kind> typeArguments) => typeArguments is [var one] ? one : Kind.Other;

    public Kind GetGenericMethodParameter(object? genericContext, int index) => Kind.Other;

    public Kind GetGenericTypeParameter(object? genericContext, int index) => Kind.Other;

    public Kind GetModifiedType(Kind modifier, Kind unmodifiedType, bool isRequired) => unmodifiedType;

    public Kind GetPinnedType(Kind elementType) => elementType;

    public Kind GetPointerType(Kind elementType) => Kind.Other;

    public Kind GetSZArrayType(Kind elementType) => Kind.Other;

    public Kind GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => Kind.Other;

    public Kind GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => Kind.Other;

    public Kind GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) => Kind.Other;
}
