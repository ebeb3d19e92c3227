using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Portwright.Physics.Targets;

namespace Portwright.Physics.Tests.Targets;

/// <summary>Every named ratio has one home: the register. Nothing else in the program carries its figures, and the theory page prints it.</summary>
public sealed partial class RegisterTests
{
    /// <summary>Words by which a line of source speaks of a rule; figures beside them are a second home.</summary>
    private static readonly Dictionary<string, string> Speaks = new()
    {
        ["throat-over-valve"] = "throat",
        ["exhaust-over-intake"] = "exhaust|balance",
        ["inlet-mach-knee"] = "mach|knee|volumetric efficiency|index",
        ["section-mach"] = "mach|limit",
        ["power-of-flow"] = "hp|horsepower|power",
        ["best-of-window"] = "window|best",
        ["least-lift"] = "wanted|least lift",
        ["curtain-equals-head"] = "curtain|usuallift",
        ["echo-angle"] = "echo|early|late",
        ["vessel-factor"] = "vessel|engelman",
        ["throttle-neck"] = "throttle|neck",
    };

    /// <summary>Lines in which a figure of a rule stands for another thing.</summary>
    private static readonly (string File, string Says)[] OtherThings =
    [
        ("PlanFilling.cs", "ExhaustOverIntakeValve"), // valve over valve, by diameter
        ("OperatingPoint.cs", "Fresh gas that left"),
    ];

    [Fact]
    public void Every_rule_has_a_word_it_is_known_by_and_a_key_of_its_own()
    {
        Assert.Equal(NamedLimits.All.Select(r => r.Key).Order(), Speaks.Keys.Order());
        Assert.All(NamedLimits.All, r =>
        {
            Assert.Matches("^[a-z]+(-[a-z]+)*$", r.Key);
            Assert.True(r.Limits.Low <= r.Limits.High && r.Limits.Low > 0, r.Key);
            Assert.True(r.Definition.Length > 10 && r.Caution.Length > 10, r.Key);
            Assert.Equal(r.Basis == TargetBasis.CommonPractice, r.Source == "common practice, no source");
        });
    }

    [Fact]
    public void No_other_source_carries_a_figure_of_a_rule()
    {
        var files = Directory.GetFiles(Path.Combine(Root, "src"), "*.*", SearchOption.AllDirectories)
            .Where(f => f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal) && Path.GetFileName(f) != "NamedLimits.cs").ToList();
        Assert.True(files.Count > 300, "The sources were not found.");
        var homes = files.SelectMany(f => SecondHomes(Path.GetFileName(f), File.ReadAllLines(f))).Where(h => !OtherThings.Any(o => h.StartsWith(o.File, StringComparison.Ordinal) && h.Contains(o.Says, StringComparison.Ordinal))).ToList();
        Assert.True(homes.Count == 0, string.Join('\n', homes));
    }

    /// <summary>The scan itself: each of these is a second home, and the last is none.</summary>
    [Theory]
    [InlineData("public const double Least = 0.85, Most = 0.92;", "/// <summary>Throat over valve.</summary>", true)]
    [InlineData("if (v.ThroatDiameter > 0.92 * v.HeadDiameter)", "", true)]
    [InlineData("$\"Throat over valve diameter is under 85 percent\"", "", true)]
    [InlineData("public const double Least = 0.65, Most = 0.80;", "/// <summary>Exhaust flow over intake flow.</summary>", true)]
    [InlineData("private const double UsualBalance = 0.75;", "", true)]
    [InlineData("public const double Knee = 0.6;", "", true)]
    [InlineData("public const double BestWindow = 0.95;", "", true)]
    [InlineData("var end = 0.85 * radius;", "/// <summary>A pipe's end.</summary>", false)]
    public void A_second_home_is_told(string line, string before, bool told) => Assert.Equal(told, SecondHomes("a.cs", [before, line]).Any());

    /// <summary>The page's table is the register, row by row.</summary>
    [Fact]
    public void The_theory_page_prints_the_register()
    {
        var page = File.ReadAllLines(Path.Combine(Root, "docs", "theory", "targets.md"));
        var head = Array.FindIndex(page, l => l.StartsWith("| key | name |", StringComparison.Ordinal));
        var printed = page.Skip(head + 2).TakeWhile(l => l.StartsWith("| ", StringComparison.Ordinal)).ToArray();
        string[] rows = [.. NamedLimits.All.Select(Row)];
        Assert.True(rows.SequenceEqual(printed), $"The register has changed. Its table is:\n{string.Join('\n', rows)}");
    }

    private static string Row(NamedLimit r) =>
        $"| `{r.Key}` | {r.Name} | {r.Definition} | {r.Said} | {(r.Vague > 0 ? "± " + (r.Unit == "percent" ? 100 * r.Vague : r.Vague).ToString("0.##", CultureInfo.InvariantCulture) : "")} | {r.Rule.BasisWords} | {r.Source} | {r.Caution} |";

    private static IEnumerable<string> SecondHomes(string file, string[] lines)
    {
        for (var i = 0; i < lines.Length; i++)
        {
            var numbers = Number().Matches(lines[i]).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture)).ToList();
            if (numbers.Count == 0) continue;
            var spoken = i > 0 && lines[i - 1].TrimStart().StartsWith("///", StringComparison.Ordinal) ? lines[i - 1] + lines[i] : lines[i];
            foreach (var rule in NamedLimits.All)
            {
                if (!Regex.IsMatch(spoken, $@"({Speaks[rule.Key]})", RegexOptions.IgnoreCase)) continue;
                // Constants, and sentences with a unit or a share: an index or a size on paper is neither.
                if (Figures(rule).FirstOrDefault(f => numbers.Contains(f)) is not (> 0 and var figure)) continue;
                if (!IsLimit().IsMatch(lines[i])) continue;
                yield return $"{file}:{i + 1} carries {figure} of {rule.Key}: {lines[i].Trim()}";
            }
        }
    }

    private static IEnumerable<double> Figures(NamedLimit rule)
    {
        double[] own = [rule.Limits.Low, rule.Limits.High, rule.Limits.Middle];
        return rule.Unit == "percent" ? own.Concat(own.Select(f => Math.Round(100 * f, 6))).Append(rule.Key == "exhaust-over-intake" ? 0.65 : rule.Limits.Low) : own;
    }

    [GeneratedRegex(@"(?<![\w.])\d*\.?\d+(?![\w.])")]
    private static partial Regex Number();

    /// <summary>A named constant, a comparison, or words that call it usual or a limit.</summary>
    [GeneratedRegex(@"const |readonly |=> [\d.]+;| [<>]=? [\d.]|percent|usual|past |under |above |of intake|hp a cfm| [\d.]+ to [\d.]+", RegexOptions.IgnoreCase)]
    private static partial Regex IsLimit();

    private static string Root { get; } = Up();

    private static string Up([CallerFilePath] string path = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(path)!, "..", "..", ".."));
}
