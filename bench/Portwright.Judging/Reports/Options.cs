using System.Globalization;
using Portwright.Judging.Trial;

namespace Portwright.Judging.Reports;

/// <summary>The command line.</summary>
/// <param name="Shop">Number of one shop to look at.</param>
public sealed record Options(Extent Extent, string? Json, string? Page, int? Shop, Faults.Size Size)
{
    public const string Usage = """
        judging [--heads 2000] [--faults 200] [--seed 1] [--only PART OF A FAULT'S NAME] [--cores N] [--json FILE] [--page FILE]
        judging --shop N [--only FAULT --size small|middle|large]    what is said of one made shop
        """;

    /// <summary>Null where the line is not understood.</summary>
    public static Options? Read(string[] args)
    {
        var given = new Dictionary<string, string>();
        for (var i = 0; i + 1 < args.Length; i += 2) given[args[i]] = args[i + 1];
        string[] known = ["--heads", "--faults", "--seed", "--only", "--cores", "--json", "--page", "--shop", "--size"];
        if (args.Length % 2 != 0 || given.Keys.Except(known).Any()) return null;
        int? Number(string name) => !given.TryGetValue(name, out var text) ? null : int.TryParse(text, CultureInfo.InvariantCulture, out var n) && n >= 0 ? n : -1;
        var size = Faults.Size.Large;
        if (given.TryGetValue("--size", out var word) && !Enum.TryParse(word, true, out size)) return null;
        var extent = new Extent(Number("--seed") ?? 1, Number("--heads") ?? 2000, Number("--faults") ?? 200, given.GetValueOrDefault("--only"), Number("--cores") ?? 0);
        return extent.Heads < 0 || extent.Faults < 0 || extent.Cores < 0 || extent.Seed < 0 || Number("--shop") < 0
            ? null
            : new Options(extent, given.GetValueOrDefault("--json"), given.GetValueOrDefault("--page"), Number("--shop"), size);
    }
}
