using System.Globalization;
using Portwright.Mutants;

// Moves figures, counts and comparisons of the built Portwright.Shop one at a time and looks whether a test fails. Nothing is rebuilt.
//   dotnet build tests/Portwright.Shop.Tests -c Release
//   dotnet run --project tools/Portwright.Mutants -c Release                       those over metal, and a sample of the rest
//   dotnet run --project tools/Portwright.Mutants -c Release -- --only Walls       one folder, or one file, wholly; metal: all over metal
//   ... -- --size 200 --seed 1 --near (the folder's own tests alone) --list (names them, runs nothing) --again FILE (those that survived in a run so written)
string? Said(string name) => args.SkipWhile(a => a != name).Skip(1).FirstOrDefault();
int Number(string name, int otherwise) => Said(name) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : otherwise;

var root = AppContext.BaseDirectory;
while (!File.Exists(Path.Combine(root, "Portwright.slnx")))
{
    root = Path.GetDirectoryName(root.TrimEnd(Path.DirectorySeparatorChar)) ?? throw new DirectoryNotFoundException("Portwright.slnx stands above no folder of this program.");
}

var built = Path.Combine(root, "tests/Portwright.Shop.Tests/bin/Release/net10.0");
if (!File.Exists(Path.Combine(built, "Portwright.Shop.dll")))
{
    Console.Error.WriteLine("The tests are not built. Run: dotnet build tests/Portwright.Shop.Tests -c Release");
    return 2;
}

var all = Finder.In(Path.Combine(built, "Portwright.Shop.dll"), Path.Combine(root, "src/Portwright.Shop")).Where(m => Folders.Tests.ContainsKey(m.Folder) || Metal.Holds(m)).ToList();
var only = Said("--only")?.Split(',') ?? [];
List<Mutant> asked = only.Length == 0 ? all : [.. all.Where(m => Array.Exists(only, o => o == "metal" ? Metal.Holds(m) : m.Place.StartsWith(o, StringComparison.OrdinalIgnoreCase)))];
var again = Said("--again") is { } written ? File.ReadLines(written).Where(l => l.StartsWith("survived: ", StringComparison.Ordinal)).Select(l => l["survived: ".Length..]).ToHashSet() : null;
IReadOnlyList<Mutant> tried = again is not null ? [.. asked.Where(m => again.Contains(m.ToString()))] : only.Length > 0 && Said("--size") is null ? asked : Sample.Of(asked, Number("--size", 170), Number("--seed", 1));
if (args.Contains("--list"))
{
    tried.ToList().ForEach(Console.WriteLine);
    Console.WriteLine($"{tried.Count} of {all.Count} mutants.");
    return 0;
}

using var bench = new Bench(built, "Portwright.Shop", "Portwright.Shop.Tests");
var near = args.Contains("--near");
var leftOut = bench.Base(near ? [.. tried.SelectMany(Folders.Near).Distinct()] : []);
Console.WriteLine($"{leftOut.Count} tests fail on the sound program and are left out.");
leftOut.ToList().ForEach(t => Console.WriteLine($"  {t}"));
var fates = new List<(Mutant Mutant, Fate Fate)>();
foreach (var mutant in tried)
{
    fates.Add((mutant, bench.Try(mutant, Folders.Near(mutant), all: !near)));
    Console.WriteLine($"{fates.Count,4} {fates[^1].Fate,-8} {mutant}");
}

return Report.Write(fates) ? 0 : 1;
