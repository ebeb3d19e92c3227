using System.Globalization;
using Portwright.Shop.Record;
using Portwright.Shop.Words;

namespace Portwright.Shop.Plan;

/// <summary>Contradictions of a plan, each with field, value and cure.</summary>
internal static class PlanChecks
{
    /// <summary>What the stated figures say against themselves.</summary>
    public static void Figures(EnginePlan plan, List<PlanProblem> problems)
    {
        void Say(bool wrong, string field, Sentence words)
        {
            if (wrong)
            {
                problems.Add(new(field, $"{field} {words}"));
            }
        }

        Needed("Bore", plan.Bore);
        Needed("Stroke", plan.Stroke);
        Say(plan.Cylinders is < 1 or > 24, "Cylinders", $"{plan.Cylinders}: type a number from 1 to 24.");
        Say(plan is { RodLength: { } rod, Stroke: { } stroke } && !(rod > stroke / 2 + Math.Abs(plan.PinOffset ?? 0)), "Rod", $"{Quantity.Length(plan.RodLength ?? 0)} cannot pass half the stroke and the pin offset. Give the distance between the rod's centres, usually 1.5 to 2 strokes.");
        Say(plan is { PinOffset: { } offset, Stroke: { } s, RodLength: null } && Math.Abs(offset) > s / 4, "Pin offset", $"{Quantity.Length(plan.PinOffset ?? 0)} is more than a quarter of the stroke. Check its unit.");
        Say(plan.CompressionRatio is { } ratio && !(ratio is >= 4 and <= 30), "Compression ratio", $"{plan.CompressionRatio:0.##} lies outside 4 to 30. Type it as 10.5.");
        Say(plan.HighestSpeed is { } high && !(high is > 0 and <= 30_000), "Highest speed", $"{plan.HighestSpeed:0} rpm lies outside 1 to 30,000.");
        Say(plan.LowestSpeed is < 200, "Lowest speed", $"{plan.LowestSpeed:0} rpm is no running speed. Type 200 or more.");
        Say(plan is { LowestSpeed: { } from, HighestSpeed: { } to } && from > to, "Highest speed", $"{plan.HighestSpeed:0} rpm is below the lowest, {plan.LowestSpeed:0}. Type them the other way round.");
        if (plan.FiringOrder is { Count: > 0 } order)
        {
            var cylinders = plan.Cylinders ?? 1;
            Say(!FiringOrders.Holds(order, cylinders), "Firing order", $"{string.Join(" ", order)} does not name each of {cylinders} cylinders once. Type all their numbers in the order they fire.");
        }

        Pipe("Runner length", plan.Intake?.RunnerLength);
        Positive("Runner section at the flange", plan.Intake?.FlangeArea);
        Positive("Runner section at the far end", plan.Intake?.FarArea);
        Say(plan.Intake?.PlenumVolume is < 1e-4, "Plenum volume", $"must be a tenth of a litre or more. Type it, or leave it empty.");
        Say(plan.Intake?.Throttle switch
        {
            ThrottleArea area => !(area.EffectiveArea > 0),
            ThrottleBores bores => !(bores is { Count: > 0, Diameter: > 0 }),
            RatedCarburettor rated => !(rated is { Flow: > 0, RatedAt: > 0 and < 40e3 }),
            _ => false,
        }, "Throttle", $"has a figure that is not above zero, or a rating no {Term.Carburetor} has. Ratings are at 1.5 or 3.0 inHg.");
        Pipe("Primary length", plan.Exhaust?.PrimaryLength);
        Positive("Primary diameter", plan.Exhaust?.PrimaryDiameter);
        Pipe("Collector length", plan.Exhaust?.CollectorLength);
        Positive("Collector diameter", plan.Exhaust?.CollectorDiameter);
        if (plan.Exhaust?.PrimariesACollector is { } meet)
        {
            var cylinders = plan.Cylinders ?? 1;
            Say(meet < 1 || meet > cylinders || cylinders % meet != 0, "Primaries in a collector", $"{meet} does not share out {cylinders} cylinders. Type how many pipes meet, or 1 where each ends by itself.");
        }

        Say(plan.Mixture?.Richness is { } richness && !(richness is >= 0.5 and <= 1.5), "Mixture", $"{plan.Mixture?.Richness:0.###} lies outside 0.5 to 1.5 times the fuel that just burns. Type it as 1.15.");
        Weights(plan, Say);
        void Needed(string field, double? value) => Say(!(value is > 0 and < 1), field, value is null
            ? (Sentence)$"is not given, and nothing can stand in for it. Type it on the engine plan."
            : $"{Quantity.Length(value.Value)} is no engine's. Check its unit.");
        void Pipe(string field, double? value) => Say(value is { } v && !(v is >= 0.005 and <= 5), field, $"{Quantity.Length(value ?? 0)} is no pipe of an engine. Check its unit.");
        void Positive(string field, double? value) => Say(value is { } v && !(v > 0), field, $"must be above zero. Type it, or leave it empty.");
    }

