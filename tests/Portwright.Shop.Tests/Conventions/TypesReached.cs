using System.Collections.Immutable;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace Portwright.Shop.Tests.Conventions;

/// <summary>Which types of an assembly reach which others of it, read from the compiled code: bases, members, attributes and bodies.</summary>
internal sealed class TypesReached : IDisposable
{
    private readonly PEReader _file;
    private readonly MetadataReader _reader;

    public TypesReached(string assembly)
    {
        _file = new PEReader(File.OpenRead(assembly));
        _reader = _file.GetMetadataReader();
    }

    /// <summary>Each pair once, named by the outermost type: what a compiler makes inside a type counts as that type.</summary>
    public IEnumerable<(TypeName From, TypeName To)> All() => _reader.TypeDefinitions
        .SelectMany(t => Of(t).Select(to => (From: NameOf(t), To: NameOf(to))))
        .Where(p => p.From != p.To && p.From.Space.Length > 0 && p.To.Space.Length > 0)
        .Distinct();

    public void Dispose() => _file.Dispose();

    private HashSet<TypeDefinitionHandle> Of(TypeDefinitionHandle handle)
    {
        var reached = new ReachedTypes(_reader);
        var type = _reader.GetTypeDefinition(handle);
        reached.Add(type.BaseType);
        foreach (var each in type.GetInterfaceImplementations()) reached.Add(_reader.GetInterfaceImplementation(each).Interface);
        foreach (var field in type.GetFields())
        {
            _reader.GetFieldDefinition(field).DecodeSignature(reached, null);
            Attributes(reached, _reader.GetFieldDefinition(field).GetCustomAttributes());
        }

        foreach (var property in type.GetProperties()) Attributes(reached, _reader.GetPropertyDefinition(property).GetCustomAttributes());
        Attributes(reached, type.GetCustomAttributes());
        Bounds(reached, type.GetGenericParameters());
        foreach (var each in type.GetMethods())
        {
            var method = _reader.GetMethodDefinition(each);
            method.DecodeSignature(reached, null);
            Attributes(reached, method.GetCustomAttributes());
            Bounds(reached, method.GetGenericParameters());
            if (method.RelativeVirtualAddress != 0) Body(reached, _file.GetMethodBody(method.RelativeVirtualAddress));
        }

        return reached.Types;
    }

    private void Bounds(ReachedTypes reached, GenericParameterHandleCollection parameters)
    {
        foreach (var bound in parameters.SelectMany(p => _reader.GetGenericParameter(p).GetConstraints())) reached.Add(_reader.GetGenericParameterConstraint(bound).Type);
    }

    private void Attributes(ReachedTypes reached, CustomAttributeHandleCollection attributes)
    {
        foreach (var attribute in attributes.Select(_reader.GetCustomAttribute))
        {
            reached.Add(attribute.Constructor);
            // A type named in an attribute, as [JsonDerivedType(typeof(Cut))], stands in its value by name.
            foreach (var argument in attribute.DecodeValue(new AttributeTypes()).FixedArguments) reached.Named(argument.Value as string);
        }
    }

    private void Body(ReachedTypes reached, MethodBodyBlock body)
    {
        if (!body.LocalSignature.IsNil) _reader.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(reached, null);
        foreach (var region in body.ExceptionRegions.Where(r => r.Kind == ExceptionRegionKind.Catch)) reached.Add(region.CatchType);
        var code = body.GetILReader();
        while (code.RemainingBytes > 0)
        {
            if (Instruction.Next(ref code) is { } token) reached.Add(token);
        }
    }

    private TypeName NameOf(TypeDefinitionHandle handle)
    {
        var type = _reader.GetTypeDefinition(handle);
        while (!type.GetDeclaringType().IsNil) type = _reader.GetTypeDefinition(type.GetDeclaringType());
        return new TypeName(_reader.GetString(type.Namespace), _reader.GetString(type.Name));
    }
}

/// <param name="Space">Its namespace; empty for what the compiler makes beside all types.</param>
internal readonly record struct TypeName(string Space, string Name)
{
    public override string ToString() => $"{Space}.{Name}";
}
