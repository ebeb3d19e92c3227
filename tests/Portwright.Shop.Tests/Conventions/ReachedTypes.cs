using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace Portwright.Shop.Tests.Conventions;

/// <summary>Gathers the types of the assembly itself that handles and signatures name.</summary>
internal sealed class ReachedTypes(MetadataReader reader) : ISignatureTypeProvider<bool, object?>
{
    public HashSet<TypeDefinitionHandle> Types { get; } = [];

    /// <summary>Type, method or field: the type it belongs to and, of a field or method, what it is of and gives back.</summary>
    public void Add(EntityHandle handle)
    {
        if (handle.IsNil) return;
        switch (handle.Kind)
        {
            case HandleKind.TypeDefinition:
                Types.Add((TypeDefinitionHandle)handle);
                break;
            case HandleKind.TypeSpecification:
                reader.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(this, null);
                break;
            case HandleKind.MethodDefinition:
                var method = reader.GetMethodDefinition((MethodDefinitionHandle)handle);
                Types.Add(method.GetDeclaringType());
                method.DecodeSignature(this, null);
                break;
            case HandleKind.FieldDefinition:
                var field = reader.GetFieldDefinition((FieldDefinitionHandle)handle);
                Types.Add(field.GetDeclaringType());
                field.DecodeSignature(this, null);
                break;
            case HandleKind.MemberReference:
                var member = reader.GetMemberReference((MemberReferenceHandle)handle);
                Add(member.Parent);
                break;
            case HandleKind.MethodSpecification:
                var made = reader.GetMethodSpecification((MethodSpecificationHandle)handle);
                made.DecodeSignature(this, null);
                Add(made.Method);
                break;
        }
    }

    /// <summary>A type written by name, <c>Space.Name, assembly</c>; others are passed over.</summary>
    public void Named(string? name)
    {
        if (name is null) return;
        var plain = name.Split(',')[0];
        foreach (var handle in reader.TypeDefinitions)
        {
            var type = reader.GetTypeDefinition(handle);
            if ($"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}" == plain) Types.Add(handle);
        }
    }

    public bool GetTypeFromDefinition(MetadataReader of, TypeDefinitionHandle handle, byte rawTypeKind) => Types.Add(handle);

    public bool GetTypeFromSpecification(MetadataReader of, object? context, TypeSpecificationHandle handle, byte rawTypeKind)
    {
        Add(handle);
        return true;
    }

    public bool GetArrayType(bool elementType, ArrayShape shape) => true;

    public bool GetByReferenceType(bool elementType) => true;

    public bool GetFunctionPointerType(MethodSignature<bool> signature) => true;

    public bool GetGenericInstantiation(bool genericType, ImmutableArray<bool> typeArguments) => true;

    public bool GetGenericMethodParameter(object? genericContext, int index) => true;

    public bool GetGenericTypeParameter(object? genericContext, int index) => true;

    public bool GetModifiedType(bool modifier, bool unmodifiedType, bool isRequired) => true;

    public bool GetPinnedType(bool elementType) => true;

    public bool GetPointerType(bool elementType) => true;

    public bool GetPrimitiveType(PrimitiveTypeCode typeCode) => true;

    public bool GetSZArrayType(bool elementType) => true;

    public bool GetTypeFromReference(MetadataReader of, TypeReferenceHandle handle, byte rawTypeKind) => true;
}

/// <summary>Reads an attribute's values; a type among them is its name.</summary>
internal sealed class AttributeTypes : ICustomAttributeTypeProvider<string>
{
    public string GetPrimitiveType(PrimitiveTypeCode typeCode) => typeCode.ToString();

    public string GetSystemType() => "type";

    public string GetSZArrayType(string elementType) => elementType + "[]";

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) => "";

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => reader.GetString(reader.GetTypeReference(handle).Name);

    public string GetTypeFromSerializedName(string name) => name;

    public PrimitiveTypeCode GetUnderlyingEnumType(string type) => PrimitiveTypeCode.Int32;

    public bool IsSystemType(string type) => type is "type" or "Type";
}