    /// <summary>Events no four-stroke engine runs with.</summary>
    public static void Events(CamInFull intake, CamInFull exhaust, List<PlanProblem> problems)
    {
        const double degree = Math.PI / 180, cycle = 4 * Math.PI;
        foreach (var (side, cam) in new[] { ("Intake", intake), ("Exhaust", exhaust) })
        {
            if (cam.Card is { LobeCentre: { } centre } && !(centre is >= 60 * degree and <= 160 * degree))
            {
                problems.Add(new($"{side} lobe centre", $"{side} lobe centre, {centre / degree:0} degrees, lies outside 60 to 160. Type it as the card has it: an intake's after top dead centre, an exhaust's before it."));
            }
        }

        // Both shut for compression and power: the intake's closing, a quarter of the cycle and more, the exhaust's opening.
        if (problems.Count == 0 && !(intake.Lift.Closes < exhaust.Lift.Opens + cycle - 20 * degree && intake.Lift.Closes - intake.Lift.Opens < 420 * degree && exhaust.Lift.Closes - exhaust.Lift.Opens < 420 * degree))
        {
            problems.Add(new("Cam", $"Cam: with these durations a valve is open nearly all the time and nothing would be compressed. Are the durations in cam degrees twice over?"));
        }
    }

    /// <summary>What goes beyond a class's limits.</summary>
    public static void Limits(ClassLimits? limits, double? ratio, CamInFull intake, CamInFull exhaust, List<PlanProblem> problems)
    {
        if (limits?.HighestCompressionRatio is { } most && ratio > most)
        {
            problems.Add(new("Compression ratio", $"Compression ratio {ratio:0.##} is above the class's limit, {most:0.##}. Lower it, or correct the limit."));
        }

        foreach (var (side, cam) in new[] { ("Intake", intake), ("Exhaust", exhaust) })
        {
            // A cam ground to the limit may pass it by the dial's last mark.
            if (limits?.HighestLift is { } lift && cam.Lift.Highest > lift + 1e-5)
            {
                problems.Add(new($"{side} cam", $"{side} cam: it lifts the valve {Quantity.Lift(cam.Lift.Highest)}, the class allows {Quantity.Lift(lift)}. Take another cam or ratio, or correct the limit."));
            }
        }

        if (limits?.RestrictorDiameter is { } restrictor && !(restrictor > 0))
        {
            problems.Add(new("Restrictor", $"Restrictor must be above zero. Type its diameter, or leave it empty."));
        }
    }

    private static void Weights(EnginePlan plan, Action<bool, string, Sentence> say)
    {
        if (plan.SpeedWeights is not { Count: > 0 } weights)
        {
            return;
        }

        say(weights.Any(w => !(w.Weight >= 0) || !(w.Speed > 0)) || !weights.Any(w => w.Weight > 0), "Weights", $"must be zero or above, at least one above zero, each at a speed. Type them as 3000 1, 5000 2.");
        say(weights.Select(w => w.Speed).Distinct().Count() < weights.Count, "Weights", $"name one speed twice. Keep one.");
        if (weights.FirstOrDefault(w => w.Speed < plan.LowestSpeed || w.Speed > plan.HighestSpeed) is { } outside)
        {
            say(true, "Weights", $"name {outside.Speed:0} rpm, outside the plan's range, {plan.LowestSpeed:0} to {plan.HighestSpeed:0}. Widen the range or take it out.");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
