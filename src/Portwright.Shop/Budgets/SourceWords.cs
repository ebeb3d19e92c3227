using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Budgets;

/// <summary>The names results give their causes of doubt, in a porter's words and with the facts behind them. Of one record; not for several threads at once.</summary>
/// <param name="home">The port that is spoken of: its sweeps are told without its name.</param>
public sealed partial class SourceWords(Ledger ledger, Guid home)
{
    /// <summary>Causes that name nothing of the record: the name is what a porter is told.</summary>
    private static readonly Dictionary<string, string> Common = new()
    {
        [Sources.WallGauge] = "every wall measured with the gauge",
        [Sources.PipeProfile] = "every ball calibrated in a pipe",
        [Physics.Valves.InletMachIndex.SoundSource] = "every figure that rests on the air in the engine's intake",
        [Sources.CamShape] = "every mean over the cam's lift",
        ["wall law exponent"] = "every ring",
        ["sphere drag correlations"] = "every ball not calibrated in a pipe",
        ["ball in a closed section"] = "every ball not calibrated in a pipe",
        ["sphere drag correlations, pipe to port"] = "every ball calibrated in a pipe",
        ["ball in a closed section, pipe to port"] = "every ball calibrated in a pipe",
        ["usual balance of exhaust and intake"] = "every lift of the side that was not swept",
        ["spread of the power rule"] = "",
        ["angle of the echo"] = "",
        ["factor of the vessel rule"] = "",
        ["limit of common practice"] = "every port held against it",
        ["where a section is the limit"] = "every section of an intake",
        ["best a window passes"] = "every port held against it",
        ["burette"] = "every figure of the port's volume",
    };

    private readonly Dictionary<string, NamedSource?> _known = [];

    /// <summary>The cause of that name; null where no words are known for it.</summary>
    public NamedSource? Of(string source)
    {
        if (!_known.TryGetValue(source, out var named)) _known[source] = named = Named(SourceName.Read(source));
        return named;
    }

    private NamedSource? Named(SourceName name) => name switch
    {
        { Of: null } => OfNothing(name.Head),
        { Of: { } of } => OfBench(name, of) ?? OfCalibration(name, of) ?? OfSweep(name, of) ?? OfReading(name, of) ?? OfPort(name, of),
    };

    private static NamedSource? OfNothing(string name)
    {
        if (name == Sources.Caliper) return new($"scale of the caliper", Share(Sections.ReducedSection.CaliperScale), $"every section of the shop", []);
        if (name.StartsWith(Sources.JudgedBegins, StringComparison.Ordinal)) return new(Sentence.Plain(name), null, $"every advice of that kind", []);
        if (name.StartsWith("ball at ", StringComparison.Ordinal) && name.Split(": ") is [var place, var what])
            return new(what == "drift not linear" ? (Sentence)$"{place}: the bench perhaps did not drift evenly" : $"{place}: {what}", null, Sentence.Empty, []);
        if (name.StartsWith("ball ", StringComparison.Ordinal)) return new($"diameter of the ball", Share(Balls.BallSize.Doubt), $"every ball of that size", []);
        return Common.TryGetValue(name, out var shared) ? new(Sentence.Plain(name), null, Sentence.Plain(shared), []) : null;
    }

    /// <summary>A step of the cause: it has a sign, so that it can be read against the change it makes.</summary>
    private static Quantity Step(double si, Dimension dimension) => new(si, dimension, Figures: 2, Signed: true);

    private static Quantity Share(double share) => Step(share, Dimension.Fraction);
}
