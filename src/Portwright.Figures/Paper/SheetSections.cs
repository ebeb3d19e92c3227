using System.Globalization;
using Portwright.Physics.Uncertainty;
using Portwright.Shop.Reduction;
using Portwright.Shop.Sheets;
using Portwright.Shop.Units;

namespace Portwright.Figures;

/// <summary>The sentences under the table of a port sheet.</summary>
internal static class SheetSections
{
    public static IEnumerable<SheetSection> Of(PortSheet sheet, UnitSystem units)
    {
        if (sheet.Cut.Fact.Done.Length > 0) yield return new("What was done", [sheet.Cut.Fact.Done]);
        if (sheet.AgainstLast is { } last) yield return new($"Against cut {last.Last.Cut.Fact.Number}", Comparison(last, units));
        if (sheet.AgainstFirst is { } first) yield return new($"Against cut {first.Last.Cut.Fact.Number}, the first tested", Comparison(first, units));
        if (sheet.Port.Fact.Valve is { } valve)
        {
            var words = new List<string>
            {
                $"Valve {Print.Number(valve.HeadDiameter, Dimension.Lift, units)}, throat {Print.Number(valve.ThroatDiameter, Dimension.Lift, units)}, stem {Print.Number(valve.StemDiameter, Dimension.Lift, units)}, seat {Print.Number(valve.SeatAngle, Dimension.Angle, units)}, {Print.Number(valve.SeatWidth, Dimension.Lift, units)} wide.",
            };
            if (sheet.ThroatTakesOver is { } takes)
                words.Add($"Past a lift of {Print.Number(takes, Dimension.Lift, units)} the throat is the smallest section: more lift opens nothing there.");
            yield return new("Valve window", words);
        }

        yield return new("Bench", Bench(sheet, units));
        if (sheet.Cautions.Count > 0) yield return new("Cautions", sheet.Cautions, true);
        if (sheet.Remarks.Count > 0) yield return new("Remarks", sheet.Remarks);
    }

    private static List<string> Comparison(CutComparison comparison, UnitSystem units)
    {
        var lifts = comparison.Curves.Lifts;
        var words = new List<string> { $"Whole curve, {Range(lifts[0].Lift, lifts[^1].Lift, units)}: {Say(comparison.Curves.WholeCurve, units)}." };
        words.AddRange(comparison.Curves.Bands.Select(b => $"{Capital(b.Band.Name)}, {Range(b.TestedFrom, b.TestedTo, units)}: {Say(b.Difference, units)}."));
        return words;
    }

    private static string Say(Difference d, UnitSystem units)
    {
        var doubt = d.Of.Expanded(d.Level);
        var number = Print.WithDoubt(Math.Abs(d.Of.Value), doubt, Dimension.VolumeFlow, units);
        var sign = d.Of.Value < 0 ? "−" : "+";
        var words = $"{sign}{number}, {VerdictMark.Words(d.Verdict, d.Of.Value)}";
        if (d.Verdict == Verdict.NotEnoughReadings && d.MoreReadings is { } more)
            return words + (more == 1 ? "; one more reading at each lift may settle it" : $"; {more} more readings at each lift may settle it");
        // Never "100 in 100": a measurement is not a certainty.
        var chance = Math.Min(99, Math.Floor(100 * (d.Of.Value < 0 ? 1 - d.ProbabilityOfGain : d.ProbabilityOfGain)));
        return words + string.Create(CultureInfo.InvariantCulture, $" ({chance:F0} in 100 that it is a {(d.Of.Value < 0 ? "loss" : "gain")})");
    }

    private static List<string> Bench(PortSheet sheet, UnitSystem units)
    {
        var words = new List<string>();
        foreach (var sweep in sheet.Flow?.Sweeps ?? [])
        {
            var of = sheet.Flow!.Sweeps.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $"Sweep of {sweep.Day:yyyy-MM-dd}: ") : "";
            words.Add(of + (sweep.LeakArea is { } leak
                ? $"leak {Print.WithDoubt(leak.Value, leak.Expanded(), Dimension.Area, units)} effective, taken off each reading."
                : "no leak test was made; nothing was taken off."));
            foreach (var (range, factor) in sweep.Factors)
            {
                words.Add(of + (factor.From is { } calibration
                    ? string.Create(CultureInfo.InvariantCulture, $"range {range} calibrated {calibration.Fact.Date:yyyy-MM-dd}, factor {factor.Factor.Value:F4} ± {factor.Factor.Expanded():F4}.")
                    : $"range {range} was never calibrated on a check plate; the bench card's accuracy stands in."));
            }

            if (sweep.Sweep.Fact.Fitted.Length > 0) words.Add($"{of}fitted: {sweep.Sweep.Fact.Fitted}.");
        }

        if (sheet.Morning is { } morning)
        {
            words.Add($"morning check {morning.Mornings[^1].Check.Fact.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}: {morning.Answer.ToString().ToLowerInvariant()}. {string.Join(' ', morning.Words)}");
        }

        if (sheet.Bench is { } bench)
            words.Add($"set-up scatter {Print.Number(bench.Fact.Doubt.SetUpScatter, Dimension.Fraction, units, 2)}, repeat {Print.Number(bench.Fact.Doubt.RepeatScatter, Dimension.Fraction, units, 2)}, day to day {Print.Number(bench.Fact.Doubt.Drift, Dimension.Fraction, units, 2)} (standard uncertainties of the bench card).");
        return [.. words.Select(Capital)];
    }

    private static string Range(double from, double to, UnitSystem units) =>
        from < to ? $"{Print.Number(from, Dimension.Lift, units)} to {Print.Number(to, Dimension.Lift, units)}" : $"at {Print.Number(from, Dimension.Lift, units)}";

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
