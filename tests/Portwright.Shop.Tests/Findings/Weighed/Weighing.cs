using System.Globalization;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Survey;
using Portwright.Shop.Words;

namespace Portwright.Shop.Tests.Findings.Weighed;

/// <summary>
/// What a rule says of a made port, held against what it said when this was written: chance, gain and doubt to a hundredth. There is no other source
/// for these numbers; what is tested is that none of the figures behind them moves unseen, and that a port just under a threshold and one just over
/// it are told apart. Whoever moves a figure of a rule on purpose writes down what the rule says then.
/// </summary>
internal static class Weighing
{
    /// <summary>Share by which chances and gains may differ: far under what a moved figure makes, far over a machine's last digits.</summary>
    private const double Within = 0.01;

    /// <summary>Chance, place, and where a cut is suggested its gain and doubt in percent of the flow that counts and the lifts, mm: <c>0.42 C12 1.31 0.99 5 12.5</c>.</summary>
    public static void Says(string said, MadePort made, string key, string letter = "")
    {
        var port = made.Survey();
        var words = Of(port, key, letter) is { } found ? Words(port, found) : "nothing";
        Assert.True(Alike(said, words), $"{key} says [{words}], not [{said}]");
    }

    public static Finding? Of(PortSurvey port, string key, string letter = "") => Catalogue.All.Single(r => r.Key == key).Look(port)
        .Where(f => letter.Length == 0 || f.Station?.Fact.Letter == letter).MaxBy(f => f.Confidence);

    private static string Words(PortSurvey port, Finding f)
    {
        var at = $"{f.Station?.Fact.Letter}{f.Bearing?.ToString("0.##", CultureInfo.InvariantCulture)}";
        var gain = f.Suggestion is { } cut && port.FlowThatCounts is { } flow
            ? string.Create(CultureInfo.InvariantCulture, $" {100 * cut.Gain.Value / flow.Value:G4} {100 * cut.Gain.StandardUncertainty / flow.Value:G4} {1e3 * cut.FromLift:G4} {1e3 * cut.ToLift:G4}") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{f.Confidence:G4}{(at.Length > 0 ? " " + at : "")}{gain}");
    }

    private static bool Alike(string one, string other)
    {
        var (a, b) = (one.Split(' '), other.Split(' '));
        return a.Length == b.Length && a.Zip(b).Select((p, i) => p.First == p.Second
            || (Number(p.First, out var x) && Number(p.Second, out var y) && Math.Abs(x - y) <= Within * (i == 0 ? Math.Min(x, 1 - x) : Math.Abs(x)) + 2e-6)).All(same => same);
    }

    private static bool Number(string text, out double number) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number);
}
