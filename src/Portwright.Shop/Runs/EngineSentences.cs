using System.Globalization;
using Portwright.Engine.Runs;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Record;
using Portwright.Shop.Units;
using Portwright.Shop.Words;

namespace Portwright.Shop.Runs;

/// <summary>The engine run in sentences, the same on paper and terminal.</summary>
public static class EngineSentences
{
    /// <summary>Figures of a torque or power that was calculated: what the model does not know is more than the fourth.</summary>
    private const int FiguresOfAModel = 3;

    /// <summary><c>+2.1 ± 0.6 lb-ft</c>: a difference of two runs is firmer than either.</summary>
    public static Quantity Signed(Estimate torque) => Quantity.Difference(torque, Dimension.Torque);

    /// <summary>A torque, N m, to the figures a model has.</summary>
    public static Quantity Torque(double torque) => new Quantity(torque, Dimension.Torque).About(FiguresOfAModel);

    /// <summary>A power, W, to the figures a model has.</summary>
    public static Quantity Power(double power) => new Quantity(power, Dimension.Power).About(FiguresOfAModel);

    /// <summary>Best torque and power, each with its speed.</summary>
    public static Sentence Best(EngineAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var (torque, power) = (answer.BestTorque, answer.BestPower);
        return $"Best torque {Torque(torque.Torque)} at {Rpm(torque.TurnsASecond)}, best power {Power(power.Power)} at {Rpm(power.TurnsASecond)}: calculated, not a dynamometer figure.";
    }

    /// <summary>Which lift pays most, and where more area harms.</summary>
    public static Sentence Pays(EngineAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        (PortKind Kind, LiftWorth Worth)[] all = [.. answer.Worth.Intake.Select(w => (PortKind.Intake, w)), .. answer.Worth.Exhaust.Select(w => (PortKind.Exhaust, w))];
        var most = all.MaxBy(w => w.Worth.Torque);
        var least = all.MinBy(w => w.Worth.Torque);
        Sentence words = most.Worth.Torque > 0
            ? $"Area pays most at {Lift(most)}: one percent more there is worth {OnePercent(most.Worth.Torque)} on average over the range."
            : (Sentence)$"More area pays at no lift of this engine.";
        return least.Worth.Torque < 0 ? $"{words} It costs most at {Lift(least)}, {OnePercent(least.Worth.Torque)}." : words;

        Sentence Lift((PortKind Kind, LiftWorth Worth) w) => $"{Name(w.Kind)} lift {Quantity.Lift(w.Worth.Lift)}";
    }

    /// <summary><c>+2.1 ± 0.6 lb-ft on average over the range, 94 in 100 that it is a gain</c>; never quite certain.</summary>
    public static Sentence Gain(Difference less)
    {
        ArgumentNullException.ThrowIfNull(less);
        return $"{Signed(less.Of)} on average over the range, {VerdictWords.Odds(less)}";
    }

    /// <summary>One percent of a slope: <c>+0.24 lb-ft</c>.</summary>
    /// <param name="slope">Mean torque for a relative gain, N m.</param>
    public static Quantity OnePercent(double slope) => new(slope / 100, Dimension.Torque, Figures: 2, Signed: true);

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
    public static IReadOnlyList<Sentence> Assumed(EngineQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var plan = question.Plan;
        IEnumerable<Sentence> Why(string what, Sentence why) => why.IsEmpty ? [] : [$"{what}: {why}."];
        return
        [
            .. question.Remarks,
            .. plan.Figures.Where(f => f.IsAssumed).Select(f => (Sentence)$"{f.Name} {f.Quantity}, {f.Why}."),
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
