using Portwright.Architecture;

// dotnet run --project tools/Portwright.Architecture               draws the pictures and writes the lists of docs/architecture.md
// dotnet run --project tools/Portwright.Architecture -- --check    ends with 1 where they are not current
var tree = SourceTree.Above(AppContext.BaseDirectory);
var stale = Pages.Of(tree).Where(p => !p.IsCurrent(tree.Root)).ToList();
foreach (var page in stale)
{
    if (!args.Contains("--check")) File.WriteAllText(Path.Combine(tree.Root, page.Name), page.Text);
    Console.WriteLine(args.Contains("--check") ? $"{page.Name} is not current. Run: dotnet run --project tools/Portwright.Architecture" : page.Name);
}
return args.Contains("--check") && stale.Count > 0 ? 1 : 0;
