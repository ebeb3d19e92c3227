using Portwright.Shop.Bench;
using Portwright.Shop.Units;
using Portwright.Store.Import;

namespace Portwright.Store.Tests.Import;

/// <summary>The files beside the tests: shapes as shops keep them (common practice, no source), numbers invented.</summary>
internal static class SampleFile
{
    internal static string Folder { get; } = Path.Combine(AppContext.BaseDirectory, "Import", "Files");

    internal static IEnumerable<string> Names => Directory.EnumerateFiles(Folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);

    internal static byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(Folder, name));

    internal static ImportPreview Preview(string name, UnitSystem system = UnitSystem.UsCustomary) => Preview(Bytes(name), name, system);

    internal static ImportPreview Preview(byte[] bytes, string name, UnitSystem system = UnitSystem.UsCustomary, string? sheet = null)
    {
        Assert.True(TableFile.TryRead(bytes, name, sheet, out var table, out var problem), problem);
        return SweepTable.Guess(table, system);
    }

    internal static string Refusal(byte[] bytes, string name)
    {
        Assert.False(TableFile.TryRead(bytes, name, null, out _, out var problem));
        Assert.NotEmpty(problem);
        return problem;
    }
}
