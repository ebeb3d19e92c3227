using Portwright.Engine.Runs;
using Portwright.Shop.Cutting;
using Portwright.Shop.Diagnosis;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Reduction;
using Portwright.Shop.Runs;
using Portwright.Shop.Sheets;
using Portwright.Shop.Survey;

namespace Portwright.Shop.Ports;

/// <summary>Everything known of one port at one cut, worked out once: pages, paper, terminal and files all ask for this and add nothing.</summary>
/// <param name="Survey">What was measured and observed, with the sheet of its flow.</param>
/// <param name="Findings">Measurement faults first, then reasons to stop, then cuts by what they should bring.</param>
/// <param name="Cuts">What could be cut next, the same findings with what was decided on them.</param>
/// <param name="Scores">How past advice on this port did.</param>
/// <param name="Engine">The port in its job's engine, as far as it was run.</param>
/// <param name="Ledger">The record it was worked out of, for whoever asks what a number rests on.</param>
public sealed record PortAtCut(
    PortSurvey Survey, IReadOnlyList<Finding> Findings, IReadOnlyList<NextCut> Cuts, IReadOnlyList<AdviceScore> Scores, PortInEngine Engine, Ledger Ledger)
{
    public PortSheet Sheet => Survey.Sheet;

    /// <summary>Everything any rule says with its chance, below what is stated too.</summary>
    public IReadOnlyList<Finding> Spoken { get; init; } = [];

    /// <summary>What to read next: the few readings that change most of the next decision for their time.</summary>
    public IReadOnlyList<NextReading> Readings { get; init; } = [];

    /// <summary>A cut of a port; the port's latest where none is named.</summary>
    /// <param name="kept">The engine runs kept so far; nothing is run here.</param>
    /// <exception cref="KeyNotFoundException">No such port, or it has no such cut.</exception>
    public static PortAtCut Of(Reductions reductions, Guid port, Guid? cut, IKeptPoints kept)
    {
        ArgumentNullException.ThrowIfNull(reductions);
        var survey = PortSurvey.Of(reductions, port, cut);
        var engine = PortInEngine.Of(reductions, survey, kept);
        var spoken = PortFindings.Spoken(survey).ToList();
        if (new NothingWorthCutting().Conclude(survey, spoken, engine.Targets) is { } stop)
        {
            spoken.Add(stop);
        }

        var found = PortFindings.Stated(spoken);
        var cuts = NextCuts.Of(survey, found, reductions.Ledger, engine.Answer);
        return new(survey, NextCuts.Ranked(found, cuts), cuts, NextCuts.Score(reductions, port), engine, reductions.Ledger) { Spoken = spoken, Readings = NextReadings.Of(survey, spoken, cuts) };
    }
}
