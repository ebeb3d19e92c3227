using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Portwright.Mutants;

/// <summary>Every mutant of a compiled room, with the source's file and line by its portable PDB.</summary>
internal static class Finder
{
    /// <summary>Words a rule says of itself: a number in them is no threshold.</summary>
    private static readonly string[] Words =
        ["get_Test", "get_Evidence", "get_ElseExplains", "get_LookFirst", "get_Cut", "get_Risk", "get_Source", "get_Name", "PrintMembers", "GetHashCode", "Equals", "ToString", "Words", "get_Words", "Seen", "get_Said"];

    public static IReadOnlyList<Mutant> In(string assembly, string root)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        using var symbols = MetadataReaderProvider.FromPortablePdbStream(File.OpenRead(Path.ChangeExtension(assembly, ".pdb")));
        var (reader, pdb) = (file.GetMetadataReader(), symbols.GetMetadataReader());
        var mutants = new List<Mutant>();
        foreach (var handle in reader.MethodDefinitions)
        {
            var method = reader.GetMethodDefinition(handle);
            var name = reader.GetString(method.Name);
            var type = reader.GetTypeDefinition(method.GetDeclaringType());
            var whole = $"{TypeName(reader, type)}.{name}";
            if (method.RelativeVirtualAddress == 0 || Array.Exists(Words, w => name == w || whole.Contains($"<{w}>", StringComparison.Ordinal)))
            {
                continue;
            }

            var points = pdb.GetMethodDebugInformation(handle).GetSequencePoints().Where(p => !p.IsHidden).ToList();
            if (points.Count == 0)
            {
                continue;
            }

            var body = new Body(file, reader, method);
            for (var at = 0; at < body.Instructions.Count; at++)
            {
                var point = points.LastOrDefault(p => p.Offset <= body.Instructions[at].Offset);
                if (point.Document.IsNil)
                {
                    continue;
                }

                var source = Path.GetRelativePath(root, pdb.GetString(pdb.GetDocument(point.Document).Name)).Replace('\\', '/');
                var folder = Path.GetDirectoryName(source)!.Replace('\\', '/');
                mutants.AddRange(Moved.Of(body, at, name is ".cctor" or ".ctor", Metal.Guards(source, name))
                    .Select(m => new Mutant(folder, Path.GetFileName(source), point.StartLine, whole, body.First + m.At, m.Bytes, m.What)));
            }
        }

        return mutants;
    }

    private static string TypeName(MetadataReader reader, TypeDefinition type) => type.GetDeclaringType() is { IsNil: false } outer
        ? $"{TypeName(reader, reader.GetTypeDefinition(outer))}.{reader.GetString(type.Name)}" : reader.GetString(type.Name);
}
