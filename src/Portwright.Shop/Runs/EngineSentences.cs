using System.Globalization;
using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Findings;
using Portwright.Shop.Record;
using Portwright.Shop.Units;

namespace Portwright.Shop.Runs;

/// <summary>The engine run in sentences, the same on paper and terminal.</summary>
public static class EngineSentences
{
    /// <summary><c>+2.1 ± 0.6 lb-ft</c>.</summary>
    public static string Signed(Estimate torque, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(torque);
        return (torque.Value >= 0 ? "+" : "") + Print.WithDoubt(torque.Value, torque.Expanded(), Dimension.Torque, units);
    }

    /// <summary>Best torque and power, each with its speed.</summary>
    public static string Best(EngineAnswer answer, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var speeds = EngineSpeed.Of(answer);
        var torque = speeds.First(s => s.Point == answer.BestTorque);
        var power = speeds.First(s => s.Point == answer.BestPower);
        return $"Best torque {Print.WithDoubt(torque.Torque.Value, torque.Torque.Expanded(), Dimension.Torque, units)} at {Rpm(torque.Point.TurnsASecond)}, "
            + $"best power {Print.WithDoubt(power.Power.Value, power.Power.Expanded(), Dimension.Power, units)} at {Rpm(power.Point.TurnsASecond)}: calculated, not a dynamometer figure.";
    }

    /// <summary>Which lift pays most, and where more area harms.</summary>
    public static string Pays(EngineAnswer answer, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(answer);
        (PortKind Kind, LiftWorth Worth)[] all = [.. answer.Worth.Intake.Select(w => (PortKind.Intake, w)), .. answer.Worth.Exhaust.Select(w => (PortKind.Exhaust, w))];
        var most = all.MaxBy(w => w.Worth.Torque);
        var least = all.MinBy(w => w.Worth.Torque);
        var words = most.Worth.Torque > 0
            ? $"Area pays most at {Lift(most)}: one percent more there is worth {OnePercent(most.Worth.Torque, units)} on average over the range."
            : "More area pays at no lift of this engine.";
        return least.Worth.Torque < 0 ? $"{words} It costs most at {Lift(least)}, {OnePercent(least.Worth.Torque, units)}." : words;

        string Lift((PortKind Kind, LiftWorth Worth) w) => $"{Name(w.Kind)} lift {Print.Number(w.Worth.Lift, Dimension.Lift, units)}";
    }

    /// <summary><c>+2.1 ± 0.6 lb-ft on average over the range, 94 percent likely a gain</c>; never quite certain.</summary>
    public static string Gain(Difference less, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(less);
        return $"{Signed(less.Of, units)} on average over the range, {Likely(less)}";
    }

    /// <summary><c>94 percent likely a gain</c>; never quite certain.</summary>
    public static string Likely(Difference less)
    {
        ArgumentNullException.ThrowIfNull(less);
        var gain = less.Of.Value >= 0;
        return FormattableString.Invariant($"{Math.Clamp(Math.Floor(100 * (gain ? less.ProbabilityOfGain : 1 - less.ProbabilityOfGain)), 50, 99):0} percent likely a {(gain ? "gain" : "loss")}");
    }

    /// <summary>One percent of a slope: <c>+0.24 lb-ft</c>.</summary>
    /// <param name="slope">Mean torque for a relative gain, N m.</param>
    public static string OnePercent(double slope, UnitSystem units) =>
        $"{BareOnePercent(slope, units)} {Print.UnitName(Dimension.Torque, units)}";

    /// <inheritdoc cref="OnePercent"/>
    public static string BareOnePercent(double slope, UnitSystem units)
    {
        var bare = Print.Bare(slope / 100, Dimension.Torque, units, 2);
        return bare.StartsWith('-') ? bare : "+" + bare;
    }

    /// <summary>What is run: one cylinder for all, or all of them.</summary>
    public static string Layout(EngineQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var n = question.Plan.Cylinders;
        return n == 1 ? "one cylinder"
            : question.Design.FiringOrder is { } order ? $"all {n} cylinders, firing {string.Join('-', order)}, with plenum and collectors"
            : $"one cylinder, breathing through its own runner and primary, stands for all {n}";
    }

    /// <summary>A port that stands for all of its kind, at its cut.</summary>
    public static string Port(EngineQuestion question, PortKind kind)
    {
        ArgumentNullException.ThrowIfNull(question);
        return question.Pair.Of(kind) is { Sheet: { Flow: not null } sheet } ? $"{sheet.Head.Fact.Name} {sheet.Port.Fact.Name}, cut {sheet.Cut.Fact.Number}" : "none swept: taken from the other side";
    }

    /// <summary>Everything that was taken without being stated or measured, in sentences.</summary>
    public static IReadOnlyList<string> Assumed(EngineQuestion question, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(question);
        var plan = question.Plan;
        IEnumerable<string> Why(string what, string why) => why.Length > 0 ? [$"{what}: {FindingWords.Show(why, units)}."] : [];
        return
        [
            .. question.Remarks.Select(r => FindingWords.Show(r, units)),
            .. plan.Figures.Where(f => f.IsAssumed).Select(f => $"{f.Name} {f.Words(units)}: {FindingWords.Show(f.Why, units)}."),
            .. plan.Cylinders > 1 ? Why($"Firing order {string.Join('-', plan.FiringOrder)}", plan.FiringOrderWhy) : [],
            .. Why("Weights of the speeds", plan.WeightsWhy),
            .. Why("Fuel", plan.FuelWhy),
        ];
    }

    /// <summary>Where a section of the run lies: its station's letter, throat, flange or the pipe's far end.</summary>
    public static string Place(EngineQuestion question, PortKind kind, SectionWorth section)
    {
        ArgumentNullException.ThrowIfNull(question);
        var tract = (kind == PortKind.Intake ? question.Intake : question.Exhaust).Side.Tract.Stations;
        if (section.Distance == tract[^1].Distance) return kind == PortKind.Intake ? "runner, far end" : "primary, far end";
        if (section.Distance == tract[^2].Distance) return kind == PortKind.Intake ? "runner at the flange" : "primary at the flange";
        if (section.Distance == 0) return "throat";
        var survey = question.Pair.Of(kind);
        var station = survey?.Stations.FirstOrDefault(s => s.Section is not null && Math.Abs(survey.Centreline.Length - s.Distance - section.Distance) < 1e-6);
        return station is null ? "" : $"{station.Letter} {station.Station.Fact.Mark}".TrimEnd();
    }

    /// <summary><c>4,980 rpm</c>.</summary>
    /// <param name="turnsASecond">1/s.</param>
    public static string Rpm(double turnsASecond) => (60 * turnsASecond).ToString("N0", CultureInfo.InvariantCulture) + " rpm";

    public static string Name(PortKind kind) => kind == PortKind.Intake ? "intake" : "exhaust";
}
